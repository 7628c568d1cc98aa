import { findPlace, type Looking, type Place, place, type Rule } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import { type Direction, type OpenBin, openBin } from './rows.ts';

/** A filling of bins, and the pieces for which there was no bin left, by kind. */
export type Filling = { readonly bins: readonly OpenBin[]; readonly left: readonly number[] };

/** So many of the latest bins are looked through for a place, so that a job ten times as large takes ten times as long. */
const BINS_LOOKED_THROUGH = 40;

/**
 * Puts the pieces one after another where they fit best by `rule`, and opens a bin where they fit nowhere: the first
 * kind that is left, in the order of the problem.
 */
export function firstPlan(
  looking: Looking,
  order: readonly number[],
  rule: Rule,
  first: Direction | undefined,
): Filling {
  const { problem } = looking;
  const bins: OpenBin[] = [];
  const left: number[] = [];
  const supply = problem.bins.map(bin => bin.available);
  for (const kind of order) {
    const piece = problem.pieces[kind];
    if (piece === undefined) continue;
    const where =
      findPlace(looking, kind, bins, Math.max(0, bins.length - BINS_LOOKED_THROUGH), rule) ??
      placeInNew(looking, kind, supply, rule, first);
    if (where === undefined) {
      left.push(kind);
      continue;
    }
    if (where.bin.count === 0) bins.push(where.bin);
    place(where, piece, kind);
  }
  return { bins, left };
}

/** A place in a bin that is opened for this piece. */
function placeInNew(
  looking: Looking,
  piece: number,
  supply: number[],
  rule: Rule,
  first: Direction | undefined,
): Place | undefined {
  for (let kind = 0; kind < supply.length; kind += 1) {
    if ((supply[kind] ?? 0) <= 0) continue;
    const where = placeInEmpty(looking, piece, kind, rule, first);
    if (where === undefined) continue;
    supply[kind] = (supply[kind] ?? 0) - 1;
    return where;
  }
  return undefined;
}

/** A place in an empty bin of a kind. A piece that does not come out with this first cut is tried with either. */
export function placeInEmpty(
  looking: Looking,
  piece: number,
  kind: number,
  rule: Rule,
  first: Direction | undefined,
): Place | undefined {
  const { problem } = looking;
  const wanted = findPlace(looking, piece, [openBin(kind, problem, first)], 0, rule);
  if (wanted !== undefined || first === undefined) return wanted;
  return findPlace(looking, piece, [openBin(kind, problem, undefined)], 0, rule);
}

/** Whether the saw gets a piece of this size out of any bin of the stock. */
export const fitsSomewhere = (looking: Looking, piece: number): boolean =>
  looking.problem.bins.some(
    (_, kind) => placeInEmpty(looking, piece, kind, { fit: 'area', split: 'shorter' }, undefined) !== undefined,
  );

/** Every piece of the job by kind, largest first: the order of the kinds. */
export const everyPiece = (problem: CuttingProblem): readonly number[] =>
  problem.pieces.flatMap((piece, kind) => piece.blanks.map(() => kind));

export const costOfBins = (problem: CuttingProblem, bins: readonly OpenBin[]): number =>
  bins.reduce((total, bin) => total + (problem.bins[bin.kind]?.cost ?? 0), 0);

/** Nothing left uncut comes first, then what the bins cost. */
export const isBetter = (problem: CuttingProblem, one: Filling, two: Filling): boolean =>
  one.left.length !== two.left.length
    ? one.left.length < two.left.length
    : costOfBins(problem, one.bins) < costOfBins(problem, two.bins) - COST_EPSILON;

/** Costs are sums of shares; what differs by less is the same. */
export const COST_EPSILON = 1e-7;
