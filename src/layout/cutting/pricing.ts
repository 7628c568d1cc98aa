import { apart, type CutTree, extent, type Part } from './cut-tree.ts';
import { exactPoints, gridPoints, type Points, type Rounding, sumsOf } from './points.ts';
import type { PieceKind } from './problem.ts';
import { type Direction, other } from './rows.ts';
import { fillSack, type Items, type Sack, TINY, takenFrom } from './sack.ts';

/** A clear stretch and the pieces that can be cut from it, seen along one direction of its first cuts. */
export type Stretch = {
  readonly first: Direction;
  readonly main: Points;
  readonly cross: Points;
  /** The ways in which pieces may lie, the smallest extent in each direction first. */
  readonly lies: readonly Lie[];
};

/** `main` and `cross` are places on the points; pieces with the same `mainSize` or `crossSize` need no trim beside each other. */
type Lie = {
  readonly kind: number;
  readonly turned: boolean;
  readonly main: number;
  readonly cross: number;
  readonly mainSize: number;
  readonly crossSize: number;
};

/**
 * The stretch with its points, so many that places along and across and extents of pieces, multiplied, are no more than
 * `work`; undefined where the points cannot tell the smallest piece from nothing.
 */
export function stretchOf(
  pieces: readonly PieceKind[],
  stretch: { readonly length: number; readonly width: number },
  first: Direction,
  rounding: Rounding,
  work: number,
): Stretch | undefined {
  const [mainWhole, crossWhole] =
    first === 'crosscut' ? [stretch.length, stretch.width] : [stretch.width, stretch.length];
  const fitting = pieces
    .flatMap((piece, kind) => waysToLie(piece, kind, first))
    .filter(lie => lie.mainSize <= mainWhole && lie.crossSize <= crossWhole);
  const mainSizes = [...new Set(fitting.map(lie => lie.mainSize))];
  const crossSizes = [...new Set(fitting.map(lie => lie.crossSize))];
  const most = Math.floor(work / Math.max(1, crossSizes.length));
  const [main, cross] = pointsFor(
    { whole: mainWhole, sums: sumsOf(mainSizes, mainWhole) },
    { whole: crossWhole, sums: sumsOf(crossSizes, crossWhole) },
    most,
    rounding,
  );
  const lies = fitting
    .map(lie => ({ ...lie, main: main.index(lie.mainSize), cross: cross.index(lie.crossSize) }))
    .filter(lie => lie.main < main.count && lie.cross < cross.count);
  return lies.some(lie => lie.main < 1 || lie.cross < 1) ? undefined : { first, main, cross, lies };
}

const GRID_LEAST = 100;
const GRID_MOST = 1200;

type Sums = { readonly whole: number; readonly sums: readonly number[] | undefined };

/** Sums as they are where both directions have room for them, a grid in one of them, or else in both. */
function pointsFor(main: Sums, cross: Sums, most: number, rounding: Rounding): readonly [main: Points, cross: Points] {
  const grid = (each: Sums, beside: number): Points =>
    gridPoints(each.whole, Math.min(GRID_MOST, Math.floor(most / beside)), rounding);
  const [mains, crosses] = [main.sums, cross.sums];
  if (mains !== undefined && crosses !== undefined && mains.length * crosses.length <= most)
    return [exactPoints(mains), exactPoints(crosses)];
  if (crosses !== undefined && crosses.length * GRID_LEAST <= most)
    return [grid(main, crosses.length), exactPoints(crosses)];
  if (mains !== undefined && mains.length * GRID_LEAST <= most) return [exactPoints(mains), grid(cross, mains.length)];
  const count = Math.floor(Math.sqrt(most));
  return [grid(main, count), grid(cross, count)];
}

const waysToLie = (
  piece: PieceKind,
  kind: number,
  first: Direction,
): readonly Pick<Lie, 'kind' | 'turned' | 'mainSize' | 'crossSize'>[] =>
  (piece.turns && piece.length !== piece.width ? [false, true] : [false]).map(turned => {
    const lengthwise = (first === 'crosscut') !== turned;
    return {
      kind,
      turned,
      mainSize: lengthwise ? piece.length : piece.width,
      crossSize: lengthwise ? piece.width : piece.length,
    };
  });

/** A stretch cut so that the prices of its pieces add up to the most. */
export type Priced = { readonly value: number; readonly tree: () => CutTree | undefined };

/**
 * The best of all ways to cut a stretch in three stages: strips across it, in each strip rows of pieces that are equally
 * wide, and in each row pieces that may be shorter than the strip. With two stages a strip is a row of pieces that are
 * exactly as wide as it is. P. C. Gilmore, R. E. Gomory, "Multistage cutting stock problems of two and more dimensions",
 * Operations Research 13 (1965) 94-120. `limits` bounds how often a kind comes in one row; no plan is missed without it.
 */
