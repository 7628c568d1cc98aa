import type { Program, Solver } from '../solver.ts';
import { LOOKS_OF_WORK } from './column-generation.ts';
import type { Demand } from './demand.ts';
import { binOf } from './fill.ts';
import { costOfBins, type Filling } from './first-plan.ts';
import { openMaster } from './master.ts';
import { contentsOf, type Pattern, patternsOf, takeOutSurplus } from './patterns.ts';
import type { Looking } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import { type OpenBin, piecesIn } from './rows.ts';

/** Different fillings of one bin that a search has seen, the fullest of them. */
export type Pool = { readonly see: (bins: readonly OpenBin[]) => void; readonly patterns: () => readonly Pattern[] };

/** So many columns the solver takes in a moment; more cost more time than they bring. */
const PATTERNS_MAX = 400;

export function openPool(): Pool {
  const known = new WeakSet<OpenBin>();
  // Of many that are seen, few are asked for: only those are made patterns of.
  const kept = new Map<string, OpenBin>();
  return {
    see: bins => {
      for (const bin of bins) {
        if (known.has(bin)) continue;
        known.add(bin);
        const name = contentsOf(bin);
        if (!kept.has(name)) kept.set(name, bin);
      }
    },
    patterns: () => {
      const fullest = [...kept.values()].sort((one, two) => two.filled - one.filled).slice(0, PATTERNS_MAX);
      return patternsOf({ bins: fullest, left: [] });
    },
  };
}

/**
 * A choice among patterns that were found one by one, in which bins of different attempts go together. Undefined where
 * none is found that is cheaper than `filling` by `gap` with so much work.
 */
export function coverBy(
  looking: Looking,
  demand: Demand,
  patterns: readonly Pattern[],
  filling: Filling,
  solver: Solver,
  { work, gap }: { readonly work: number; readonly gap: number },
): Filling | undefined {
  const { problem } = looking;
  const all = [...patternsOf(filling), ...patterns];
  const costs = problem.bins.map(bin => bin.cost);
  const { program } = openMaster(problem, demand, costs, all, solver);
  const times = wholeTimes(program, costOfBins(problem, filling.bins) - gap, work);
  looking.looks += program.work() * LOOKS_OF_WORK;
  program.close();
  if (times === undefined) return undefined;
  const bins = all.flatMap((pattern, index) =>
    Array.from({ length: times[index] ?? 0 }, () => binOf(problem, pattern.bin, pattern.trees)),
  );
  return withoutSurplus(problem, demand, bins);
}

/**
 * Dives for whole numbers: takes the pattern that is nearest to one more and solves again, and where that costs too much,
 * does without it once. Where even fractions cost more than `most`, whole numbers do too.
 */
function wholeTimes(program: Program, most: number, work: number): readonly number[] | undefined {
  let tried: { readonly column: number; readonly times: number } | undefined;
  while (program.work() < work) {
    const solution = program.solve(work - program.work());
    if (solution === undefined || solution.cost > most) {
      if (tried === undefined) return undefined;
      program.limit(tried.column, 0, tried.times - 1);
      tried = undefined;
      continue;
    }
    const next = nearestToMore(solution.columns);
    if (next === undefined) return Array.from(solution.columns, Math.round);
    program.limit(next.column, next.times, Number.POSITIVE_INFINITY);
    tried = next;
  }
  return undefined;
}

function nearestToMore(columns: Float64Array): { readonly column: number; readonly times: number } | undefined {
  let column = -1;
  let most = 1e-6;
  for (let at = 0; at < columns.length; at += 1) {
    const part = (columns[at] ?? 0) % 1;
    if (part <= most || part > 1 - 1e-6) continue;
    most = part;
    column = at;
  }
  return column < 0 ? undefined : { column, times: Math.ceil(columns[column] ?? 0) };
}

/** Takes out what is cut more often than it is asked for; bins that are empty then are left out. */
export function withoutSurplus(problem: CuttingProblem, demand: Demand, bins: readonly OpenBin[]): Filling {
  const surplus = demand.map(count => -count);
  for (const bin of bins) for (const kind of piecesIn(bin)) surplus[kind] = (surplus[kind] ?? 0) + 1;
  for (const bin of [...bins].sort((one, two) => one.filled - two.filled)) takeOutSurplus(problem, bin, surplus);
  return { bins: bins.filter(bin => bin.count > 0), left: [] };
}
