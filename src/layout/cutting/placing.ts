import type { Chance } from './chance.ts';
import type { CuttingProblem, PieceKind, Reach } from './problem.ts';
import { isOpen, type OpenBin, put, type Row } from './rows.ts';

/** How the best place for a piece is chosen, and which of its two cuts is made first. */
export type Rule = { readonly fit: Fit; readonly split: Split };

/** Least area left, least left on the tighter side, or least left on the looser side. */
export type Fit = 'area' | 'tight' | 'loose';

/** Cut first along the shorter or the longer leftover, or so that the larger stretch left is as large or as small as can be. */
export type Split = 'shorter' | 'longer' | 'largest' | 'evenest';

export const FITS: readonly Fit[] = ['area', 'tight', 'loose'];
export const SPLITS: readonly Split[] = ['shorter', 'longer', 'largest', 'evenest'];

/** Where a piece goes. */
export type Place = {
  readonly bin: OpenBin;
  readonly row: Row;
  readonly turned: boolean;
  readonly way: 'along' | 'across';
};

/** What a search for places needs, and how much it has looked at. */
export type Looking = {
  readonly problem: CuttingProblem;
  readonly chance: Chance;
  /** Share of places that is passed over, so that the search does not always end in the same place. */
  readonly blinks: number;
  /** Rows looked at so far: what a search may spend is counted in these, because a clock would make plans differ. */
  looks: number;
};

/** The best place for a piece of a kind in `bins` from index `from` on; undefined where it fits in none of them. */
export function findPlace(
  looking: Looking,
  piece: PieceKind,
  bins: readonly OpenBin[],
  from: number,
  rule: Rule,
): Place | undefined {
  const { problem, blinks, chance } = looking;
  let best: Place | undefined;
  let least = Number.POSITIVE_INFINITY;
  const ways = piece.turns && piece.length !== piece.width ? 2 : 1;
  for (let at = from; at < bins.length; at += 1) {
    const bin = bins[at];
    const reach = bin === undefined ? undefined : problem.bins[bin.kind]?.reach;
    if (bin === undefined || reach === undefined) continue;
    looking.looks += bin.rows.length;
    for (let turn = 0; turn < ways; turn += 1) {
      const length = turn === 0 ? piece.length : piece.width;
      const width = turn === 0 ? piece.width : piece.length;
      if (!canMeasure(reach.crosscut, length) || !canMeasure(reach.rip, width)) continue;
      for (const row of bin.rows) {
        const crosscut = row.direction === 'crosscut';
        const beyond = row.left - (crosscut ? length : width);
        const beside = row.breadth - (crosscut ? width : length);
        if (beyond < 0 || beside < 0) continue;
        const score = looseness(row, piece, beyond, beside, rule.fit);
        if (score >= least || (blinks > 0 && chance() < blinks)) continue;
        const way = wayIn(problem, bin, row, beyond, beside, rule.split);
        if (way === undefined) continue;
        least = score;
        best = { bin, row, turned: turn === 1, way };
      }
    }
  }
  return best;
}

export const place = (where: Place, piece: PieceKind, kind: number): void =>
  put(where.bin, where.row, piece, kind, where.turned, where.way);

export const canMeasure = (reach: Reach, size: number): boolean => size <= reach.upTo || size >= reach.from;

function looseness(row: Row, piece: PieceKind, beyond: number, beside: number, fit: Fit): number {
  switch (fit) {
    case 'area':
      return row.left * row.breadth - piece.area;
    case 'tight':
      return Math.min(beyond, beside);
    case 'loose':
      return Math.max(beyond, beside);
  }
}

/** The way by the rule, or the other where only that keeps within the stages; undefined where neither does. */
function wayIn(
  problem: CuttingProblem,
  bin: OpenBin,
  row: Row,
  beyond: number,
  beside: number,
  split: Split,
): Place['way'] | undefined {
  const { leastSkim } = problem;
  if (leastSkim > 0 && ((beyond > 0 && beyond < leastSkim) || (beside > 0 && beside < leastSkim))) return undefined;
  const along = row.stage + (beside > 0 ? 1 : 0) <= problem.stages;
  const turns = (beyond > 0 ? 2 : 1) - (isOpen(bin, row) ? 1 : 0);
  const across = row.stage + turns <= problem.stages;
  if (!along || !across) return along ? 'along' : across ? 'across' : undefined;
  return prefersAlong(row, beyond, beside, split) ? 'along' : 'across';
}

/** Along, the row keeps its full breadth behind the piece; across, the strip beside the piece keeps the row's length. */
function prefersAlong(row: Row, beyond: number, beside: number, split: Split): boolean {
  switch (split) {
    case 'shorter':
      return beyond > beside;
    case 'longer':
      return beyond <= beside;
    case 'largest':
      return beyond * row.breadth >= beside * row.left;
    case 'evenest':
      return beyond * row.breadth < beside * row.left;
  }
}
