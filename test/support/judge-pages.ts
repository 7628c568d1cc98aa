import type { Page } from '../../src/render/page.ts';
import type { ReadPage, Words } from './pdf.ts';

type Area = {
  readonly what: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

/**
 * Says what is wrong with pages as somebody with a loupe and a ruler would. Where words stand comes from an independent
 * reader of the finished file; rules, tints and symbols from the pages. All lengths in points.
 */
export function judge(pages: readonly Page[], read: readonly ReadPage[], margin: number): readonly string[] {
  if (pages.length !== read.length) return [`${pages.length} pages were laid out, ${read.length} were read`];
  return pages.flatMap((page, index) => {
    const seen = read[index];
    const faults = seen === undefined ? [] : judgePage(page, seen, margin);
    return faults.map(fault => `page ${index + 1}: ${fault}`);
  });
}

/** What is wrong with a page's words alone, of whatever file they were read from. */
export function judgeWords(read: ReadPage, margin: number): readonly string[] {
  const words = read.words.map(inkOf);
  return [
    ...words.flatMap(each => outside(each, read, margin)),
    ...overlaps(words, words),
    ...read.words.filter(each => each.size < 9 - SLACK).map(({ text, size }) => `"${text}" is ${size} points small`),
  ];
}

function judgePage(page: Page, read: ReadPage, margin: number): readonly string[] {
  const words = read.words.map(inkOf);
  const strokes = strokesOf(page);
  const symbols = page.items.flatMap(item => (item.kind === 'symbol' ? [symbolArea(item)] : []));
  const tints = page.tints.map(({ x, y, width, height }) => area('tint', x, y, width, height));
  return [
    ...judgeWords(read, margin),
    ...[...strokes, ...symbols, ...tints].flatMap(each => outside(each, page, margin)),
    ...overlaps(words, strokes),
    ...overlaps(symbols, [...symbols, ...words, ...strokes, ...tints]),
    ...page.items.flatMap(item =>
      'weight' in item && item.weight < 0.7 ? [`a line is ${item.weight} points thin: a copier loses it`] : [],
    ),
  ];
}

const SLACK = 0.05;

const area = (what: string, left: number, top: number, width: number, height: number): Area => ({
  what,
  left,
  top,
  right: left + width,
  bottom: top + height,
});

/** Where letters have ink: from the top of a capital to the foot of a g; digits and fractions stand on the line. */
function inkOf({ text, x, y, width, size, upright }: Words): Area {
  const [above, below] = [0.72 * size, /^[\d/. ]*$/.test(text) ? 0.02 * size : 0.22 * size];
  return upright
    ? area(`"${text}"`, x, y - above, width, above + below)
    : area(`"${text}"`, x - above, y - width, above + below, width);
}

/** Rules, and the four sides of frames. */
function strokesOf(page: Page): readonly Area[] {
  return page.items.flatMap(item => {
    if (item.kind === 'line') {
      const [left, right] = [Math.min(item.x1, item.x2), Math.max(item.x1, item.x2)];
      const [top, bottom] = [Math.min(item.y1, item.y2), Math.max(item.y1, item.y2)];
      return [area('a rule', left, top, right - left, bottom - top)];
    }
    if (item.kind !== 'frame') return [];
    const { x, y, width, height } = item;
    return [
      area('a frame', x, y, width, 0),
      area('a frame', x, y + height, width, 0),
      area('a frame', x, y, 0, height),
      area('a frame', x + width, y, 0, height),
    ];
  });
}

/** A symbol and the quiet zone that its standard asks for at its sides; matrix symbols want it all round. */
function symbolArea({ x, y, symbol, module, tall }: Extract<Page['items'][number], { kind: 'symbol' }>): Area {
  const quiet = symbol.kind === 'linear' ? 10 * module : 4 * module;
  const above = symbol.kind === 'linear' ? 0 : quiet;
  return area('a symbol', x - quiet, y - above, symbol.width * module + 2 * quiet, symbol.height * tall + 2 * above);
}

type Sized = { readonly width: number; readonly height: number };

function outside(each: Area, { width, height }: Sized, margin: number): readonly string[] {
  const isInside =
    each.left >= margin - SLACK &&
    each.top >= margin - SLACK &&
    each.right <= width - margin + SLACK &&
    each.bottom <= height - margin + SLACK;
  return isInside ? [] : [`${each.what} is in the margin`];
}

function overlaps(some: readonly Area[], others: readonly Area[]): readonly string[] {
  const faults: string[] = [];
  for (const [index, one] of some.entries()) {
    // A list against itself: each pair once.
    for (const other of some === others ? others.slice(index + 1) : others) {
      if (one !== other && meet(one, other)) faults.push(`${one.what} and ${other.what} overlap`);
    }
  }
  return faults;
}

const meet = (one: Area, other: Area): boolean =>
  one.left < other.right - SLACK &&
  other.left < one.right - SLACK &&
  one.top < other.bottom - SLACK &&
  other.top < one.bottom - SLACK;
