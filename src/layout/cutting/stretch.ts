import { exactPoints, gridPoints, type Points, type Rounding, sumsOf } from './points.ts';
import type { PieceKind } from './problem.ts';
import type { Direction } from './rows.ts';

/** A clear stretch and the pieces that can be cut from it, seen along one direction of its first cuts. */
export type Stretch = {
  readonly first: Direction;
  readonly main: Points;
  readonly cross: Points;
  /** The ways in which pieces may lie, the smallest extent in each direction first. */
  readonly lies: readonly Lie[];
  /** So many different widths of strips end with a row of equally wide pieces: no others are worth a look. */
  readonly strips: number;
};

/** `main` and `cross` are places on the points; pieces with the same `mainSize` or `crossSize` need no trim beside each other. */
export type Lie = {
  readonly kind: number;
  readonly turned: boolean;
  readonly main: number;
  readonly cross: number;
  readonly mainSize: number;
  readonly crossSize: number;
};

/**
 * The stretch with its points, so many that strips, places across and extents of pieces, multiplied, are no more than
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
    .filter(lie => lie.mainSize <= mainWhole && lie.crossSize <= crossWhole)
    .sort((one, two) => one.mainSize - two.mainSize || one.crossSize - two.crossSize);
  const mainSizes = [...new Set(fitting.map(lie => lie.mainSize))];
  const crossSizes = [...new Set(fitting.map(lie => lie.crossSize))];
  const most = Math.floor(work / Math.max(1, crossSizes.length));
  const strips = stripsOf(fitting, mainWhole);
  const [main, cross] = pointsFor(
    { whole: mainWhole, sums: sumsOf(mainSizes, mainWhole), strips },
    { whole: crossWhole, sums: sumsOf(crossSizes, crossWhole) },
    most,
    rounding,
  );
  const lies = fitting
    .map(lie => ({ ...lie, main: main.index(lie.mainSize), cross: cross.index(lie.crossSize) }))
    .filter(lie => lie.main < main.count && lie.cross < cross.count);
  if (lies.some(lie => lie.main < 1 || lie.cross < 1)) return undefined;
  return { first, main, cross, lies, strips: Math.min(strips, main.count) };
}

const GRID_LEAST = 100;
const GRID_MOST = 1200;

type Sums = { readonly whole: number; readonly sums: readonly number[] | undefined };

/** Sums as they are where both directions have room for them, a grid in one of them, or else in both. */
function pointsFor(
  main: Sums & { readonly strips: number },
  cross: Sums,
  most: number,
  rounding: Rounding,
): readonly [main: Points, cross: Points] {
  const [mains, crosses] = [main.sums, cross.sums];
  const { strips } = main;
  const gridded = (whole: number, count: number): Points => gridPoints(whole, Math.min(GRID_MOST, count), rounding);
  if (crosses !== undefined && crosses.length * Math.min(strips, GRID_LEAST) <= most) {
    const enough = crosses.length * strips <= most;
    if (mains !== undefined && (enough || crosses.length * mains.length <= most))
      return [exactPoints(mains), exactPoints(crosses)];
    return [gridded(main.whole, enough ? GRID_MOST : Math.floor(most / crosses.length)), exactPoints(crosses)];
  }
  if (mains !== undefined && Math.min(strips, mains.length) * GRID_LEAST <= most)
    return [exactPoints(mains), gridded(cross.whole, Math.floor(most / Math.min(strips, mains.length)))];
  const count = Math.floor(Math.sqrt(most));
  return [gridded(main.whole, count), gridded(cross.whole, count)];
}

/** How many different widths the rows of a strip can have: sums of extents of pieces that are equally wide. */
function stripsOf(lies: readonly Pick<Lie, 'mainSize' | 'crossSize'>[], whole: number): number {
  const widths = new Set<number>();
  for (const { same } of byExtent(lies, lie => lie.crossSize)) {
    const sums = sumsOf([...new Set(same.map(lie => lie.mainSize))], whole);
    if (sums === undefined) return Number.POSITIVE_INFINITY;
    for (const sum of sums) widths.add(sum);
  }
  return widths.size;
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

/** Ways to lie by their extent in one direction, the smallest first. */
export function byExtent<Each>(
  lies: readonly Each[],
  extentOf: (lie: Each) => number,
): readonly { readonly extent: number; readonly same: readonly Each[] }[] {
  const groups = new Map<number, Each[]>();
  for (const lie of lies) {
    const group = groups.get(extentOf(lie));
    if (group === undefined) groups.set(extentOf(lie), [lie]);
    else group.push(lie);
  }
  return [...groups].map(([extent, same]) => ({ extent, same })).sort((one, two) => one.extent - two.extent);
}
