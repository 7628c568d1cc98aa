import { COST_EPSILON, costOfBins, type Filling } from './first-plan.ts';
import type { Looking } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import { type OpenBin, piecesIn } from './rows.ts';
import { type Allowance, type Attempt, ruinAndRecreate } from './ruin-recreate.ts';

/** What a search may spend, and how long it goes on without finding anything better, in looks. */
export type Effort = { readonly looks: number; readonly patience: number };

/** A try is kept where it is no worse than the attempt of so many tries ago: late acceptance. */
const LATE = 30;
/** How much a full bin beside an empty one is worth over two half full ones, in bins. */
const FULL_BINS = 0.02;
/** What comes nearer by less is no progress. */
const PROGRESS = 1e-3;

/**
 * Looks for a filling that costs less: takes the emptiest bin away and tries to get its pieces into the others, and when
 * that succeeds, goes on from there, until the effort is spent or a filling costs no more than `least`, below which there is none.
 * `seen` gets the bins of each attempt that was kept. After J. Gardeyn, T. Wauters, "A goal-driven ruin and recreate
 * heuristic for the 2D variable-sized bin packing problem with guillotine constraints", EJOR 301 (2022) 432-444; late
 * acceptance after E. K. Burke, Y. Bykov, EJOR 258 (2017) 70-78.
 */
export function fewerBins(
  looking: Looking,
  start: Filling,
  least: number,
  supply: readonly number[],
  { looks, patience }: Effort,
  seen: (bins: readonly OpenBin[]) => void,
): Filling {
  const { problem } = looking;
  const until = looking.looks + looks;
  let best = start;
  while (looking.looks < until && costOfBins(problem, best.bins) > least + COST_EPSILON) {
    const found = cheaper(looking, best, supply, until, patience, seen);
    if (found === undefined) break;
    best = found;
  }
  return best;
}

/** A filling that leaves less uncut or costs less than `best`, or undefined when the looks are spent. */
function cheaper(
  looking: Looking,
  best: Filling,
  supply: readonly number[],
  until: number,
  patience: number,
  seen: (bins: readonly OpenBin[]) => void,
): Filling | undefined {
  const { problem } = looking;
  const short = best.left.length > 0;
  const cost = short ? Number.POSITIVE_INFINITY : costOfBins(problem, best.bins) - 2 * COST_EPSILON;
  const mostLeft = Math.max(0, best.left.length - 1);
  return repaired(looking, short ? best : withoutEmptiest(best), { cost, supply }, mostLeft, until, patience, seen);
}

/**
 * Tries to get what lies beside the bins of an attempt into them, until no more than `mostLeft` pieces do, or the looks are
 * spent, or for so many of them nothing has become better: undefined then.
 */
export function repaired(
  looking: Looking,
  start: Attempt,
  allowance: Allowance,
  mostLeft: number,
  until: number,
  patience: number,
  seen: (bins: readonly OpenBin[]) => void,
): Attempt | undefined {
  const { problem } = looking;
  let attempt = start;
  let value = shortfall(problem, attempt);
  const late = new Float64Array(LATE).fill(value);
  let limit = Math.min(until, looking.looks + patience);
  let least = value;
  for (let step = 0; looking.looks < limit; step = (step + 1) % LATE) {
    const next = ruinAndRecreate(looking, attempt, allowance);
    const nextValue = shortfall(problem, next);
    if (nextValue <= value || nextValue <= (late[step] ?? value)) {
      if (nextValue < value) seen(next.bins);
      attempt = next;
      value = nextValue;
    }
    late[step] = value;
    if (value < least - PROGRESS) {
      least = value;
      limit = Math.min(until, looking.looks + patience);
    }
    if (attempt.left.length <= mostLeft) return attempt;
  }
  return undefined;
}

/** Area that lies beside the bins, in bins, less something for bins that are full: least is best. */
function shortfall(problem: CuttingProblem, attempt: Attempt): number {
  const { bins, left } = attempt;
  const { bins: kinds, pieces } = problem;
  let beside = 0;
  for (let at = 0; at < left.length; at += 1) beside += pieces[left[at] ?? 0]?.area ?? 0;
  let area = 0;
  let full = 0;
  for (let at = 0; at < bins.length; at += 1) {
    const bin = bins[at];
    const own = bin === undefined ? 0 : (kinds[bin.kind]?.area ?? 0);
    const share = bin === undefined ? 0 : bin.filled / own;
    area += own;
    full += share * share;
  }
  return (beside * bins.length) / Math.max(1, area) - FULL_BINS * full;
}

function withoutEmptiest(filling: Filling): Attempt {
  const emptiest = emptiestOf(filling.bins);
  const out = emptiest === undefined ? [] : piecesIn(emptiest);
  return { bins: filling.bins.filter(bin => bin !== emptiest), left: [...filling.left, ...out] };
}

export const emptiestOf = (bins: readonly OpenBin[]): OpenBin | undefined =>
  bins.reduce<OpenBin | undefined>(
    (least, bin) => (least === undefined || bin.filled < least.filled ? bin : least),
    undefined,
  );
