import { openPen, type Pen } from './draw/pen.ts';
import type { Mark } from './figure.ts';
import { type Fonts, widthOf } from './fonts.ts';
import type { Item, Page } from './page.ts';
import type { Symbology } from './symbols.ts';
import { typeset } from './typeset.ts';

/** Writes a page down as a content stream. Decides nothing. */
export type Draw = (page: Page) => string;

/** A draw that writes the symbols that pages share once. */
export function openDraw(fonts: Fonts): Draw {
  const paths = new Map<Symbology, string>();
  const pathOf = (symbol: Symbology): string => {
    const path = paths.get(symbol) ?? symbolPath(symbol);
    paths.set(symbol, path);
    return path;
  };
  return page => {
    const pen = openPen(page.height);
    for (const { x, y, width, height, grey } of page.tints) pen.area(x, y, width, height, grey);
    for (const item of page.items) drawItem(item, pen, pathOf, fonts);
    return pen.written();
  };
}

function drawItem(item: Item, pen: Pen, pathOf: (symbol: Symbology) => string, fonts: Fonts): void {
  switch (item.kind) {
    case 'text':
      pen.text(item.x, item.y, item.set, item.bold ? 'bold' : 'regular', item.size);
      break;
    case 'line':
      pen.line([item.x1, item.y1], [item.x2, item.y2], item.weight);
      break;
    case 'frame':
      pen.frame(item.x, item.y, item.width, item.height, item.weight);
      break;
    case 'symbol':
      pen.stencil(item.x, item.y, item.module / STEPS, item.tall / STEPS, pathOf(item.symbol));
      break;
    case 'figure':
      for (const mark of item.figure.marks) drawMark(mark, item.x, item.y, pen, fonts);
  }
}

/** Parts of a module that symbols are written in, so that what ink adds to a bar can be taken off in whole numbers. */
const STEPS = 40;
/** Taken off each side of a bar: together 1/20 of a module, for the spread of ink and toner. Measured: it reads better. */
const SPREAD = 1;

/** The tall side of a linear symbol's bars loses nothing: its ends are not read. */
const symbolPath = ({ kind, dark }: Symbology): string =>
  dark
    .map(([across, down, wide, high]) => {
      const off = kind === 'matrix' ? SPREAD : 0;
      const corner = `${across * STEPS + SPREAD} ${down * STEPS + off}`;
      return `${corner} ${wide * STEPS - 2 * SPREAD} ${high * STEPS - 2 * off} re`;
    })
    .join(' ');

function drawMark(mark: Mark, left: number, top: number, pen: Pen, fonts: Fonts): void {
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
      drawText(mark, left, top, pen, fonts);
  }
}

function drawText(mark: Extract<Mark, { kind: 'text' }>, left: number, top: number, pen: Pen, fonts: Fonts): void {
  const { size, align, turn = 0, mask = false } = mark;
  const face = mark.bold === true ? 'bold' : 'regular';
  const set = typeset(mark.text);
  const width = widthOf(set, size, fonts[face]);
  const before = align === 'left' ? 0 : align === 'right' ? width : width / 2;
  const [x, y] = turn === 0 ? [left + mark.x - before, top + mark.y] : [left + mark.x, top + mark.y + before];
  const [above, below] = [0.76 * size, 0.24 * size];
  if (mask && turn === 0) pen.area(x - 1, y - above, width + 2, above + below, 1);
  if (mask && turn === 90) pen.area(x - above, y - width - 1, above + below, width + 2, 1);
  pen.text(x, y, set, face, size, turn);
}
