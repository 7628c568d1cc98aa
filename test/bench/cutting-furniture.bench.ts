import { loadSolver, type Solver } from '../../src/layout/solver.ts';
import { readInstances } from '../published/cutting/instances.ts';
import { planned, sum } from './cutting-planned.ts';
import type { Measurement } from './measurement.ts';

/** Sheets of a furniture maker's real orders, beside the best of our trials and the bound. */
export async function measure(): Promise<readonly Measurement[]> {
  const solver = await loadSolver();
  return [furniture(solver)];
}

function furniture(solver: Solver): Measurement {
  const plans = readInstances('two-dimensional-furniture.json').map(each =>
    planned(solver, each, 5, Number.POSITIVE_INFINITY),
  );
  const ours = sum(plans.map(({ bins }) => bins));
  return {
    what: '43 furniture orders, 5 s each',
    unit: 'sheets',
    ours,
    peer: { name: 'best of our trials', value: 903 },
    floor: { name: 'bound', value: sum(plans.map(({ bound }) => bound)) },
    target: '≤ 903',
    met: ours <= 903,
  };
}
