import { deflateSync } from 'node:zlib';
import { openPen, type Pen } from './draw/pen.ts';
import { openUsedCodes, type UsedCodes } from './draw/used-codes.ts';
import type { Mark } from './figure.ts';
import { type PageNumbers, written } from './flow/numbers.ts';
import { type Fonts, widthOf } from './fonts.ts';
import type { Item, Page } from './page.ts';
import type { Symbology } from './symbols.ts';
import { typeset } from './typeset.ts';

/** Writes pages down as content streams. Decides nothing. */
export type Draw = {
  readonly fonts: Fonts;
  /** Once for each page, however many documents hold it. */
  readonly page: (page: Page) => Drawn;
  /** The codes of all that was drawn so far. */
  readonly used: UsedCodes;
};

export type Drawn = {
  /** All before the first number of a page that is still to come, compressed. */
  readonly head: Uint8Array;
  /** The rest, once the numbers are known. */
  readonly rest: (numbers: PageNumbers) => string;
};

export function openDraw(fonts: Fonts): Draw {
  const used = openUsedCodes();
  const tools: Tools = { fonts, note: used.note };
  const drawn = new WeakMap<Page, Drawn>();
  return {
    fonts,
    used,
    page: page => {
      const known = drawn.get(page) ?? drawPage(page, tools);
      drawn.set(page, known);
      return known;
    },
  };
}

type Tools = {
  readonly fonts: Fonts;
  readonly note: (set: string, bold: boolean) => void;
};

function drawPage(page: Page, tools: Tools): Drawn {
  // The items are not kept for the rest: a large job's would fill the memory.
  const { tints, items, height: pageHeight } = page;
  const late = items.findIndex(item => item.kind === 'late');
  const pen = openPen(pageHeight);
  for (const { x, y, width, height, grey } of tints) pen.area(x, y, width, height, grey);
  for (const item of late === -1 ? items : items.slice(0, late)) drawItem(item, pen, tools);
  const content = pen.written();
  if (late === -1) return { head: packed(content), rest: () => '' };
  const after = items.slice(late);
  return {
    // Saved and restored, so that the rest begins with a pen that knows nothing.
    head: packed(`q\n${content}\nQ`),
    rest: numbers => {
      const rest = openPen(pageHeight);
      for (const item of after) {
        const known = item.kind === 'late' ? written(item, numbers, tools.fonts) : [item];
        for (const each of known) drawItem(each, rest, tools);
      }
      return rest.written();
    },
  };
}

/**
 * At once: handing so little over to another thread and back takes as long as the work. Next to the usual level, which
 * would make 2 % fewer bytes in a quarter more time.
 */
const packed = (content: string): Uint8Array => deflateSync(Buffer.from(content, 'latin1'), { level: 5 });

function drawItem(item: Item, pen: Pen, tools: Tools): void {
  switch (item.kind) {
    case 'text':
      tools.note(item.set, item.bold);
      pen.text(item.x, item.y, item.set, item.bold ? 'bold' : 'regular', item.size);
      break;
    case 'line':
      pen.line([item.x1, item.y1], [item.x2, item.y2], item.weight);
      break;
    case 'frame':
      pen.frame(item.x, item.y, item.width, item.height, item.weight);
      break;
    case 'symbol':
      pen.stencil(item.x, item.y, item.module / STEPS, item.tall / STEPS, symbolPath(item.symbol));
      break;
    case 'figure':
      for (const mark of item.figure.marks) drawMark(mark, item.x, item.y, pen, tools);
      break;
    case 'late':
      break;
  }
}

/** Parts of a module that symbols are written in, so that what ink adds to a bar can be taken off in whole numbers. */
const STEPS = 40;
/** Taken off each side of a bar: together 1/20 of a module, for the spread of ink and toner. Measured: it reads better. */
const SPREAD = 1;

/** A piece's symbol stands on its tag and on the sheet of each of its operations. */
const paths = new WeakMap<Symbology, string>();

function symbolPath(symbol: Symbology): string {
  const path = paths.get(symbol) ?? pathOf(symbol);
  paths.set(symbol, path);
  return path;
}

/** The tall side of a linear symbol's bars loses nothing: its ends are not read. */
function pathOf({ kind, dark }: Symbology): string {
  const off = kind === 'matrix' ? SPREAD : 0;
  let path = '';
  for (let at = 0; at < dark.length; at += 4) {
    const module = (which: number): number => (dark[at + which] ?? 0) * STEPS;
    const corner = `${module(0) + SPREAD} ${module(1) + off}`;
    path += `${at === 0 ? '' : ' '}${corner} ${module(2) - 2 * SPREAD} ${module(3) - 2 * off} re`;
  }
  return path;
}

function drawMark(mark: Mark, left: number, top: number, pen: Pen, tools: Tools): void {
  switch (mark.kind) {
    case 'line':
      pen.line([left + mark.x1, top + mark.y1], [left + mark.x2, top + mark.y2], mark.weight, mark.dash);
      break;
    case 'polygon':
      pen.polygon(
        mark.points.map(([x, y]) => [left + x, top + y]),
        mark,
      );
      break;
    case 'circle':
      pen.circle(left + mark.x, top + mark.y, mark.radius, { ...mark, closed: true });
      break;
    case 'text':
      drawText(mark, left, top, pen, tools);
  }
}

function drawText(mark: Extract<Mark, { kind: 'text' }>, left: number, top: number, pen: Pen, tools: Tools): void {
  const { size, align, turn = 0, mask = false, bold = false } = mark;
  const face = bold ? 'bold' : 'regular';
  const set = typeset(mark.text);
  const width = widthOf(set, size, tools.fonts[face]);
  const before = align === 'left' ? 0 : align === 'right' ? width : width / 2;
  const [x, y] = turn === 0 ? [left + mark.x - before, top + mark.y] : [left + mark.x, top + mark.y + before];
  const [above, below] = [0.76 * size, 0.24 * size];
  if (mask && turn === 0) pen.area(x - 1, y - above, width + 2, above + below, 1);
  if (mask && turn === 90) pen.area(x - above, y - width - 1, above + below, width + 2, 1);
  tools.note(set, bold);
  pen.text(x, y, set, face, size, turn);
}
