import type { FrameStyle, Grid } from '../import/job.ts';
import { floorTo, type Length, minus, nm, plus, share, times } from '../units/length.ts';
import type { LengthWorking, Term } from './door-set.ts';
import type { Worked } from './worked.ts';
import { work, workShared } from './working.ts';

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
  const count = grid.panelsWide;
  const terms: readonly Term[] = [
    [1, 'W', leaf.width.value],
    [-2, 'S', style.stileWidth],
    [1 - count, 'MS', style.middleStile],
  ];
  return sharedBands(sharedSize('sight-width', terms, count, increment), style.stileWidth, style.middleStile);
}

function rowsShared(leaf: Leaf, style: FrameStyle, grid: Grid, increment: Length): readonly Band[] {
  const count = grid.panelsHigh;
  const terms: readonly Term[] = [
    [1, 'H', leaf.height.value],
    [-1, 'TR', style.topRail],
    [-1, 'BR', style.bottomRail],
    [1 - count, 'MR', style.middleRail],
  ];
  return sharedBands(sharedSize('sight-height', terms, count, increment), style.bottomRail, style.middleRail);
}

/** What is not shared is not rounded either: a single panel is cut to its frame, wherever that lies on the tape. */
const sharedSize = (of: Worked, terms: readonly Term[], count: number, increment: Length): LengthWorking =>
  count === 1 ? work(of, ...terms) : workShared(of, { by: count, to: increment }, ...terms);

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
  return starts.map((start, at) => {
    const working = work(
      'sight-height',
      ...rowTop(leaf, style, centres, half, at),
      ...rowBottom(style, centres, half, at),
    );
    return { start, size: working.value, working };
  });
}

/** The lower edge of the middle rail above a row, or of the top rail. */
const rowTop = (
  leaf: Leaf,
  style: FrameStyle,
  centres: readonly Length[],
  half: Length,
  row: number,
): readonly Term[] => {
  const centre = centres[row];
  return centre === undefined
    ? [
        [1, 'H', leaf.height.value],
        [-1, 'TR', style.topRail],
      ]
    : [
        [1, `h${row + 1}`, centre],
        [-1, 'MR/2', half],
      ];
};

/** Taken from it: the upper edge of the middle rail below the row, or of the bottom rail. */
const rowBottom = (style: FrameStyle, centres: readonly Length[], half: Length, row: number): readonly Term[] => {
  const centre = centres[row - 1];
  return centre === undefined
    ? [[-1, 'BR', style.bottomRail]]
    : [
        [-1, `h${row}`, centre],
        [-1, 'MR', style.middleRail],
        [1, 'MR/2', half],
      ];
};
