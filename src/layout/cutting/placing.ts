import type { Chance } from './chance.ts';
import type { CuttingProblem, PieceKind, Reach } from './problem.ts';
import { isFull, isOpen, type OpenBin, put, type Row, setFull } from './rows.ts';

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
  /** Whether the first cuts of new bins go the easy way; see `BinKind`. */
  easy: boolean;
  /** Share of places that is passed over, so that the search does not always end in the same place. */
  readonly blinks: number;
  /** Rows looked at so far: what a search may spend is counted in these, because a clock would make plans differ. */
  looks: number;
};

/** The best place for a piece of a kind in `bins` from index `from` on; undefined where it fits in none of them. */
export function findPlace(
  looking: Looking,
  kind: number,
  bins: readonly OpenBin[],
  from: number,
  rule: Rule,
): Place | undefined {
  const piece = looking.problem.pieces[kind];
  if (piece === undefined) return undefined;
  const finding: Finding = { looking, piece, rule, least: Number.POSITIVE_INFINITY, best: undefined };
  looking.looks += LOOKS_A_PIECE + LOOKS_A_BIN * Math.max(0, bins.length - from);
  for (let at = from; at < bins.length; at += 1) {
    const bin = bins[at];
    // Pieces that come after take space and give none: what found no place in a bin finds none until one is taken out.
    if (bin === undefined || isFull(bin, kind)) continue;
    if (!findIn(finding, bin)) setFull(bin, kind);
  }
  return finding.best;
}

type Finding = {
  readonly looking: Looking;
  readonly piece: PieceKind;
  readonly rule: Rule;
  least: number;
  best: Place | undefined;
};

/**
 * What looking for a place costs, passing over a bin, looking into one, and measuring a row of it, in looks: from the
 * processor's time for twenty problems of one to seventy bins, by least squares.
 */
const LOOKS_A_PIECE = 11;
const LOOKS_A_BIN = 0.65;
const LOOKS_INTO_A_BIN = 11;
const LOOKS_A_ROW = 0.45;

/** Whether there is any place for the piece in the bin; the best of them is kept. */
function findIn(finding: Finding, bin: OpenBin): boolean {
  const { looking, piece, rule } = finding;
  const { problem, blinks, chance } = looking;
  const kind = problem.bins[bin.kind];
  if (kind === undefined || kind.area - bin.filled < piece.area) return false;
  const { reach } = kind;
  let fits = false;
  const ways = piece.turns && piece.length !== piece.width ? 2 : 1;
  looking.looks += LOOKS_INTO_A_BIN + bin.rows.length * ways * LOOKS_A_ROW;
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
      // A place that is not looked at closely is none the less there.
      if (score >= finding.least || (blinks > 0 && chance() < blinks)) {
        fits = true;
        continue;
      }
      const way = wayIn(problem, bin, row, beyond, beside, rule.split);
      if (way === undefined) continue;
      fits = true;
      finding.least = score;
      finding.best = { bin, row, turned: turn === 1, way };
    }
  }
  return fits;
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
  const across = row.stage + turns <= problem.stages && !isGiven(bin, row);
  if (!along || !across) return along ? 'along' : across ? 'across' : undefined;
  return prefersAlong(row, beyond, beside, split) ? 'along' : 'across';
}

/** A whole bin whose first cuts go in a given direction is not first cut across it. */
const isGiven = (bin: OpenBin, row: Row): boolean =>
  bin.fixed && row.parent === undefined && row.parts.length === 0 && bin.roots.length === 1;

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