export function price(
  stretch: Stretch,
  stages: 2 | 3,
  prices: ArrayLike<number>,
  limits: readonly number[] | undefined,
): Priced {
  return stages === 2 ? priceTwo(stretch, prices, limits) : priceThree(stretch, prices, limits);
}

function priceThree(stretch: Stretch, prices: ArrayLike<number>, limits: readonly number[] | undefined): Priced {
  const { main, cross, lies } = stretch;
  const rows = byExtent(lies, lie => lie.crossSize).map(({ same }) => ({
    same,
    cross: same[0]?.cross ?? 0,
    sack: fillSack(
      main,
      itemsOf(same, lie => lie.main, prices, limits),
    ),
  }));
  const items: Items = { sizes: rows.map(row => row.cross), values: new Float64Array(rows.length), limits: undefined };
  const stripAt = (at: number): Sack => {
    for (const [index, { sack }] of rows.entries()) items.values[index] = sack.values[at] ?? 0;
    return fillSack(cross, items);
  };
  // A strip that is no better than a narrower one is left out.
  const worth: number[] = [];
  const values: number[] = [];
  let best = 0;
  for (let at = 1; at < main.count; at += 1) {
    if (rows.every(({ sack }) => sack.values[at] === sack.values[at - 1])) continue;
    const value = stripAt(at).values.at(-1) ?? 0;
    if (value <= best + TINY) continue;
    best = value;
    worth.push(at);
    values.push(value);
  }
  const all = fillSack(main, { sizes: worth, values: Float64Array.from(values), limits: undefined });
  const treeOfRow = (row: number, at: number): CutTree => {
    const found = rows[row];
    const pieces = found === undefined ? [] : takenFrom(main, found.sack, at);
    return inRow(
      stretch,
      stretch.first,
      pieces.flatMap(index => found?.same[index] ?? []),
    );
  };
  const treeOfStrip = (at: number): CutTree =>
    inRow(
      stretch,
      other(stretch.first),
      takenFrom(cross, stripAt(at), cross.count - 1).map(row => treeOfRow(row, at)),
    );
  return whole(stretch, all, index => treeOfStrip(worth[index] ?? 0));
}

function priceTwo(stretch: Stretch, prices: ArrayLike<number>, limits: readonly number[] | undefined): Priced {
  const { main, cross, lies } = stretch;
  const strips = byExtent(lies, lie => lie.mainSize).map(({ same }) => ({
    same,
    main: same[0]?.main ?? 0,
    sack: fillSack(
      cross,
      itemsOf(same, lie => lie.cross, prices, limits),
    ),
  }));
  const all = fillSack(main, {
    sizes: strips.map(strip => strip.main),
    values: Float64Array.from(strips, strip => strip.sack.values.at(-1) ?? 0),
    limits: undefined,
  });
  return whole(stretch, all, index => {
    const strip = strips[index];
    const pieces = strip === undefined ? [] : takenFrom(cross, strip.sack, cross.count - 1);
    return inRow(
      stretch,
      other(stretch.first),
      pieces.flatMap(each => strip?.same[each] ?? []),
    );
  });
}

const itemsOf = (
  same: readonly Lie[],
  sizeOf: (lie: Lie) => number,
  prices: ArrayLike<number>,
  limits: readonly number[] | undefined,
): Items => ({
  sizes: same.map(sizeOf),
  values: Float64Array.from(same, lie => prices[lie.kind] ?? 0),
  limits: limits === undefined ? undefined : same.map(lie => limits[lie.kind] ?? 0),
});

const whole = (stretch: Stretch, all: Sack, strip: (index: number) => CutTree): Priced => ({
  value: all.values.at(-1) ?? 0,
  tree: () => {
    const strips = takenFrom(stretch.main, all, stretch.main.count - 1);
    return strips.length === 0 ? undefined : inRow(stretch, stretch.first, strips.map(strip));
  },
});

function inRow(stretch: Stretch, direction: Direction, parts: readonly (Lie | CutTree)[]): CutTree {
  return apart(
    direction,
    parts.map((part): Part => {
      const tree = 'mainSize' in part ? pieceOf(stretch, part) : part;
      return { tree, size: extent(tree, direction) };
    }),
  );
}

const pieceOf = ({ first }: Stretch, { kind, turned, mainSize, crossSize }: Lie): CutTree => ({
  kind: 'piece',
  piece: kind,
  turned,
  length: first === 'crosscut' ? mainSize : crossSize,
  width: first === 'crosscut' ? crossSize : mainSize,
});

function byExtent(lies: readonly Lie[], extentOf: (lie: Lie) => number): readonly { readonly same: readonly Lie[] }[] {
  const groups = new Map<number, Lie[]>();
  for (const lie of lies) {
    const group = groups.get(extentOf(lie));
    if (group === undefined) groups.set(extentOf(lie), [lie]);
    else group.push(lie);
  }
  return [...groups.values()].map(same => ({ same }));
}
