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
  readonly heads?: Strip;
};

/**
 * Columns beside each other as one strip. In place `line`, those that begin with words share the first line's base, and
 * shorter ones are centred: what a table's row wants.
 */
export function sideBySide(columns: readonly Column[], how: SideBySide): Strip {
  const baselines = columns.map(column => (how.place === 'line' ? column.strips[0]?.baseline : undefined));
  const baseline = Math.max(0, ...baselines.map(each => each ?? 0));
  const drops = baselines.map(each => (each === undefined ? 0 : baseline - each));
  const heights = columns.map((column, index) => (drops[index] ?? 0) + heightOf(column.strips));
  const inner = Math.max(0, ...heights);
  // Words hang together: they move as one group, as tall as the tallest of them.
  const words = Math.max(0, ...heights.filter((_, index) => baselines[index] !== undefined));
  const tops = columns.map((_, index) => {
    const spare = inner - (baselines[index] === undefined ? (heights[index] ?? 0) : words);
    return how.pad + (drops[index] ?? 0) + spare * SHARE_ABOVE[how.place];
  });
  const height = inner + 2 * how.pad;
  return {
    height,
    baseline: tops[0] !== undefined ? tops[0] + (columns[0]?.strips[0]?.baseline ?? 0) : 0,
    ...(how.keepsNext === undefined ? {} : { keepsNext: how.keepsNext }),
    ...(how.heads === undefined ? {} : { heads: how.heads }),
    put: (x, y, sheet) => {
      how.trim?.(x, y, height, sheet);
      for (const [index, column] of columns.entries())
        putAll(column.strips, x + column.x, y + (tops[index] ?? 0), sheet);
    },
    split: room => splitColumns(columns, how, room),
  };
}

const SHARE_ABOVE = { top: 0, middle: 0.5, bottom: 1, line: 0.5 };

/** For a row that no page can hold: each column goes on where it stopped. */
function splitColumns(columns: readonly Column[], how: SideBySide, room: number): readonly [Strip, Strip] | undefined {
  const halves = columns.map(column => ({ x: column.x, halves: parted(column.strips, room - 2 * how.pad) }));
  if (halves.every(({ halves: [fits] }) => fits.length === 0)) return undefined;
  const part = (which: 0 | 1): readonly Column[] => halves.map(each => ({ x: each.x, strips: each.halves[which] }));
  const top = { ...how, place: 'top' } as const;
  return [sideBySide(part(0), { ...top, keepsNext: false }), sideBySide(part(1), top)];
}
