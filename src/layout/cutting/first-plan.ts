import { findPlace, type Place, place, type Rule } from './placing.ts';
import type { BinKind, CuttingProblem, PieceKind } from './problem.ts';
import { type Direction, type OpenBin, openBin } from './rectangles.ts';

/** A filling of bins, and the pieces for which there was no bin left, by kind. */
export type Filling = { readonly bins: readonly OpenBin[]; readonly left: readonly number[] };

/** So many of the latest bins are looked through for a place, so that a job ten times as large takes ten times as long. */
const BINS_LOOKED_THROUGH = 40;

/**
 * Puts the pieces one after another where they fit best by `rule`, and opens a bin where they fit nowhere: those on
 * hand before those to buy, in the order of the problem.
 */
export function firstPlan(
  problem: CuttingProblem,
  order: readonly number[],
  rule: Rule,
  first: Direction | undefined,
): Filling {
  const bins: OpenBin[] = [];
  const left: number[] = [];
  const supply = problem.bins.map(bin => bin.available);
  for (const kind of order) {
    const piece = problem.pieces[kind];
    if (piece === undefined) continue;
    const where =
      findPlace(problem, piece, bins, Math.max(0, bins.length - BINS_LOOKED_THROUGH), rule) ??
      placeInNew(problem, piece, supply, rule, first);
    if (where === undefined) {
      left.push(kind);
      continue;
    }
    if (where.bin.pieces.length === 0) bins.push(where.bin);
    place(where, kind);
  }
  return { bins, left };
}

/** A place in a bin that is opened for this piece: the first kind of bin that is left and that it fits. */
function placeInNew(
  problem: CuttingProblem,
  piece: PieceKind,
  supply: number[],
  rule: Rule,
  first: Direction | undefined,
): Place | undefined {
  for (const [index, bin] of problem.bins.entries()) {
    if ((supply[index] ?? 0) <= 0) continue;
    const where = placeInEmpty(problem, piece, index, bin, rule, first);
    if (where === undefined) continue;
    supply[index] = (supply[index] ?? 0) - 1;
    return where;
  }
  return undefined;
}

/** A place in an empty bin. A piece that does not come out with this first cut is tried with either. */
function placeInEmpty(
  problem: CuttingProblem,
  piece: PieceKind,
  index: number,
  bin: BinKind,
  rule: Rule,
  first: Direction | undefined,
): Place | undefined {
  const wanted = findPlace(problem, piece, [openBin(index, bin, first)], 0, rule);
  if (wanted !== undefined || first === undefined) return wanted;
  return findPlace(problem, piece, [openBin(index, bin, undefined)], 0, rule);
}

/** Whether the saw gets a piece of this size out of any bin of the stock. */
export const fitsSomewhere = (problem: CuttingProblem, piece: PieceKind): boolean =>
  problem.bins.some(
    (bin, index) =>
      placeInEmpty(problem, piece, index, bin, { fit: 'area', split: 'shorter' }, undefined) !== undefined,
  );

/** Every piece of the job by kind, largest first: the order of the kinds. */
export const everyPiece = (problem: CuttingProblem): readonly number[] =>
  problem.pieces.flatMap((piece, kind) => piece.blanks.map(() => kind));
