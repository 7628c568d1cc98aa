import { type CuttingProblem, lies, type PieceKind, type Reach } from './problem.ts';
import { type Direction, type OpenBin, put, type Rectangle, stageOf } from './rectangles.ts';

/** How the best place for a piece is chosen, and which of its two cuts is made first. */
export type Rule = { readonly fit: Fit; readonly split: Split };

/** Least area left, least left on the tighter side, or least left on the looser side. */
export type Fit = 'area' | 'tight' | 'loose';

/** Cut first along the shorter or longer leftover, or so that the larger rectangle left is as large or small as can be. */
export type Split = 'shorter' | 'longer' | 'largest' | 'evenest';

export const FITS: readonly Fit[] = ['area', 'tight', 'loose'];
export const SPLITS: readonly Split[] = ['shorter', 'longer', 'largest', 'evenest'];

/** Where a piece goes. */
export type Place = {
  readonly bin: OpenBin;
  readonly index: number;
  readonly turned: boolean;
  readonly length: number;
  readonly width: number;
  readonly first: Direction;
};

/** The best place for a piece in `bins` from index `from` on; undefined where it fits in none of them. */
export function findPlace(
  problem: CuttingProblem,
  piece: PieceKind,
  bins: readonly OpenBin[],
  from: number,
  rule: Rule,
): Place | undefined {
  let best: Place | undefined;
  let least = Number.POSITIVE_INFINITY;
  const ways = lies(piece);
  for (let at = from; at < bins.length; at += 1) {
    const bin = bins[at];
    const kind = bin === undefined ? undefined : problem.bins[bin.kind];
    if (bin === undefined || kind === undefined) continue;
    for (let turn = 0; turn < ways.length; turn += 1) {
      const [length, width] = ways[turn] ?? [0, 0];
      if (!reaches(kind.reach.crosscut, length) || !reaches(kind.reach.rip, width)) continue;
      for (let index = 0; index < bin.free.length; index += 1) {
        const free = bin.free[index];
        if (free === undefined || free.length < length || free.width < width) continue;
        const score = looseness(free, length, width, rule.fit);
        if (score >= least) continue;
        const first = firstCut(problem, free, length, width, rule.split);
        if (first === undefined) continue;
        least = score;
        best = { bin, index, turned: turn === 1, length, width, first };
      }
    }
  }
  return best;
}

export const place = (where: Place, kind: number): void => put(where.bin, where.index, { kind, ...where }, where.first);

const reaches = (reach: Reach, size: number): boolean => size <= reach.upTo || size >= reach.from;

function looseness(free: Rectangle, length: number, width: number, fit: Fit): number {
  switch (fit) {
    case 'area':
      return free.length * free.width - length * width;
    case 'tight':
      return Math.min(free.length - length, free.width - width);
    case 'loose':
      return Math.max(free.length - length, free.width - width);
  }
}

/** The first cut by the rule, or the other one where only that keeps within the stages; undefined where neither does. */
function firstCut(
  problem: CuttingProblem,
  free: Rectangle,
  length: number,
  width: number,
  split: Split,
): Direction | undefined {
  const beyond = free.length - length;
  const beside = free.width - width;
  if (problem.leastSkim > 0 && (skims(beyond, problem.leastSkim) || skims(beside, problem.leastSkim))) return undefined;
  const wanted = preferred(beyond, beside, length, width, split);
  if (stageOf(free, length, width, wanted) <= problem.stages) return wanted;
  const other = wanted === 'rip' ? 'crosscut' : 'rip';
  return stageOf(free, length, width, other) <= problem.stages ? other : undefined;
}

const skims = (left: number, leastSkim: number): boolean => left > 0 && left < leastSkim;

function preferred(beyond: number, beside: number, length: number, width: number, split: Split): Direction {
  switch (split) {
    case 'shorter':
      return beyond <= beside ? 'rip' : 'crosscut';
    case 'longer':
      return beyond > beside ? 'rip' : 'crosscut';
    case 'largest':
      return beside * length > beyond * width ? 'rip' : 'crosscut';
    case 'evenest':
      return beside * length > beyond * width ? 'crosscut' : 'rip';
  }
}
