import { heightOf, parted, putAll, ROOM_KEPT, type Sheet, type Size, type Spacing, type Strip } from './strip.ts';

/** A column of a row: where it starts and the strips in it. */
export type Column = { readonly x: number; readonly strips: readonly Strip[] };

export type SideBySide = {
  /** Kept free above and below, in the usual spacing. */
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
  const inside = insideOf(columns, how, 'usual');
  const isAllEven = columns.every(({ strips }) => strips.every(isEven));
  const usual = around(inside, columns, how, 'usual');
  const close = around(isAllEven ? inside : insideOf(columns, how, 'close'), columns, how, 'close');
  return {
    usual,
    close,
    keepsNext: how.keepsNext,
    heads: how.heads,
    put: (x, y, sheet, spacing) => {
      const fits = spacing === 'usual' ? usual : close;
      how.trim?.(x, y, fits.height, sheet);
      for (const { x: left, strips } of columns) {
        putAll(strips, x + left, y + topOf(strips, fits, how, spacing), sheet, spacing);
      }
    },
    split: (room, spacing) => splitColumns(columns, how, room, spacing),
  };
}

/** How tall the columns are, and those of them that begin with words, whose first lines stand on `base`. */
type Inside = { readonly inner: number; readonly words: number; readonly base: number };

type Fit = Size & Inside;

function insideOf(columns: readonly Column[], how: SideBySide, spacing: Spacing): Inside {
  let [base, inner, words] = [0, 0, 0];
  if (how.place === 'line') for (const { strips } of columns) base = Math.max(base, baseOf(strips, spacing));
  for (const { strips } of columns) {
    const drop = dropOf(strips, base, spacing);
    const height = (drop ?? 0) + heightOf(strips, spacing);
    inner = Math.max(inner, height);
    // Words hang together: they move as one group, as tall as the tallest of them.
    if (drop !== undefined) words = Math.max(words, height);
  }
  return { inner, words, base };
}

/** The whole strip, with what is kept free above and below. */
function around(inside: Inside, columns: readonly Column[], how: SideBySide, spacing: Spacing): Fit {
  const { inner, words, base } = inside;
  const height = inner + 2 * how.pad * ROOM_KEPT[spacing];
  const first = columns[0]?.strips ?? [];
  const baseline = topOf(first, inside, how, spacing) + baseOf(first, spacing);
  return { height, baseline, inner, words, base };
}

/** How far a column that begins with words goes down to the common base; undefined for any other column. */
function dropOf(strips: readonly Strip[], base: number, spacing: Spacing): number | undefined {
  const own = baseOf(strips, spacing);
  return base > 0 && own > 0 ? base - own : undefined;
}

/** Where a column begins, from the top of the strip. */
function topOf(strips: readonly Strip[], { inner, words, base }: Inside, how: SideBySide, spacing: Spacing): number {
  const drop = dropOf(strips, base, spacing);
  const spare = inner - (drop === undefined ? heightOf(strips, spacing) : words);
  return how.pad * ROOM_KEPT[spacing] + (drop ?? 0) + spare * SHARE_ABOVE[how.place];
}

const isEven = (strip: Strip): boolean => strip.usual === strip.close;

const SHARE_ABOVE = { top: 0, middle: 0.5, bottom: 1, line: 0.5 };

/** The base of a column's first line; 0 for one that does not begin with words. */
const baseOf = (strips: readonly Strip[], spacing: Spacing): number => strips[0]?.[spacing].baseline ?? 0;

/** For a row that no page can hold: each column goes on where it stopped. */
function splitColumns(
  columns: readonly Column[],
  how: SideBySide,
  room: number,
  spacing: Spacing,
): readonly [Strip, Strip] | undefined {
  const inner = room - 2 * how.pad * ROOM_KEPT[spacing];
  const halves = columns.map(column => ({ x: column.x, halves: parted(column.strips, inner, spacing) }));
  if (halves.every(({ halves: [fits] }) => fits.length === 0)) return undefined;
  const part = (which: 0 | 1): readonly Column[] => halves.map(each => ({ x: each.x, strips: each.halves[which] }));
  const top = { ...how, place: 'top' } as const;
  return [sideBySide(part(0), { ...top, keepsNext: false }), sideBySide(part(1), top)];
}
