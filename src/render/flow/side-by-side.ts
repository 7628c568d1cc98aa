import { heightOf, parted, putAll, type Sheet, type Strip } from './strip.ts';

/** A column of a row: where it starts and the strips in it. */
export type Column = { readonly x: number; readonly strips: readonly Strip[] };

export type SideBySide = {
  /** Kept free above and below. */
  readonly pad: number;
  readonly place: 'top' | 'middle' | 'bottom' | 'line';
  /** Tints behind it and rules around it, given its final height. */
  readonly trim?: (x: number, y: number, height: number, sheet: Sheet) => void;
  readonly keepsNext?: boolean;
  readonly heads?: Strip | undefined;
};

/**
 * Columns beside each other as one strip. In place `line`, those that begin with words share the first line's base, and
 * the others are centred: what a table's row wants.
 */
export function sideBySide(columns: readonly Column[], how: SideBySide): Strip {
  const base = how.place === 'line' ? columns.reduce((low, { strips }) => Math.max(low, baseOf(strips)), 0) : 0;
  const drop = (strips: readonly Strip[]) => (base > 0 && baseOf(strips) > 0 ? base - baseOf(strips) : 0);
  let [inner, words] = [0, 0];
  for (const { strips } of columns) {
    const height = drop(strips) + heightOf(strips);
    inner = Math.max(inner, height);
    // Words hang together: they move as one group, as tall as the tallest of them.
    if (base > 0 && baseOf(strips) > 0) words = Math.max(words, height);
  }
  const top = (strips: readonly Strip[]): number => {
    const isWords = base > 0 && baseOf(strips) > 0;
    const spare = inner - (isWords ? words : heightOf(strips));
    return how.pad + drop(strips) + spare * SHARE_ABOVE[how.place];
  };
  const height = inner + 2 * how.pad;
  const first = columns[0]?.strips ?? [];
  return {
    height,
    baseline: top(first) + baseOf(first),
    keepsNext: how.keepsNext,
    heads: how.heads,
    put: (x, y, sheet) => {
      how.trim?.(x, y, height, sheet);
      for (const { x: left, strips } of columns) putAll(strips, x + left, y + top(strips), sheet);
    },
    split: room => splitColumns(columns, how, room),
  };
}

const SHARE_ABOVE = { top: 0, middle: 0.5, bottom: 1, line: 0.5 };

/** The base of a column's first line; 0 for one that does not begin with words. */
const baseOf = (strips: readonly Strip[]): number => strips[0]?.baseline ?? 0;

/** For a row that no page can hold: each column goes on where it stopped. */
function splitColumns(columns: readonly Column[], how: SideBySide, room: number): readonly [Strip, Strip] | undefined {
  const halves = columns.map(column => ({ x: column.x, halves: parted(column.strips, room - 2 * how.pad) }));
  if (halves.every(({ halves: [fits] }) => fits.length === 0)) return undefined;
  const part = (which: 0 | 1): readonly Column[] => halves.map(each => ({ x: each.x, strips: each.halves[which] }));
  const top = { ...how, place: 'top' } as const;
  return [sideBySide(part(0), { ...top, keepsNext: false }), sideBySide(part(1), top)];
}
