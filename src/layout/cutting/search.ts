import type { Solver } from '../solver.ts';
import { fewestBars } from './bars.ts';
import { openPricer } from './bin-pricer.ts';
import { type Bound, weigh } from './bound.ts';
import { byPatterns } from './by-patterns.ts';
import { chanceFrom } from './chance.ts';
import { generateColumns, LOOKS_OF_WORK, wholeBins } from './column-generation.ts';
import { coverBy, openPool, type Pool } from './cover.ts';
import { type Demand, demandOf } from './demand.ts';
import { everyWay, suitsEveryWay } from './every-way.ts';
import { exchange, suitsExchange } from './exchange.ts';
import type { Effort } from './fewer-bins.ts';
import { COST_EPSILON, costOfBins, everyPiece, type Filling, firstPlan, isBetter } from './first-plan.ts';
import { leastCost } from './least-cost.ts';
import { openMaster } from './master.ts';
import { isCrowded, oneBinLess, suitsOneBinLess } from './one-bin-less.ts';
import { startingPatterns } from './patterns.ts';
import { FITS, type Looking, SPLITS } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import { rowByRow, suitsRowByRow } from './row-by-row.ts';
import { other } from './rows.ts';
import { fewerInWindows } from './windows.ts';

/** The best filling found, and the least number of bins that any filling of the same pieces needs. */
export type Found = Filling & { readonly bound: Bound; readonly looks: number };

/**
 * Looks that a processor takes in about a second: one is 20 ns. A plan is a function of its input, so its time is counted
 * in work and not by a clock; what a place, a copy, a price or an iteration of the solver takes stands where it is done.
 */
export const LOOKS_A_SECOND = 50_000_000;

export const lookingAt = (problem: CuttingProblem, seed: number): Looking => ({
  problem,
  chance: chanceFrom(seed),
  easy: true,
  blinks: BLINKS,
  looks: 0,
});

/** Share of places that the search passes over. */
const BLINKS = 0.005;

/**
 * Fills as few bins as can be found, or as cheap ones: a first plan that takes linear time; where the pieces are bars,
 * dives of a linear program; where a few pieces fill a bin, every way; otherwise ruin and recreate; where these pieces are
 * unlike, exchanges of pieces and dives for one bin less; the proof; whole patterns of a linear program where many pieces
 * are alike; and ruin and recreate for what is left, until the looks or the patience are spent or the bound is met. A large
 * plan begins with whole patterns; where bins are crowded with unlike pieces, they are filled row by row, ruin and recreate
 * goes on, and the proof is for the end.
 */
