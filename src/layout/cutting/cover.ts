import type { Solver, WholeLimits } from '../solver.ts';
import type { Demand } from './bound.ts';
import { addPattern, openMaster } from './column-generation.ts';
import { binOf } from './fill.ts';
import { costOfBins, type Filling } from './first-plan.ts';
import { type Pattern, patternsOf } from './patterns.ts';
import type { CuttingProblem } from './problem.ts';
import { isRow, type OpenBin, piecesIn, takeOut } from './rows.ts';

/** A bin with these pieces, and how full it is. */
type Kept = { readonly pattern: Pattern; readonly filled: number };

/** Different fillings of one bin that a search has seen, the fullest of them. */
export type Pool = { readonly see: (bins: readonly OpenBin[]) => void; readonly patterns: () => readonly Pattern[] };

/** So many columns the solver takes in a moment; more cost more time than they bring. */
const PATTERNS_MAX = 400;

export function openPool(): Pool {
  const known = new WeakSet<OpenBin>();
  const kept = new Map<string, Kept>();
  return {
    see: bins => {
      for (const bin of bins) {
        if (known.has(bin)) continue;
        known.add(bin);
        const name = `${bin.kind} ${piecesIn(bin).sort((one, two) => one - two)}`;
        const [pattern] = kept.has(name) ? [] : patternsOf({ bins: [bin], left: [] });
        if (pattern !== undefined) kept.set(name, { pattern, filled: bin.filled });
      }
    },
    patterns: () =>
      [...kept.values()]
        .sort((one, two) => two.filled - one.filled)
        .slice(0, PATTERNS_MAX)
        .map(({ pattern }) => pattern),
  };
}

/**
 * The cheapest choice among patterns that were found one by one: bins of different attempts go together. Undefined where
 * the solver finds none that is cheaper than `filling` within its limits.
 */
export function coverBy(
  problem: CuttingProblem,
  demand: Demand,
  patterns: readonly Pattern[],
  filling: Filling,
  solver: Solver,
  limits: WholeLimits,
): Filling | undefined {
  const own = patternsOf(filling);
  const all = [...own, ...patterns];
  const program = openMaster(problem, demand, solver);
  for (const pattern of all) addPattern(program, problem, pattern, problem.bins[pattern.bin]?.cost ?? 0);
  // Where even fractions of patterns save nothing worth while, whole ones do not either.
  const saves = (program.solve()?.cost ?? 0) < costOfBins(problem, filling.bins) - limits.gap;
  const start = all.map((_, index) => (index < own.length ? 1 : 0));
  const solution = saves ? program.solveWhole(limits, start) : undefined;
  program.close();
  if (solution === undefined) return undefined;
  const bins = all.flatMap((pattern, index) =>
    Array.from({ length: solution.columns[index] ?? 0 }, () => binOf(problem, pattern.bin, pattern.trees)),
  );
  return withoutSurplus(problem, demand, bins);
}

/** Takes out what is cut more often than it is asked for; bins that are empty then are left out. */
function withoutSurplus(problem: CuttingProblem, demand: Demand, bins: readonly OpenBin[]): Filling {
  const surplus = demand.map(count => -count);
  for (const bin of bins) for (const kind of piecesIn(bin)) surplus[kind] = (surplus[kind] ?? 0) + 1;
  for (const bin of [...bins].sort((one, two) => one.filled - two.filled)) takeOutSurplus(problem, bin, surplus);
  return { bins: bins.filter(bin => bin.count > 0), left: [] };
}

function takeOutSurplus(problem: CuttingProblem, bin: OpenBin, surplus: number[]): void {
  for (const row of [...bin.rows]) {
    for (let at = row.parts.length - 1; at >= 0; at -= 1) {
      const part = row.parts[at];
      if (part === undefined || isRow(part) || (surplus[part.kind] ?? 0) <= 0) continue;
      surplus[part.kind] = (surplus[part.kind] ?? 0) - 1;
      takeOut(bin, row, at, problem.pieces, []);
    }
  }
}
