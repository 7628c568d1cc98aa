import type { FrameStyle, Grid } from '../import/job.ts';
import { floorTo, type Length, minus, nm, plus, share, times } from '../units/length.ts';
import type { LengthWorking } from './door-set.ts';
import { onceForEach } from './once-for.ts';
import { type Counted, type Given, type Sum, sumOf, work, workShared } from './working.ts';

/** A row or a column of clear openings: where it starts (from the bottom, from the left), and its size. */
export type Band = {
  readonly start: Length;
  readonly size: Length;
  /** The size that its panels are cut for: where sizes are shared, that of the smallest, so that one setting cuts all. */
  readonly working: LengthWorking;
};

/** A frame's clear openings, row by row from the bottom and column by column from the left. */
export type Division = { readonly rows: readonly Band[]; readonly columns: readonly Band[] };

type Leaf = { readonly width: LengthWorking; readonly height: LengthWorking };

/**
 * How the members of a style divide a leaf. Sizes can come out negative: the checks look at that. The import has seen to
 * it that there is a panel, and a height for each middle rail or for none.
 */
export const divisionOf = (leaf: Leaf, style: FrameStyle, grid: Grid, increment: Length): Division => ({
  columns: columnsOf(leaf, style, grid, increment),
  rows: grid.middleRailHeights.length > 0 ? rowsAtHeights(leaf, style, grid) : rowsShared(leaf, style, grid, increment),
});

function columnsOf(leaf: Leaf, style: FrameStyle, grid: Grid, increment: Length): readonly Band[] {
  const given = { W: leaf.width.value, S: style.stileWidth, MS: style.middleStile };
  const size = sharedSize(sightWidth(grid.panelsWide), given, grid.panelsWide, increment);
  return sharedBands(size, style.stileWidth, style.middleStile);
}

function rowsShared(leaf: Leaf, style: FrameStyle, grid: Grid, increment: Length): readonly Band[] {
  const given = { H: leaf.height.value, TR: style.topRail, BR: style.bottomRail, MR: style.middleRail };
  const size = sharedSize(sightHeight(grid.panelsHigh), given, grid.panelsHigh, increment);
  return sharedBands(size, style.bottomRail, style.middleRail);
}

const sightWidth = onceForEach((count: number) => sumOf('sight-width', [1, 'W'], [-2, 'S'], [1 - count, 'MS']));
const sightHeight = onceForEach((count: number) =>
  sumOf('sight-height', [1, 'H'], [-1, 'TR'], [-1, 'BR'], [1 - count, 'MR']),
);

/** What is not shared is not rounded either: a single panel is cut to its frame, wherever that lies on the tape. */
const sharedSize = <Symbol extends string>(
  sum: Sum<Symbol>,
  given: Given<Symbol>,
  count: number,
  increment: Length,
): LengthWorking => (count === 1 ? work(sum, given) : workShared(sum, { by: count, to: increment }, given));

/**
 * Bands of one size with members between them. What the sharing left over is spread: whole increments one by one from
 * the first band on, the odd remainder to the last, so that no two differ by more than the increment.
 */
function sharedBands(working: LengthWorking, from: Length, member: Length): readonly Band[] {
  const increment = working.roundedTo ?? nm(1);
  const whole = floorTo(increment, working.rest);
  const bands: Band[] = [];
  let start = from;
  for (let at = 0; at < working.sharedBy; at += 1) {
    const last = at === working.sharedBy - 1;
    const extra = times(at, increment) < whole ? increment : last ? minus(working.rest, whole) : nm(0);
    const size = plus(working.value, extra);
    bands.push({ start, size, working });
    start = plus(start, size, member);
  }
  return bands;
}

/** Rows between middle rails whose centres are given, above the door's bottom edge. */
function rowsAtHeights(leaf: Leaf, style: FrameStyle, grid: Grid): readonly Band[] {
  // Half of an odd 64th is no whole nanometre: the rail then stands half a nanometre above its centre.
  const half = share(style.middleRail, 2, nm(1)).each;
  const centres = grid.middleRailHeights;
  const starts = [style.bottomRail, ...centres.map(centre => plus(minus(centre, half), style.middleRail))];
  const given = {
    ...Object.fromEntries(centres.map((centre, at) => [`h${at + 1}`, centre])),
    H: leaf.height.value,
    TR: style.topRail,
    BR: style.bottomRail,
    MR: style.middleRail,
    'MR/2': half,
  };
  return starts.map((start, at) => {
    const sum: Sum<string> = sumOf('sight-height', ...rowTop(at, centres.length), ...rowBottom(at));
    const working = work(sum, given);
    return { start, size: working.value, working };
  });
}

/** The lower edge of the middle rail above a row, or of the top rail. */
const rowTop = (row: number, middleRails: number): readonly Counted<string>[] =>
  row === middleRails
    ? [
        [1, 'H'],
        [-1, 'TR'],
      ]
    : [
        [1, `h${row + 1}`],
        [-1, 'MR/2'],
      ];

/** Taken from it: the upper edge of the middle rail below the row, or of the bottom rail. */
const rowBottom = (row: number): readonly Counted<string>[] =>
  row === 0
    ? [[-1, 'BR']]
    : [
        [-1, `h${row}`],
        [-1, 'MR'],
        [1, 'MR/2'],
      ];
