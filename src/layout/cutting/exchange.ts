import { openCompanions } from './companions.ts';
import { areUnlike, type Demand, piecesAsked } from './demand.ts';
import { type Bench, benchOf, binsOf, reweigh } from './exchange-bench.ts';
import { drawn, of } from './exchange-chance.ts';
import { type FewPieces, FULL, openFewPieces } from './few-pieces.ts';
import { COST_EPSILON, costOfBins, type Filling } from './first-plan.ts';
import { putIn } from './from-beside.ts';
import { isPlain } from './lying.ts';
import type { Looking } from './placing.ts';
import type { OpenBin } from './rows.ts';
import { swap } from './swaps.ts';

/** Whether `exchange` knows how to fill the bins of this plan: plain ones, with a few unlike pieces in each. */
export function suitsExchange({ problem }: Looking, demand: Demand, { bins, left }: Filling): boolean {
  const pieces = piecesAsked(demand);
  const ways = problem.pieces.some(piece => piece.turns) ? 2 : 1;
  return (
    isPlain(problem) &&
    left.length === 0 &&
    pieces <= PIECES_A_BIN * bins.length &&
    areUnlike(demand) &&
    pieces * ways <= LIES_MAX
  );
}

/** Of more pieces in a bin ruin and recreate makes more in the same time. */
const PIECES_A_BIN = 6;
/** Of more pieces, each in every way in which it lies, the bits of any two take more than 30 MB. */
const LIES_MAX = 600;

/** What opening costs for each piece, and a move, in looks. */
const LOOKS_A_PIECE = 300;
const LOOKS_A_MOVE = 9;
/** Of a hundred moves, those that put in a piece from beside the bins; in the others, bins exchange pieces. */
const FROM_BESIDE = 5;

/**
 * How much of what a piece weighs is its area, the other part being what weighs most in the proof of a bound, and how much
 * more of a bin may come out than is put in at most. The second does better where area is not what bins are short of. They
 * take turns.
 */
const TURNS = [
  { area: 0.3, left: 0.14 },
  { area: 0.15, left: 0.42 },
];
const LOOKS_A_TURN = 1_000_000;
/** After so many turns the bins are seen: to draw them up takes as long as some hundred exchanges. */
const TURNS_UNSEEN = 4;

/**
 * Looks for a plan of fewer bins where a few pieces fill each: a bin is taken away, its pieces lie beside, and pieces change
 * places, one or two at a time, wherever the bins that get them can still be cut; what makes full bins emptier is done the
 * more seldom, the more it does. How a bin is cut is worked out for each set of pieces and not repaired, which ruin and
 * recreate does; sets so small are asked about some hundred thousand times a second. Pieces weigh what they take of a bin
 * rather than their area: a long one leaves beside it what few can use. After S. Kirkpatrick et al., "Optimization by
 * simulated annealing", Science 220 (1983) 671-680. `shares` are shares of a bin of which no bin holds more than 1; `seen`
 * gets the bins now and then: dives begin with them.
 */
export function exchange(
  looking: Looking,
  start: Filling,
  shares: readonly (readonly number[])[],
  least: number,
  looks: number,
  seen: (bins: readonly OpenBin[]) => void,
): Filling {
  const { problem } = looking;
  const until = looking.looks + looks;
  const companions = openCompanions(openFewPieces(problem, shares));
  looking.looks += LOOKS_A_PIECE * problem.pieces.length;
  let best = start;
  while (costOfBins(problem, best.bins) > least + COST_EPSILON) {
    const bench = benchOf(companions, best, looking.chance);
    if (bench === undefined) return best;
    const see = (): readonly OpenBin[] | undefined => {
      const bins = binsOf(problem, bench);
      seen(bins ?? []);
      return bins;
    };
    const settled = settle(looking, bench, shares[0] ?? [], until, see);
    const bins = see();
    if (!settled || bins === undefined) return best;
    best = { bins, left: [] };
  }
  return best;
}

/** Moves pieces until none lies beside; whether that came about before the looks were spent. */
function settle(looking: Looking, bench: Bench, heavy: readonly number[], until: number, see: () => void): boolean {
  const { few, beside } = bench;
  let next = looking.looks;
  let share = 0;
  for (let turn = 0; beside.length > 0; ) {
    if (looking.looks >= until) return false;
    if (looking.looks >= next) {
      const { area, left } = TURNS[turn % TURNS.length] ?? { area: 1, left: 0 };
      reweigh(bench, weighed(few, heavy, area));
      share = left;
      next += LOOKS_A_TURN;
      turn += 1;
      if (turn % TURNS_UNSEEN === 0) see();
    }
    few.spent = LOOKS_A_MOVE;
    if (of(100, drawn(bench)) < FROM_BESIDE) putIn(bench, share);
    else swap(bench);
    looking.looks += few.spent;
  }
  return true;
}

/** What pieces weigh, in whole numbers of which a bin can hold `FULL`. */
function weighed({ lying, length, width }: FewPieces, heavy: readonly number[], area: number): Int32Array {
  return Int32Array.from(lying, lie => {
    const own = (lie.length * lie.width) / (length * width);
    return Math.floor(FULL * (area * own + (1 - area) * (heavy[lie.kind] ?? own)));
  });
}
