import type { Solver } from '../solver.ts';
import type { Bound } from './bound.ts';
import { areaAsked, type Demand } from './demand.ts';
import type { CuttingProblem } from './problem.ts';

/** The program has a column for each kind of bin; so many nodes settle it. */
const NODES_MAX = 1000;

/**
 * What any plan costs at least: the cheapest bins that are as many as the bound says and hold the area of the pieces.
 */
export function leastCost(problem: CuttingProblem, demand: Demand, bound: Bound, solver: Solver): number {
  const [only, ...others] = problem.bins;
  if (only === undefined) return 0;
  if (others.length === 0) return bound.bins * only.cost;
  // Areas as shares of the largest bin, so that the numbers of the program are of one size.
  const largest = Math.max(...problem.bins.map(bin => bin.area));
  const area = areaAsked(problem, demand) / largest;
  const program = solver.open([
    { least: bound.bins, most: Number.POSITIVE_INFINITY },
    { least: area - 1e-9, most: Number.POSITIVE_INFINITY },
  ]);
  for (const bin of problem.bins)
    program.add({ cost: bin.cost, most: bin.available, rows: [0, 1], values: [1, bin.area / largest] });
  const solution = program.solveWhole({ nodes: NODES_MAX, gap: 1e-7 });
  program.close();
  return solution?.proven === true ? solution.cost : 0;
}
