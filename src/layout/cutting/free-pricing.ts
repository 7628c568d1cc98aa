import { waysToFit } from './lying.ts';
import { fewPlaces, type Points } from './points.ts';
import type { PieceKind } from './problem.ts';

/** A clear stretch without a limit of stages: places in both directions, and the pieces that end on them. */
export type FreeStretch = {
  readonly along: Points;
  readonly across: Points;
  readonly lies: readonly { readonly kind: number; readonly along: number; readonly across: number }[];
};

/** The stretch on points that are rounded down, so that every plan is one on the points too; undefined where they are too coarse. */
export function freeStretchOf(
  pieces: readonly PieceKind[],
  stretch: { readonly length: number; readonly width: number },
): FreeStretch | undefined {
  const fitting = waysToFit(pieces, stretch);
  const along = fewPlaces(new Set(fitting.map(lie => lie.length)), stretch.length, 'down');
  const across = fewPlaces(new Set(fitting.map(lie => lie.width)), stretch.width, 'down');
  const lies = fitting.map(({ kind, length, width }) => ({
    kind,
    along: along.index(length),
    across: across.index(width),
  }));
  return lies.some(lie => lie.along < 1 || lie.across < 1) ? undefined : { along, across, lies };
}

/**
 * The best of all ways to cut a stretch by through cuts, however often they change direction: each rectangle is a piece,
 * or two rectangles beside or behind each other. Gilmore and Gomory's recursion; see `pricing.ts`.
 */
export function priceFree(
  { along, across, lies }: FreeStretch,
  prices: ArrayLike<number>,
): { readonly value: number; readonly kinds: () => readonly number[] } {
  const { count: columns } = along;
  const { count: rows } = across;
  const values = new Float64Array(columns * rows);
  const pieces = new Int32Array(columns * rows).fill(-1);
  for (const lie of lies) {
    const at = lie.along * rows + lie.across;
    if ((prices[lie.kind] ?? 0) <= (values[at] ?? 0)) continue;
    values[at] = prices[lie.kind] ?? 0;
    pieces[at] = lie.kind;
  }
  for (let x = 1; x < columns; x += 1)
    for (let y = 1; y < rows; y += 1) {
      const { value } = bestSplit(along, across, values, x, y);
      if (value > (values[x * rows + y] ?? 0)) {
        values[x * rows + y] = value;
        pieces[x * rows + y] = -1;
      }
    }
  return { value: values.at(-1) ?? 0, kinds: () => kindsOf(along, across, values, pieces, columns - 1, rows - 1) };
}

type Corner = readonly [x: number, y: number];

/** The best pair of rectangles that a rectangle is cut into, a leftover being one without value. */
function bestSplit(
  along: Points,
  across: Points,
  values: Float64Array,
  x: number,
  y: number,
): { readonly value: number; readonly one: Corner; readonly two: Corner } {
  const rows = across.count;
  let value = values[(x - 1) * rows + y] ?? 0;
  let one: Corner = [x - 1, y];
  let two: Corner = [0, 0];
  const below = values[x * rows + y - 1] ?? 0;
  if (below > value) {
    value = below;
    one = [x, y - 1];
  }
  for (let cut = 1; cut < x; cut += 1) {
    const rest = along.less(x, cut);
    if (rest < cut) break;
    const sum = (values[cut * rows + y] ?? 0) + (values[rest * rows + y] ?? 0);
    if (sum <= value) continue;
    value = sum;
    one = [cut, y];
    two = [rest, y];
  }
  for (let cut = 1; cut < y; cut += 1) {
    const rest = across.less(y, cut);
    if (rest < cut) break;
    const sum = (values[x * rows + cut] ?? 0) + (values[x * rows + rest] ?? 0);
    if (sum <= value) continue;
    value = sum;
    one = [x, cut];
    two = [x, rest];
  }
  return { value, one, two };
}

function kindsOf(
  along: Points,
  across: Points,
  values: Float64Array,
  pieces: Int32Array,
  x: number,
  y: number,
): readonly number[] {
  const at = x * across.count + y;
  if (x === 0 || y === 0 || (values[at] ?? 0) <= 0) return [];
  const piece = pieces[at] ?? -1;
  if (piece >= 0) return [piece];
  const { one, two } = bestSplit(along, across, values, x, y);
  return [one, two].flatMap(([left, down]) => kindsOf(along, across, values, pieces, left, down));
}
