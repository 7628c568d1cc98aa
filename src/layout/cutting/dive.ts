import type { Solver } from '../solver.ts';
import { generateColumns, type Mix } from './column-generation.ts';
import { binOf } from './fill.ts';
import { type Pattern, singles } from './patterns.ts';
import type { Looking } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import type { OpenBin } from './rows.ts';
import type { Attempt } from './ruin-recreate.ts';

/** A pattern whose share is at least this is cut once, when no pattern has a whole number of times in it. */
const SHARE_LEAST = 0.6;
const ROUNDS_MAX = 30;
/** Most rounds begin near their end, with the patterns of the one before. */
const ROUNDS_PAID = 10;

/**
 * Makes whole bins of a mix of patterns: cuts each pattern its whole number of times, or the patterns with the largest
 * shares once, and mixes anew for what is left, until that is less than a bin or two.
 */
export function dive(looking: Looking, mix: Mix, solver: Solver, looks: number): Attempt {
  const { problem } = looking;
  const demand = problem.pieces.map(piece => piece.blanks.length);
  const supply = problem.bins.map(bin => bin.available);
  const bins: OpenBin[] = [];
  let current: Mix | undefined = mix;
  for (let round = 0; round < ROUNDS_MAX && current !== undefined; round += 1) {
    const taken = take(problem, current, demand, supply, bins);
    const area = problem.pieces.reduce((sum, piece, kind) => sum + piece.area * (demand[kind] ?? 0), 0);
    if (!taken || area < (problem.bins[0]?.area ?? 0)) break;
    const rest = restOf(problem, supply);
    // Whatever is left can at least be cut one by one.
    const single = demand.flatMap((count, kind) => (count > 0 ? singles(looking, kind, supply) : []));
    const fitting = current.patterns.filter(pattern => fits(pattern, demand) && (supply[pattern.bin] ?? 0) > 0);
    current = generateColumns(
      { ...looking, problem: rest },
      demand,
      problem.bins.map(bin => bin.cost),
      [...fitting, ...single],
      'up',
      solver,
      looks / ROUNDS_PAID,
    );
  }
  return { bins, left: demand.flatMap((count, kind) => new Array<number>(count).fill(kind)) };
}

/** Puts whole bins of the mix into `bins` and takes them off demand and supply; whether there was any. */
function take(problem: CuttingProblem, mix: Mix, demand: number[], supply: number[], bins: OpenBin[]): boolean {
  const ranked = mix.patterns
    .map((pattern, index) => ({ pattern, index, times: mix.times[index] ?? 0 }))
    .filter(({ times }) => times > 1e-6)
    .sort((one, two) => two.times - one.times || one.index - two.index);
  let taken = 0;
  const takeOnce = (pattern: Pattern): void => {
    if (!fits(pattern, demand) || (supply[pattern.bin] ?? 0) <= 0) return;
    for (const [kind, count] of pattern.counts) demand[kind] = (demand[kind] ?? 0) - count;
    supply[pattern.bin] = (supply[pattern.bin] ?? 0) - 1;
    bins.push(binOf(problem, pattern.bin, pattern.trees));
    taken += 1;
  };
  for (const { pattern, times } of ranked) for (let time = 1; time <= times + 1e-6; time += 1) takeOnce(pattern);
  for (const { pattern, times } of ranked) if (times % 1 >= SHARE_LEAST) takeOnce(pattern);
  const [first] = ranked;
  if (taken === 0 && first !== undefined) takeOnce(first.pattern);
  return taken > 0;
}

const fits = (pattern: Pattern, demand: readonly number[]): boolean =>
  [...pattern.counts].every(([kind, count]) => count <= (demand[kind] ?? 0));

const restOf = (problem: CuttingProblem, supply: readonly number[]): CuttingProblem => ({
  ...problem,
  bins: problem.bins.map((bin, kind) => ({ ...bin, available: supply[kind] ?? 0 })),
});
