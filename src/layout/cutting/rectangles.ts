import type { Demand } from './demand.ts';
import { type Lie, waysToFit } from './lying.ts';
import { type Counting, copyCounts, tooMany } from './packed-counts.ts';
import { fewPlaces, type Points } from './points.ts';
import type { ClearStretch, CuttingProblem } from './problem.ts';
import { BOTH, type Direction, other } from './rows.ts';

/** A clear stretch on its points, and the ways in which pieces that are asked for may lie in it. */
export type Sheet = {
  readonly along: Points;
  readonly across: Points;
  readonly lies: readonly (Lie & { readonly at: number })[];
  readonly area: number;
  readonly areas: readonly number[];
  readonly kinds: readonly number[];
};

/** The stretch on its points; undefined where nothing that is asked for fits. */
export function sheetOf({ pieces }: CuttingProblem, demand: Demand, clear: ClearStretch): Sheet | undefined {
  const { length, width } = clear;
  const fitting = waysToFit(pieces, clear).filter(({ kind }) => (demand[kind] ?? 0) > 0);
  const along = fewPlaces(new Set(fitting.map(lie => lie.length)), length, 'up');
  const across = fewPlaces(new Set(fitting.map(lie => lie.width)), width, 'up');
  const lies = fitting
    .map(lie => ({ ...lie, x: along.index(lie.length), y: across.index(lie.width) }))
    .filter(({ x, y }) => x < along.count && y < across.count)
    .map(({ x, y, ...lie }) => ({ ...lie, at: x * across.count + y }));
  if (lies.length === 0) return undefined;
  return {
    along,
    across,
    lies,
    area: length * width,
    areas: pieces.map(piece => piece.area),
    kinds: [...new Set(lies.map(lie => lie.kind))],
  };
}

/** In which direction rectangles of a layer are put together, and in which they may be wider than what they are made of. */
export type Joining = {
  readonly joins: readonly Direction[];
  readonly trims: readonly Direction[];
  /** Whether only rectangles that are as large as the whole across the joining are asked for. */
  readonly whole: boolean;
};

/** The last stage is a trim. */
export const STAGES_AND_TRIM = 4;

/** Any cut after any other. */
export const FREE: readonly Joining[] = [{ joins: BOTH, trims: BOTH, whole: false }];

/** Rows of pieces, strips of rows, and the whole of strips; see `pricing.ts`. With a stage for the trim pieces of a row may differ. */
export const inThree = (first: Direction, stages: number): readonly Joining[] => [
  { joins: [first], trims: stages < STAGES_AND_TRIM ? [first] : BOTH, whole: false },
  { joins: [other(first)], trims: [other(first)], whole: false },
  { joins: [first], trims: [first], whole: true },
];

/** How many pairs of places filling a layer looks at, about. */
export function placesOf({ along, across }: Sheet, { joins, whole }: Joining): number {
  const [columns, rows] = [along.count, across.count];
  return joins.reduce(
    (sum, join) =>
      sum +
      (join === 'crosscut' ? (columns * columns * (whole ? 1 : rows)) / 4 : (rows * rows * (whole ? 1 : columns)) / 4),
    0,
  );
}

/** For every rectangle on the points: what its best way is worth, the pieces in it, and what it is made of. */
export type Layer = {
  readonly values: Float64Array;
  readonly counts: Int32Array;
  /** Two rectangles of this layer; or one, with a reason in place of the other. */
  readonly one: Int32Array;
  readonly two: Int32Array;
  readonly joining: Joining;
};
/** Reasons: it is a piece, a rectangle of the layer below, or a smaller one of this. */
export const PIECE = -1;
export const BELOW = -2;
export const SMALLER = -3;

/** Fills layer after layer, each from the one below it. */
export function fillLayers(sheet: Sheet, counting: Counting, joinings: readonly Joining[]): readonly Layer[] {
  const layers: Layer[] = [];
  for (const joining of joinings) {
    const layer = emptyLayer(sheet, counting, joining);
    const below = layers.at(-1);
    if (below === undefined) putPieces(sheet, counting, layer);
    fillLayer(sheet, counting, layer, below);
    layers.push(layer);
  }
  return layers;
}

function emptyLayer({ along, across }: Sheet, { words }: Counting, joining: Joining): Layer {
  const corners = along.count * across.count;
  return {
    values: new Float64Array(corners),
    counts: new Int32Array(corners * words),
    one: new Int32Array(corners),
    two: new Int32Array(corners),
    joining,
  };
}

