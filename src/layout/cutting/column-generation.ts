import type { Program, Solver } from '../solver.ts';
import { type Best, openPricer } from './bin-pricer.ts';
import type { Demand } from './bound.ts';
import { binOf, isSawable } from './fill.ts';
import { likelyPatterns, type Pattern } from './patterns.ts';
import type { Looking } from './placing.ts';
import type { Rounding } from './points.ts';
import type { CuttingProblem } from './problem.ts';

/** The cheapest mix of patterns with fractions, and what no whole number of bins can be below. */
export type Mix = {
  readonly patterns: readonly Pattern[];
  /** How often each pattern is cut, with fractions. */
  readonly times: ArrayLike<number>;
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
/** A pattern is worth its place where it is better by so much than those that there are. */
const GAIN = 1e-6;

/**
 * Finds the mix of patterns that costs least: prices the pieces by a linear program over the patterns so far, looks for
 * the pattern that is worth most at those prices, and adds it, until there is none that would be cheaper than its worth.
 * The bound is Farley's: prices scaled so that no pattern at all is worth more than its bin costs prove what the demand
 * costs at least. With `rounding` up the patterns can be cut; with `rounding` down every plan is a mix of them.
 * A. A. Farley, "A note on bounding a class of linear programming problems, including cutting stock problems",
 * Operations Research 38 (1990) 922-923. Undefined where pieces are too small or too many for the points.
 */
export function generateColumns(
  looking: Looking,
  demand: Demand,
  costs: readonly number[],
  start: readonly Pattern[],
  rounding: Rounding,
  solver: Solver,
  looks: number,
  proof?: Proof,
): Mix | undefined {
  const { problem } = looking;
  const until = looking.looks + looks;
  const pricer = openPricer(problem, demand, rounding, looks);
  if (pricer === undefined || start.length === 0) return undefined;
  const program = openMaster(problem, demand, solver);
  const patterns: Pattern[] = [];
  const add = (pattern: Pattern): void => {
    patterns.push(pattern);
    addPattern(program, problem, pattern, costs[pattern.bin] ?? 0);
  };
  try {
    for (const pattern of start) add(pattern);
    let bound = 0;
    let times: ArrayLike<number> = [];
    let center: ArrayLike<number> = areaPrices(problem);
    let smooth = proof === undefined ? 0 : SMOOTH;
    for (let round = 0; round < ROUNDS_MAX; round += 1) {
      const before = program.work();
      const solution = program.solve(Math.max(0, until - looking.looks) / LOOKS_OF_WORK);
      looking.looks += (program.work() - before) * LOOKS_OF_WORK;
      if (solution === undefined) break;
      times = solution.columns;
      if (proof !== undefined && wholeBins(solution.cost) <= proof.known) break;
      const worth = costs.map((cost, bin) => cost - limitPrice(problem, solution.prices, bin));
      // The last looks are for the best patterns, which alone prove something.
      const last = looking.looks + pricer.looks > until;
      const likely = last ? [] : likelyPatterns(looking, demand, worth, solution.prices);
      for (const pattern of likely) add(pattern);
      if (likely.length > 0) continue;
      if (last && proof === undefined) break;
      looking.looks += pricer.looks;
      const prices = smooth === 0 ? solution.prices : between(solution.prices, center, smooth);
      const best = pricer.best(prices);
      const proven = farley(problem, demand, costs, prices, best);
      if (proven > bound) {
        bound = proven;
        center = prices;
      }
      if (last || (proof !== undefined && wholeBins(bound) >= proof.wanted)) break;
      const found = best
        .flatMap(({ patterns: ways }) => ways.map(each => each.pattern()))
        .filter(each => worthOf(each, solution.prices) > (worth[each.bin] ?? 0) + GAIN)
        .filter(each => rounding === 'down' || canBeSawn(problem, each));
      if (bound >= solution.cost - GAIN) break;
      if (found.length === 0 && smooth === 0) break;
      // What is worth nothing at the program's own prices shows that the steadied ones are too far away from them.
      smooth = found.length === 0 ? 0 : SMOOTH;
      for (const pattern of found) add(pattern);
    }
    return times.length === 0 ? undefined : { patterns, times, bound };
  } finally {
    program.close();
  }
}

/**
 * Prices of one program are far from those of the next. A proof comes sooner from prices that keep so much of the best
 * ones so far. P. Wentges, "Weighted Dantzig-Wolfe decomposition for linear mixed-integer programming", International
 * Transactions in Operational Research 4 (1997) 151-162.
 */
const SMOOTH = 0.6;

const between = (prices: ArrayLike<number>, center: ArrayLike<number>, share: number): Float64Array =>
  Float64Array.from(prices, (price, at) => (1 - share) * price + share * (center[at] ?? 0));

/** As if wood could be poured: a piece is worth its share of the largest bin. */
function areaPrices({ pieces, bins }: CuttingProblem): Float64Array {
  const largest = Math.max(...bins.map(bin => bin.area));
  return Float64Array.from([...pieces.map(piece => piece.area / largest), ...bins.map(() => 0)]);
}

function worthOf(pattern: Pattern, prices: ArrayLike<number>): number {
  let worth = 0;
  for (const [kind, count] of pattern.counts) worth += count * (prices[kind] ?? 0);
  return worth;
}

const canBeSawn = (problem: CuttingProblem, pattern: Pattern): boolean =>
  isSawable(problem, binOf(problem, pattern.bin, pattern.trees));

/** One row for each kind of piece, then one for each kind of bin of which there are so many and no more. */
export function openMaster(problem: CuttingProblem, demand: Demand, solver: Solver): Program {
  return solver.open([
    ...demand.map(count => ({ least: count, most: Number.POSITIVE_INFINITY })),
    ...problem.bins.map(bin => ({ least: 0, most: bin.available })),
  ]);
}

export function addPattern(program: Program, problem: CuttingProblem, pattern: Pattern, cost: number): void {
  program.add({
    cost,
    most: Number.POSITIVE_INFINITY,
    rows: [...pattern.counts.keys(), problem.pieces.length + pattern.bin],
    values: [...pattern.counts.values(), 1],
  });
}

/** What one more bin of a kind that is short would save, as a price to be paid for each: zero or less as the solver says it. */
const limitPrice = (problem: CuttingProblem, prices: ArrayLike<number>, bin: number): number =>
  prices[problem.pieces.length + bin] ?? 0;

function farley(
  problem: CuttingProblem,
  demand: Demand,
  costs: readonly number[],
  prices: ArrayLike<number>,
  best: readonly Best[],
): number {
  const worth = demand.reduce((total, count, kind) => total + count * Math.max(0, prices[kind] ?? 0), 0);
  let scale = 1;
  for (const [bin, { most }] of best.entries()) {
    if (problem.bins[bin]?.available === Number.POSITIVE_INFINITY && most > 0)
      scale = Math.min(scale, (costs[bin] ?? 0) / most);
  }
  const limited = best.reduce((total, { most }, bin) => {
    const available = problem.bins[bin]?.available ?? 0;
    return available === Number.POSITIVE_INFINITY
      ? total
      : total + available * Math.min(0, (costs[bin] ?? 0) - scale * most);
  }, 0);
  return scale * worth + limited;
}
