import type { Program, Solution } from '../solver.ts';
import type { Best, Pricer } from './bin-pricer.ts';
import type { Demand } from './demand.ts';
import { binOf, isSawable } from './fill.ts';
import type { Master } from './master.ts';
import { keepWithin, likelyPatterns, type Pattern, patternsOf } from './patterns.ts';
import type { Looking } from './placing.ts';
import type { CuttingProblem } from './problem.ts';

/** The cheapest mix of patterns with fractions, and what no mix of any patterns can be below. */
export type Mix = {
  /** How often each pattern of the program is cut, with fractions. */
  readonly times: ArrayLike<number>;
  readonly cost: number;
  readonly bound: number;
};

/** So many bins are known to be needed, and a proof of so many is wanted: fewer and more make no difference. */
export type Proof = { readonly known: number; readonly wanted: number };

/** The solver's answers are exact to about a millionth. */
const BOUND_EPSILON = 1e-5;

/** No whole number of bins is below a bound with fractions. */
export const wholeBins = (bound: number): number => Math.ceil(bound - BOUND_EPSILON);

/** What the solver counts as one takes so many looks of the search. */
export const LOOKS_OF_WORK = 50;

/** More rounds of prices and patterns than this are never needed in the bench. */
const ROUNDS_MAX = 1000;
/** A plan is made of a mix that so many rounds make better by less than this share: what is left to gain is no whole bin. */
const ROUNDS_OF_PROGRESS = 10;
const PROGRESS = 2e-4;
/** A pattern is worth its place where it is better by so much than those that there are. */
export const GAIN = 1e-6;

/**
 * Finds the mix of patterns that costs least: prices the pieces by a linear program over the patterns so far, looks for
 * the pattern that is worth most at those prices, and adds it, until there is none that would be cheaper than its worth.
 * The bound is Farley's: prices scaled so that no pattern at all is worth more than its bin costs prove what the demand
 * costs at least. With a pricer that rounds up the patterns can be cut, and have no more pieces than are asked for; with
 * one that rounds down every plan is a mix of them.
 * A. A. Farley, "A note on bounding a class of linear programming problems, including cutting stock problems",
 * Operations Research 38 (1990) 922-923. Undefined where the looks do not solve the program once.
 */
export function generateColumns(
  looking: Looking,
  master: Master,
  pricer: Pricer,
  looks: number,
  proof?: Proof,
): Mix | undefined {
  const { problem } = looking;
  const { program, demand, costs } = master;
  const until = looking.looks + looks;
  let bound = 0;
  let mix: Omit<Mix, 'bound'> | undefined;
  let center: ArrayLike<number> = areaPrices(problem);
  let earlier = Number.POSITIVE_INFINITY;
  let smooth = proof === undefined ? 0 : SMOOTH;
  for (let round = 0; round < ROUNDS_MAX; round += 1) {
    const solution = solveUntil(looking, program, until);
    if (solution === undefined) break;
    mix = { times: solution.columns, cost: solution.cost };
    if (proof === undefined && round % ROUNDS_OF_PROGRESS === 0) {
      if (solution.cost > earlier * (1 - PROGRESS)) break;
      earlier = solution.cost;
    }
    if (proof !== undefined && wholeBins(solution.cost) <= proof.known) break;
    const worth = costs.map((cost, bin) => cost - limitPrice(problem, solution.prices, bin));
    // The last looks are for the best patterns, which alone prove something.
    const last = looking.looks + pricer.looks > until;
    const likely = last ? [] : likelyPatterns(looking, demand, worth, solution.prices);
    for (const pattern of likely) master.add(pattern);
    if (likely.length > 0) continue;
    if (last && proof === undefined) break;
    looking.looks += pricer.looks;
    const prices = smooth === 0 ? solution.prices : between(solution.prices, center, smooth);
    const best = pricer.best(prices);
    const proven = farley(master, prices, best);
    if (proven > bound) {
      bound = proven;
      center = prices;
    }
    if (last || bound >= solution.cost - GAIN || (proof !== undefined && wholeBins(bound) >= proof.wanted)) break;
    const found = best
      .flatMap(({ patterns: ways }) => ways.map(each => each.pattern()))
      .flatMap(each => (pricer.rounding === 'down' ? each : cuttable(looking, demand, each, solution.prices)))
      .filter(each => worthOf(each, solution.prices) > (worth[each.bin] ?? 0) + GAIN);
    if (found.length === 0 && smooth === 0) break;
    // What is worth nothing at the program's own prices shows that the steadied ones are too far away from them.
    smooth = found.length === 0 ? 0 : SMOOTH;
    for (const pattern of found) master.add(pattern);
  }
  return mix === undefined ? undefined : { ...mix, bound };
}

