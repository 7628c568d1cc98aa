import type { Solver } from '../solver.ts';
import { type Bound, type Demand, packingBound } from './bound.ts';
import { chanceFrom } from './chance.ts';
import { generateColumns } from './column-generation.ts';
import { coverBy, openPool, type Pool } from './cover.ts';
import { dive } from './dive.ts';
import { binOf } from './fill.ts';
import { COST_EPSILON, costOfBins, everyPiece, type Filling, firstPlan, isBetter } from './first-plan.ts';
import { leastCost } from './least-cost.ts';
import { patternsOf, singles } from './patterns.ts';
import { FITS, type Looking, SPLITS } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import type { Direction } from './rows.ts';
import { recreateAll } from './ruin-recreate.ts';
import { fewerInWindows } from './windows.ts';

/** The best filling found, and the least number of bins that any filling of the same pieces needs. */
export type Found = Filling & { readonly bound: Bound; readonly looks: number };

/** Looks that take about a second. A plan is a function of its input, so its time is counted in them and not by a clock. */
export const LOOKS_A_SECOND = 50_000_000;

export const lookingAt = (problem: CuttingProblem, seed: number): Looking => ({
  problem,
  chance: chanceFrom(seed),
  blinks: BLINKS,
  looks: 0,
});

/** Share of places that the search passes over. */
const BLINKS = 0.02;

/**
 * Fills as few bins as can be found, or as cheap ones: a first plan that takes linear time, whole patterns of a linear
 * program where many pieces are alike, then ruin and recreate, until the looks are spent or the bound is met.
 */
export function search(problem: CuttingProblem, budget: number, seed: number, solver: Solver): Found {
  const looking = lookingAt(problem, seed);
  const start = bestFirstPlan({ ...looking, blinks: 0 });
  const demand = demandOf(problem, start.left);
  const bound = boundOf(looking, demand, start, solver, budget * BOUND_SHARE);
  const least = leastCost(problem, demand, bound, solver);
  if (start.left.length === 0 && costOfBins(problem, start.bins) <= least + COST_EPSILON)
    return { ...start, bound, looks: looking.looks };
  const pool = openPool();
  const patternLooks = budget * PATTERNS_SHARE + LOOKS_A_PIECE * demand.reduce((total, count) => total + count, 0);
  const mixed = betterByPatterns(looking, demand, start, pool, solver, patternLooks);
  const supply = problem.bins.map(bin => bin.available);
  const best = fewerInWindows(looking, mixed, least, supply, budget * SEARCH_SHARE, pool.see);
  return { ...betterByCover(looking, best, least, pool, solver), bound, looks: looking.looks };
}

/** Shares of the time for proving the bound, and for patterns of a linear program. */
const BOUND_SHARE = 0.3;
const PATTERNS_SHARE = 0.2;
const SEARCH_SHARE = 0.5;
/** Whole patterns are most of a large plan, so that they have time by its pieces whatever the budget is. */
const LOOKS_A_PIECE = 10_000;

/** So many pieces make the rules for a first plan a choice that is worth making; for more, one does about as well. */
const PIECES_FOR_ALL_RULES = 2000;

function bestFirstPlan(looking: Looking): Filling {
  const order = everyPiece(looking.problem);
  const rules = FIRST.flatMap(first => FITS.flatMap(fit => SPLITS.map(split => ({ first, rule: { fit, split } }))));
  let best: Filling | undefined;
  for (const { first, rule } of order.length > PIECES_FOR_ALL_RULES ? rules.slice(0, 1) : rules) {
    const filling = firstPlan(looking, order, rule, first);
    if (best === undefined || isBetter(looking.problem, filling, best)) best = filling;
  }
  return best ?? { bins: [], left: order };
}

const FIRST: readonly (Direction | undefined)[] = [undefined, 'crosscut', 'rip'];

/** What can be cut: all pieces but those that are left. */
const demandOf = (problem: CuttingProblem, left: readonly number[]): Demand => {
  const demand = problem.pieces.map(piece => piece.blanks.length);
  for (const kind of left) demand[kind] = (demand[kind] ?? 0) - 1;
  return demand;
};

/** Weighing comes first, because it costs next to nothing; the linear program where that does not settle it. */
function boundOf(looking: Looking, demand: Demand, start: Filling, solver: Solver, looks: number): Bound {
  const { problem } = looking;
  const weighed = packingBound(problem, demand);
  if (start.bins.length <= weighed.bins) return weighed;
  const patterns = [...patternsOf(start), ...allSingles(looking, demand)];
  const mix = generateColumns(
    looking,
    demand,
    problem.bins.map(() => 1),
    patterns,
    'down',
    solver,
    looks,
  );
  const bins = Math.ceil((mix?.bound ?? 0) - BOUND_EPSILON);
  return bins > weighed.bins ? { bins, by: 'column-generation' } : weighed;
}

/** The solver's answers are exact to about a millionth. */
const BOUND_EPSILON = 1e-5;

/** Whole patterns of the cheapest mix, and the rest put around them. */
function betterByPatterns(
  looking: Looking,
  demand: Demand,
  start: Filling,
  pool: Pool,
  solver: Solver,
  looks: number,
): Filling {
  const { problem } = looking;
  if (start.left.length > 0) return start;
  const patterns = [...patternsOf(start), ...allSingles(looking, demand)];
  const costs = problem.bins.map(bin => bin.cost);
  const mix = generateColumns(looking, demand, costs, patterns, 'up', solver, looks / 2);
  if (mix === undefined) return start;
  pool.see(mix.patterns.map(pattern => binOf(problem, pattern.bin, pattern.trees)));
  const filling = recreateAll(looking, dive(looking, mix, solver, looks / 2));
  return isBetter(problem, filling, start) ? filling : start;
}

/** So many kinds of pieces, and bins, make a program that is solved in a moment. */
const COVER_BINS_MAX = 60;
const COVER_KINDS_MAX = 100;
const COVER_NODES = 50;

function betterByCover(looking: Looking, best: Filling, least: number, pool: Pool, solver: Solver): Filling {
  const { problem } = looking;
  const settled = best.left.length > 0 || costOfBins(problem, best.bins) <= least + COST_EPSILON;
  if (settled || best.bins.length > COVER_BINS_MAX || problem.pieces.length > COVER_KINDS_MAX) return best;
  const gap = Math.min(...problem.bins.map(bin => bin.cost)) * 0.99;
  const covered = coverBy(problem, demandOf(problem, best.left), pool.patterns(), best, solver, {
    nodes: COVER_NODES,
    gap,
  });
  return covered !== undefined && isBetter(problem, covered, best) ? covered : best;
}

const allSingles = (looking: Looking, demand: Demand): ReturnType<typeof singles> =>
  demand.flatMap((count, kind) =>
    count > 0
      ? singles(
          looking,
          kind,
          looking.problem.bins.map(bin => bin.available),
        )
      : [],
  );
