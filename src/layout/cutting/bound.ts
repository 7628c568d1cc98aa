import type { CutPlan } from '../shop-plan.ts';
import { areaAsked, type Demand } from './demand.ts';
import type { BinKind, CuttingProblem, PieceKind } from './problem.ts';

/** The least number of bins that any plan needs, and by what it is proven. */
export type Bound = CutPlan['bound'];

/** A bound, and by which weights pieces take most. */
export type Weighing = {
  readonly bound: Bound;
  /**
   * Shares of a bin for each kind of piece, of which no bin can hold more than 1, whatever way they are cut: some of those
   * by which all pieces together take most, the most first.
   */
  readonly shares: () => readonly (readonly number[])[];
};

/**
 * No plan of these pieces needs fewer bins than the bound. By area: not even if wood could be poured, the largest bins taken
 * first. By packing: pieces are weighed such that no bin can hold more than 1, whatever way they are cut; see `scales`.
 */
export function weigh(problem: CuttingProblem, demand: Demand): Weighing {
  const area = areaBound(problem, demand);
  const pairs = pairsFor(problem, demand);
  const weights = Float64Array.from(pairs, pair => weightBy(problem.pieces, demand, pair));
  const most = weights.reduce((most, weight) => Math.max(most, weight), 0);
  // Sums of floats: what is so little over a whole number proves nothing.
  const bins = Math.ceil(most - 1e-7);
  return {
    bound: bins > area ? { bins, by: 'packing' } : { bins: area, by: 'area' },
    shares: () => heaviest(problem.pieces, pairs, weights),
  };
}

/** Pairs whose weights follow each other are all but the same, so that some are left out between any two. */
function heaviest(
  pieces: readonly PieceKind[],
  pairs: readonly Pair[],
  weights: Float64Array,
): readonly (readonly number[])[] {
  const least = weights.toSorted().at(-HEAVIEST * HEAVIEST_APART) ?? 0;
  return pairs
    .flatMap((pair, order) => ((weights[order] ?? 0) < least ? [] : [{ ...pair, order, weight: weights[order] ?? 0 }]))
    .sort((one, two) => two.weight - one.weight || one.order - two.order)
    .filter((_, at) => at % HEAVIEST_APART === 0 && at < HEAVIEST * HEAVIEST_APART)
    .map(({ along, across }) =>
      pieces.map(({ turns }, at) => {
        const share = (along.lies[at] ?? 0) * (across.lies[at] ?? 0);
        return turns ? Math.min(share, (along.turned[at] ?? 0) * (across.turned[at] ?? 0)) : share;
      }),
    );
}

const HEAVIEST = 8;
const HEAVIEST_APART = 8;

function areaBound(problem: CuttingProblem, demand: Demand): number {
  let left = areaAsked(problem, demand);
  let bins = 0;
  for (const bin of [...problem.bins].sort((one, two) => two.area - one.area)) {
    const used = Math.min(bin.available, Math.ceil(left / bin.area));
    bins += used;
    left -= used * bin.area;
    if (left <= 0) break;
  }
  return bins;
}

type Pair = { readonly along: Scaled; readonly across: Scaled };

/**
 * All pairs of scales, one for lengths and one for widths: pieces that lie beside each other in a bin have products of
 * their scales that add up to 1 at most. A piece that may be turned counts the lighter way. S. Fekete, J. Schepers, "A
 * general framework for bounds for higher-dimensional orthogonal packing problems", Mathematical Methods of Operations
 * Research 60 (2004) 311-329.
 */
function pairsFor(problem: CuttingProblem, demand: Demand): readonly Pair[] {
  const length = Math.max(...problem.bins.map(clearLength));
  const width = Math.max(...problem.bins.map(bin => bin.clear[0]?.width ?? 0));
  const alongs = scaled(problem.pieces, demand, length, piece => piece.length);
  const acrosses = scaled(problem.pieces, demand, width, piece => piece.width);
  return alongs.flatMap(along => acrosses.map(across => ({ along, across })));
}

/** From the beginning of the first clear stretch to the end of the last, as if no defect lay between. */
function clearLength(bin: BinKind): number {
  const [first, last] = [bin.clear[0], bin.clear.at(-1)];
  return first === undefined || last === undefined ? 0 : last.along + last.length - first.along;
}

type Scaled = { readonly lies: Float64Array; readonly turned: Float64Array };

function weightBy(pieces: readonly PieceKind[], counts: readonly number[], { along, across }: Pair): number {
  const { lies, turned } = along;
  let weight = 0;
  for (let at = 0; at < lies.length; at += 1) {
    let share = (lies[at] ?? 0) * (across.lies[at] ?? 0);
    if (pieces[at]?.turns) share = Math.min(share, (turned[at] ?? 0) * (across.turned[at] ?? 0));
    weight += (counts[at] ?? 0) * share;
  }
  return weight;
}

const scaled = (
  pieces: readonly PieceKind[],
  demand: Demand,
  whole: number,
  measure: (piece: PieceKind) => number,
): readonly Scaled[] =>
  scales(
    whole,
    pieces
      .filter((_, kind) => (demand[kind] ?? 0) > 0)
      .flatMap(piece => (piece.turns ? [piece.length, piece.width] : [measure(piece)])),
  ).map(scale => ({
    lies: Float64Array.from(pieces, piece => scale(measure(piece))),
    turned: Float64Array.from(pieces, piece => scale(piece.length + piece.width - measure(piece))),
  }));

/** So many thresholds are tried for each scale. */
const THRESHOLDS_MAX = 40;

/**
 * Scales of sizes from 0 to 1 such that sizes that add up to the whole have scales that add up to 1 at most (dual
 * feasible functions): as it is; rounded to parts (Lueker 1983); small ones left out and their counterparts counted
 * full (Fekete & Schepers 2001); in whole steps (Carlier, Clautiaux, Moukrim 2007).
 */
function scales(whole: number, sizes: readonly number[]): readonly ((size: number) => number)[] {
  const halves = [...new Set(sizes.map(size => Math.min(size, whole - size)))].filter(size => size > 0);
  const thresholds = thinned(halves.sort((one, two) => one - two));
  return [
    size => size / whole,
    ...Array.from({ length: 12 }, (_, index) => (size: number) => parts(size, whole, index + 1)),
    ...thresholds.map(least => (size: number) => (size > whole - least ? 1 : size < least ? 0 : size / whole)),
    ...thresholds.map(step => (size: number) => steps(size, whole, step)),
  ];
}

function thinned(thresholds: readonly number[]): readonly number[] {
  const every = Math.ceil(thresholds.length / THRESHOLDS_MAX);
  return thresholds.filter((_, index) => index % every === 0);
}

const parts = (size: number, whole: number, count: number): number =>
  ((count + 1) * size) % whole === 0 ? size / whole : Math.floor(((count + 1) * size) / whole) / count;

function steps(size: number, whole: number, step: number): number {
  const all = Math.floor(whole / step);
  if (2 * size > whole) return 1 - Math.floor((whole - size) / step) / all;
  return 2 * size === whole ? 0.5 : Math.floor(size / step) / all;
}