/** Solves a program and counts what it takes as looks; undefined where it would take more than there are until then. */
export function solveUntil(looking: Looking, program: Program, until: number): Solution | undefined {
  const before = program.work();
  const solution = program.solve(Math.max(0, until - looking.looks) / LOOKS_OF_WORK);
  looking.looks += (program.work() - before) * LOOKS_OF_WORK;
  return solution;
}

/**
 * Prices of one program are far from those of the next. A proof comes sooner from prices that keep so much of the best
 * ones so far. P. Wentges, "Weighted Dantzig-Wolfe decomposition for linear mixed-integer programming", International
 * Transactions in Operational Research 4 (1997) 151-162.
 */
const SMOOTH = 0.6;

export const between = (prices: ArrayLike<number>, center: ArrayLike<number>, share: number): Float64Array =>
  Float64Array.from(prices, (price, at) => (1 - share) * price + share * (center[at] ?? 0));

/** As if wood could be poured: a piece is worth its share of the largest bin. */
function areaPrices({ pieces, bins }: CuttingProblem): Float64Array {
  const largest = Math.max(...bins.map(bin => bin.area));
  return Float64Array.from([...pieces.map(piece => piece.area / largest), ...bins.map(() => 0)]);
}

export function worthOf(pattern: Pattern, prices: ArrayLike<number>): number {
  let worth = 0;
  for (const [kind, count] of pattern.counts) worth += count * (prices[kind] ?? 0);
  return worth;
}

/** The pattern with no more pieces than are asked for, if the saw can follow it. */
export function cuttable(
  looking: Looking,
  demand: Demand,
  pattern: Pattern,
  prices: ArrayLike<number>,
): readonly Pattern[] {
  const { problem } = looking;
  const bin = binOf(problem, pattern.bin, pattern.trees);
  const changed = keepWithin(looking, demand, bin, prices);
  if (!isSawable(problem, bin)) return [];
  return changed ? patternsOf({ bins: [bin], left: [] }) : [pattern];
}

/** What one more bin of a kind that is short would save, as a price to be paid for each: zero or less as the solver says it. */
export const limitPrice = (problem: CuttingProblem, prices: ArrayLike<number>, bin: number): number =>
  prices[problem.pieces.length + bin] ?? 0;

function farley(master: Master, prices: ArrayLike<number>, best: readonly Best[]): number {
  const { demand, supply, costs } = master;
  const worth = demand.reduce((total, count, kind) => total + count * Math.max(0, prices[kind] ?? 0), 0);
  let scale = 1;
  for (const [bin, { most }] of best.entries()) {
    if (supply[bin] === Number.POSITIVE_INFINITY && most > 0) scale = Math.min(scale, (costs[bin] ?? 0) / most);
  }
  const limited = best.reduce((total, { most }, bin) => {
    const available = supply[bin] ?? 0;
    return available === Number.POSITIVE_INFINITY
      ? total
      : total + available * Math.min(0, (costs[bin] ?? 0) - scale * most);
  }, 0);
  return scale * worth + limited;
}
