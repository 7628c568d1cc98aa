import { pick } from './chance.ts';
import { type Effort, fewerBins } from './fewer-bins.ts';
import { COST_EPSILON, costOfBins, type Filling, isBetter } from './first-plan.ts';
import type { Looking } from './placing.ts';
import type { OpenBin } from './rows.ts';

/** So many bins are on the bench at a time: more of them make each look dearer and no better. */
const BINS_AT_A_TIME = 16;
const AT_A_TIME: Effort = { looks: 1_000_000, patience: 1_000_000 };

/** What choosing a window takes for each bin of the filling, in looks. */
const LOOKS_A_BIN = 30;

/** Looks for fewer bins in a large filling a few bins at a time: the emptiest, and others by chance. */
export function fewerInWindows(
  looking: Looking,
  start: Filling,
  least: number,
  supply: readonly number[],
  { looks, patience }: Effort,
  seen: (bins: readonly OpenBin[]) => void,
): Filling {
  if (start.bins.length <= 2 * BINS_AT_A_TIME)
    return fewerBins(looking, start, least, supply, { looks, patience }, seen);
  const until = looking.looks + looks;
  const { problem } = looking;
  let filling = start;
  let better = looking.looks;
  while (
    looking.looks < until &&
    looking.looks < better + patience &&
    costOfBins(problem, filling.bins) > least + COST_EPSILON
  ) {
    // Counted, because a window whose bins are as full as can be is looked into no further: there may be no other.
    looking.looks += LOOKS_A_BIN * filling.bins.length;
    const inside = new Set(someBins(looking, filling.bins));
    const outside = filling.bins.filter(bin => !inside.has(bin));
    const rest = supply.map((count, kind) => count - outside.filter(bin => bin.kind === kind).length);
    const window = { bins: [...inside], left: filling.left };
    const found = fewerBins(looking, window, leastOf(looking, window.bins), rest, AT_A_TIME, seen);
    if (isBetter(problem, found, window)) better = looking.looks;
    filling = { bins: [...outside, ...found.bins], left: found.left };
  }
  return filling;
}

function someBins({ chance }: Looking, bins: readonly OpenBin[]): readonly OpenBin[] {
  const byFill = [...bins].sort((one, two) => one.filled - two.filled);
  const emptiest = byFill.slice(0, 1 + pick(chance, BINS_AT_A_TIME / 2));
  const others = Array.from({ length: BINS_AT_A_TIME - emptiest.length }, () => bins[pick(chance, bins.length)]);
  return [...emptiest, ...others.flatMap(bin => bin ?? [])];
}

/** What the pieces in these bins cost at least, by their area. */
function leastOf({ problem }: Looking, bins: readonly OpenBin[]): number {
  const [only, ...others] = problem.bins;
  if (only === undefined || others.length > 0) return 0;
  return Math.ceil(bins.reduce((total, bin) => total + bin.filled, 0) / only.area) * only.cost;
}
