import type { Program, Solver } from '../solver.ts';
import type { Demand } from './bound.ts';
import { type CutTree, piecesOf } from './cut-tree.ts';
import { binOf, isSawable } from './fill.ts';
import { freeStretchOf, priceFree } from './free-pricing.ts';
import { countsOf, likelyPatterns, type Pattern } from './patterns.ts';
import type { Looking } from './placing.ts';
import type { Rounding } from './points.ts';
import { price, stretchOf } from './pricing.ts';
import type { ClearStretch, CuttingProblem } from './problem.ts';
import type { Direction } from './rows.ts';

/** The cheapest mix of patterns with fractions, and what no whole number of bins can be below. */
export type Mix = {
  readonly patterns: readonly Pattern[];
  /** How often each pattern is cut, with fractions. */
  readonly times: readonly number[];
  readonly bound: number;
};

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
): Mix | undefined {
  const { problem } = looking;
  const until = looking.looks + looks;
  const pricer = openPricer(problem, demand, rounding);
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
    let times: readonly number[] = [];
    for (let round = 0; round < ROUNDS_MAX; round += 1) {
      const solution = program.solve();
      if (solution === undefined) return undefined;
      times = solution.columns;
      if (looking.looks > until) break;
      looking.looks += LOOKS_A_ROUND + LOOKS_A_ROW * demand.length;
      const worth = costs.map((cost, bin) => cost - limitPrice(problem, solution.prices, bin));
      const likely = likelyPatterns(looking, demand, worth, solution.prices);
      for (const pattern of likely) add(pattern);
      if (likely.length > 0 && looking.looks < until) continue;
      looking.looks += pricer.looks;
      const best = pricer.best(solution.prices);
      bound = Math.max(bound, farley(problem, demand, costs, solution.prices, best));
      const better = best.flatMap(({ patterns: ways }, bin) =>
        ways.filter(each => each.value > (worth[bin] ?? 0) + GAIN),
      );
      const found = better.map(each => each.pattern()).filter(each => rounding === 'down' || canBeSawn(problem, each));
      if (found.length === 0 || bound >= solution.cost - GAIN) break;
      for (const pattern of found) add(pattern);
    }
    return { patterns, times, bound };
  } finally {
    program.close();
  }
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
const limitPrice = (problem: CuttingProblem, prices: readonly number[], bin: number): number =>
  prices[problem.pieces.length + bin] ?? 0;

type Best = {
  /** No way to cut a bin of this kind is worth more. */
  readonly most: number;
  readonly patterns: readonly { readonly value: number; readonly pattern: () => Pattern }[];
};

/** The best way to cut one clear stretch at given prices. */
type StretchPricer = {
  /** What pricing once takes, in looks. */
  readonly looks: number;
  readonly price: (prices: readonly number[]) => {
    readonly value: number;
    readonly kinds: () => readonly number[];
    readonly tree: () => CutTree | undefined;
  };
};

/** Looks for the best patterns of each kind of bin at given prices. */
function openPricer(
  problem: CuttingProblem,
  demand: Demand,
  rounding: Rounding,
): { readonly looks: number; readonly best: (prices: readonly number[]) => readonly Best[] } | undefined {
  const bins = problem.bins.map(bin =>
    // What lies between defects is cut free by crosscuts, whatever comes after.
    (bin.clear.length > 1 ? CROSSCUT : BOTH).map(first =>
      bin.clear.map(clear => stretchPricer(problem, demand, clear, first, rounding)),
    ),
  );
  if (bins.flat(2).some(pricer => pricer === undefined)) return undefined;
  const looks = bins.flat(2).reduce((total, pricer) => total + (pricer?.looks ?? 0), 0);
  const best = (prices: readonly number[]): readonly Best[] =>
    bins.map((ways, bin) => {
      const found = ways.map(way => {
        const priced = way.flatMap(pricer => pricer?.price(prices) ?? []);
        return {
          value: priced.reduce((total, each) => total + each.value, 0),
          pattern: () => ({
            bin,
            counts: countsOf(priced.flatMap(each => each.kinds())),
            trees: priced.map(each => each.tree()),
          }),
        };
      });
      return { most: Math.max(...found.map(each => each.value)), patterns: found };
    });
  return { looks, best };
}

const CROSSCUT: readonly Direction[] = ['crosscut'];
const BOTH: readonly Direction[] = ['crosscut', 'rip'];

function stretchPricer(
  problem: CuttingProblem,
  demand: Demand,
  clear: ClearStretch,
  first: Direction,
  rounding: Rounding,
): StretchPricer | undefined {
  // What nobody asks for fits nowhere.
  const pieces = problem.pieces.map((piece, kind) =>
    (demand[kind] ?? 0) > 0 ? piece : { ...piece, length: Number.POSITIVE_INFINITY },
  );
  if (rounding === 'down' && problem.stages > 3) {
    const stretch = freeStretchOf(pieces, clear);
    if (stretch === undefined) return undefined;
    const { count } = stretch.along;
    const looks = (count * stretch.across.count * (count + stretch.across.count)) / (2 * PLACES_A_LOOK);
    return { looks, price: prices => ({ ...priceFree(stretch, prices), tree: () => undefined }) };
  }
  const stretch = stretchOf(pieces, clear, first, rounding);
  if (stretch === undefined) return undefined;
  const stages = problem.stages === 2 ? 2 : 3;
  const limits = rounding === 'up' ? demand : undefined;
  return {
    looks: (stretch.main.count * stretch.cross.count * stretch.lies.length) / PLACES_A_LOOK,
    price: prices => {
      const { value, tree } = price(stretch, stages, prices, limits);
      return { value, tree, kinds: () => kindsIn(tree()) };
    },
  };
}

/** Pricing looks at so many places in the time of one look of the search, and a round has the program to solve. */
const PLACES_A_LOOK = 5;
const LOOKS_A_ROUND = 30_000;
const LOOKS_A_ROW = 300;

const kindsIn = (tree: CutTree | undefined): readonly number[] => (tree === undefined ? [] : piecesOf(tree));

function farley(
  problem: CuttingProblem,
  demand: Demand,
  costs: readonly number[],
  prices: readonly number[],
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