export function search(problem: CuttingProblem, effort: Effort, seed: number, solver: Solver): Found {
  const looking = lookingAt(problem, seed);
  const pool = openPool();
  const start = bestFirstPlan({ ...looking, blinks: 0 }, looking);
  const demand = demandOf(problem, start.left);
  const weighing = weigh(problem, demand);
  const weighed = weighing.bound;
  looking.looks += LOOKS_TO_WEIGH * problem.pieces.length;
  const supply = problem.bins.map(bin => bin.available);
  const least = leastCost(problem, demand, weighed, solver);
  const settled = (filling: Filling, cost: number): boolean =>
    filling.left.length === 0 && costOfBins(problem, filling.bins) <= cost + COST_EPSILON;
  const part = (share: number): Effort => ({
    looks: Math.max(0, effort.looks - looking.looks) * share,
    patience: effort.patience,
  });
  const improve = (filling: Filling, cost: number, some: Effort): Filling =>
    settled(filling, cost) ? filling : fewerInWindows(looking, filling, cost, supply, some, pool.see);
  const patterned = (filling: Filling, cost: number, some: Effort): Filling =>
    settled(filling, cost) ? filling : byPatterns(looking, demand, filling, cost, pool, solver, some);

  if (settled(start, least)) return { ...start, bound: weighed, looks: looking.looks };
  const bars = bestBars(looking, demand, start, solver, part(1));
  if (bars !== undefined) {
    const bound = boundBy(weighed, bars.bound, 'column-generation');
    const best = improve(bars.filling, leastCost(problem, demand, bound, solver), part(1));
    return { ...best, bound, looks: looking.looks };
  }
  // Whole patterns are most of a large plan, and a search of it before them would be for nothing.
  const large = start.bins.length > BINS_OF_LARGE;
  const everyLooks = Math.min(part(EVERY_WAY_SHARE).looks, effort.patience * LESS_PATIENCE);
  const tried =
    !large && suitsEveryWay(looking, demand, start, everyLooks)
      ? everyWay(looking, demand, start, weighing.shares(), weighed.bins, everyLooks)
      : { filling: start, isLeast: false };
  const begun = tried.filling;
  if (tried.isLeast) return { ...begun, bound: boundBy(weighed, begun.bins.length, 'every-way'), looks: looking.looks };
  const few = !large && suitsExchange(looking, demand, begun);
  const unlike = !large && suitsOneBinLess(looking, demand, begun, part(LESS_SHARE).looks);
  const crowded = !large && isCrowded(demand, begun);
  const rows = crowded && suitsRowByRow(looking, begun);
  const firstShare = few ? FIRST_SHARE_FEW : rows ? FIRST_SHARE_CROWDED : unlike ? FIRST_SHARE_UNLIKE : FIRST_SHARE;
  const first = large ? patterned(begun, least, part(LARGE_SHARE)) : improve(begun, least, part(firstShare));
  looking.easy = false;
  if (settled(first, least)) return { ...first, bound: weighed, looks: looking.looks };
  const exchangeLooks = Math.min(
    part(unlike ? EXCHANGE_SHARE : EXCHANGE_SHARE_ALONE).looks,
    effort.patience * LESS_PATIENCE,
  );
  const exchanged = few ? exchange(looking, first, weighing.shares(), least, exchangeLooks, pool.see) : first;
  if (settled(exchanged, least)) return { ...exchanged, bound: weighed, looks: looking.looks };
  const lessLooks = Math.min(part(LESS_SHARE).looks, effort.patience * LESS_PATIENCE);
  const less = unlike ? oneBinLess(looking, demand, exchanged, least, pool, solver, lessLooks) : exchanged;
  if (settled(less, least)) return { ...less, bound: weighed, looks: looking.looks };
  if (crowded) {
    // No linear program leads to a plan here, and hardly ever to a proof.
    const patience = effort.patience * LAST_PATIENCE;
    const { looks } = part(CROWDED_SHARE);
    const until = looking.looks + looks;
    const rowLooks = Math.min(looks, effort.patience * LESS_PATIENCE);
    const strips = rows ? rowByRow(looking, less, least, rowLooks, pool.see) : less;
    const best = improve(strips, least, { looks: until - looking.looks, patience });
    return { ...best, bound: boundOf(looking, demand, weighed, best, solver, part(1)), looks: looking.looks };
  }
  const bound = boundOf(looking, demand, weighed, less, solver, part(PROOF_SHARE));
  const cost = bound === weighed ? least : leastCost(problem, demand, bound, solver);
  const mixed = large || unlike ? less : patterned(less, cost, part(PATTERNS_SHARE));
  // What whole patterns made of a large plan has no room for another bin's pieces.
  const made = large && mixed !== start;
  const patience = effort.patience * (mixed.bins.length > LAST_BINS_MAX ? 1 : LAST_PATIENCE);
  const last = made ? mixed : improve(mixed, cost, { ...part(LAST_SHARE), patience });
  const best = betterByCover(looking, last, cost, pool, solver, part(1));
  return { ...best, bound, looks: looking.looks };
}

/**
 * Shares of what is left when each begins: of the time for every way, which is soon at an end or hardly ever; for a first
 * search that keeps to first cuts that are easy to guide, which is shorter where pieces are unlike, and only a beginning
 * where another search follows that is made for few in a bin or for many; for these two, the first with more where no dives
 * follow it; for dives for one bin less, for the proof, for patterns, for those of a large plan, for a last search, and for
 * that where bins are crowded.
 */
const EVERY_WAY_SHARE = 0.2;
const FIRST_SHARE = 0.3;
const FIRST_SHARE_UNLIKE = 0.2;
const FIRST_SHARE_FEW = 0.06;
const FIRST_SHARE_CROWDED = 0.2;
const EXCHANGE_SHARE = 0.6;
const EXCHANGE_SHARE_ALONE = 0.85;
const LESS_SHARE = 0.7;
const PROOF_SHARE = 0.4;
const PATTERNS_SHARE = 0.35;
const LARGE_SHARE = 0.1;
const LAST_SHARE = 0.85;
const CROWDED_SHARE = 0.9;
/** A plan of more bins is large. */
const BINS_OF_LARGE = 100;
/** One bin less is worth so many times the patience of a search. */
const LESS_PATIENCE = 8;
/** The last search is the one that all the rest was for; of more bins it takes long enough as it is. */
const LAST_PATIENCE = 2;
const LAST_BINS_MAX = 60;
/** What weighing takes for each kind of piece, in looks. */
const LOOKS_TO_WEIGH = 1500;