function putPieces({ lies }: Sheet, counting: Counting, { values, counts, one, two }: Layer): void {
  const { words, wordAt, fieldAt, prices } = counting;
  for (const [index, { kind, at }] of lies.entries()) {
    if ((prices[kind] ?? 0) <= (values[at] ?? 0)) continue;
    values[at] = prices[kind] ?? 0;
    counts.fill(0, at * words, (at + 1) * words);
    counts[at * words + (wordAt[kind] ?? 0)] = 1 << (fieldAt[kind] ?? 0);
    one[at] = index;
    two[at] = PIECE;
  }
}

/** What differs by less is the same. */
const TINY = 1e-9;

function fillLayer(sheet: Sheet, counting: Counting, layer: Layer, below: Layer | undefined): void {
  const { along, across } = sheet;
  const { words } = counting;
  const { values, counts, one, two, joining } = layer;
  const [columns, rows] = [along.count, across.count];
  const joinsAlong = joining.joins.includes('crosscut');
  const joinsAcross = joining.joins.includes('rip');
  const trimsAlong = joining.trims.includes('crosscut');
  const trimsAcross = joining.trims.includes('rip');
  // A rectangle that is worth no more than a smaller one is not cut off: for every row and for this column, those that are.
  const alongs = new Int32Array(joinsAlong ? columns * rows : 0);
  const alongEnds = new Int32Array(rows);
  const acrosses = new Int32Array(rows);
  const best: Best = { value: 0, one: -1, two: PIECE, merged: new Int32Array(words), other: new Int32Array(words) };
  for (let x = joining.whole && !joinsAlong ? columns - 1 : 1; x < columns; x += 1) {
    let acrossEnd = 0;
    for (let y = joining.whole && !joinsAcross ? rows - 1 : 1; y < rows; y += 1) {
      const at = x * rows + y;
      best.value = values[at] ?? 0;
      best.one = -1;
      if (below !== undefined) consider(best, below.values[at] ?? 0, at, BELOW);
      if (trimsAlong) consider(best, values[at - rows] ?? 0, at - rows, SMALLER);
      if (trimsAcross) consider(best, values[at - 1] ?? 0, at - 1, SMALLER);
      const alongEnd = alongEnds[y] ?? 0;
      if (joinsAlong) joinParts(best, counting, layer, along, x, y, rows, alongs, y * columns, alongEnd);
      if (joinsAcross) joinParts(best, counting, layer, across, y, x * rows, 1, acrosses, 0, acrossEnd);
      if (best.one >= 0) {
        if (best.two === BELOW) copyCounts(below?.counts ?? counts, at, counts, at, words);
        else if (best.two === SMALLER) copyCounts(counts, best.one, counts, at, words);
        else copyCounts(best.merged, 0, counts, at, words);
        values[at] = best.value;
        one[at] = best.one;
        two[at] = best.two;
      }
      if (joinsAlong && best.value > (values[at - rows] ?? 0)) {
        alongs[y * columns + alongEnd] = x;
        alongEnds[y] = alongEnd + 1;
      }
      if (joinsAcross && best.value > (values[at - 1] ?? 0)) {
        acrosses[acrossEnd] = y;
        acrossEnd += 1;
      }
    }
  }
}

/** The best way known of a rectangle while others are tried; `one` is -1 while it is the piece that was put there, or none. */
type Best = { value: number; one: number; two: number; merged: Int32Array; other: Int32Array };

function consider(best: Best, value: number, one: number, two: number): void {
  if (value <= best.value) return;
  best.value = value;
  best.one = one;
  best.two = two;
}

/** Tries to make a rectangle that ends at place `end` of two: one that ends at a step, and one that takes what is left. */
function joinParts(
  best: Best,
  counting: Counting,
  { values, counts }: Layer,
  { count, table }: Points,
  end: number,
  base: number,
  stride: number,
  steps: Int32Array,
  from: number,
  howMany: number,
): void {
  for (let step = from; step < from + howMany; step += 1) {
    const cut = steps[step] ?? 0;
    const rest = table === undefined ? end - cut : (table[end * count + cut] ?? 0);
    if (rest < cut) break;
    const near = base + cut * stride;
    const far = base + rest * stride;
    const spare = (values[near] ?? 0) + (values[far] ?? 0) - best.value - TINY;
    if (spare <= 0) continue;
    const lost = tooMany(counting, counts, near, far, best.other, spare);
    if (lost >= spare) continue;
    best.value += spare + TINY - lost;
    best.one = near;
    best.two = far;
    const { merged } = best;
    best.merged = best.other;
    best.other = merged;
  }
}