/** Looks that a choice among rules for a first plan is worth; one rule does about as well. */
const LOOKS_FOR_RULES = 2_000_000;

function bestFirstPlan(looking: Looking, spent: Looking): Filling {
  const order = everyPiece(looking.problem);
  const easy = looking.problem.bins.at(-1)?.easy ?? 'crosscut';
  const rules = [easy, undefined, other(easy)].flatMap(first =>
    FITS.flatMap(fit => SPLITS.map(split => ({ first, rule: { fit, split } }))),
  );
  let best: Filling | undefined;
  for (const { first, rule } of rules) {
    if (looking.looks > LOOKS_FOR_RULES) break;
    const filling = firstPlan(looking, order, rule, first);
    if (best === undefined || isBetter(looking.problem, filling, best)) best = filling;
  }
  spent.looks += looking.looks;
  return best ?? { bins: [], left: order };
}

/** Where only lengths count, the linear program that proves the bound leads to the plan as well. */
function bestBars(
  looking: Looking,
  demand: Demand,
  start: Filling,
  solver: Solver,
  effort: Effort,
): ReturnType<typeof fewestBars> {
  const looks = Math.min(effort.looks, effort.patience * PROOF_PATIENCE);
  if (looks < LOOKS_FOR_BARS * demand.length) return undefined;
  return fewestBars(looking, demand, start, solver, looks);
}

/** With fewer looks for each kind of piece, a dive does not end, and ruin and recreate finds more. */
const LOOKS_FOR_BARS = 100_000;

/** What weighing proves, or the linear program where it proves more. */
function boundOf(
  looking: Looking,
  demand: Demand,
  weighed: Bound,
  best: Filling,
  solver: Solver,
  { looks, patience }: Effort,
): Bound {
  const { problem } = looking;
  if (best.bins.length <= weighed.bins) return weighed;
  const effort = Math.min(looks, patience * PROOF_PATIENCE);
  if (effort < LOOKS_TO_PRICE * problem.pieces.length ** 2) return weighed;
  const pricer = openPricer(looking, demand, 'down', effort);
  if (pricer === undefined) return weighed;
  const patterns = startingPatterns(looking, demand, best);
  const each = problem.bins.map(() => 1);
  const master = openMaster(problem, demand, each, patterns, solver, 'by-few-columns');
  const proof = { known: weighed.bins, wanted: best.bins.length };
  try {
    const bins = wholeBins(generateColumns(looking, master, pricer, effort, proof)?.bound ?? 0);
    return boundBy(weighed, bins, 'column-generation');
  } finally {
    master.program.close();
  }
}

/** What is proven in two ways counts by the one that proves more. */
const boundBy = (weighed: Bound, bins: number, by: Bound['by']): Bound =>
  bins > weighed.bins ? { bins, by } : weighed;

/** With fewer looks for each pair of kinds, the linear program proves nothing. */
const LOOKS_TO_PRICE = 2000;
/** A proof is worth so many times the patience of a search: it ends the search, and the packet prints it. */
const PROOF_PATIENCE = 14;

/** Fewer looks do not solve the program once. */
const COVER_LOOKS_LEAST = 2_000_000;
/** So many kinds of pieces, and bins, make a program that is solved in a moment. */
const COVER_BINS_MAX = 60;
const COVER_KINDS_MAX = 150;

function betterByCover(
  looking: Looking,
  best: Filling,
  least: number,
  pool: Pool,
  solver: Solver,
  { looks, patience }: Effort,
): Filling {
  const { problem } = looking;
  const settled = best.left.length > 0 || costOfBins(problem, best.bins) <= least + COST_EPSILON;
  if (
    settled ||
    looks < COVER_LOOKS_LEAST ||
    best.bins.length > COVER_BINS_MAX ||
    problem.pieces.length > COVER_KINDS_MAX
  )
    return best;
  const gap = Math.min(...problem.bins.map(bin => bin.cost)) * 0.99;
  const limits = { work: Math.min(looks, patience) / LOOKS_OF_WORK, gap };
  const covered = coverBy(looking, demandOf(problem, best.left), pool.patterns(), best, solver, limits);
  return covered !== undefined && isBetter(problem, covered, best) ? covered : best;
}
