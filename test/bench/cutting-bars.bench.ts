import { loadSolver, type Solver } from '../../src/layout/solver.ts';
import { readInstances } from '../published/cutting/instances.ts';
import { planned, sum } from './cutting-planned.ts';
import type { Measurement } from './measurement.ts';

/** Bars, of which nothing is cut but lengths, beside the bound that an LP proves. */
export async function measure(): Promise<readonly Measurement[]> {
  const solver = await loadSolver();
  return [...bars(solver, 'one-dimensional-falkenauer.json'), ...bars(solver, 'one-dimensional-hard28.json')];
}

function bars(solver: Solver, file: string): readonly Measurement[] {
  const plans = readInstances(file).map(each => planned(solver, each, 2, Number.POSITIVE_INFINITY));
  const over = plans.map(({ bins, bound }) => bins - bound);
  return [
    {
      what: `${file.replace('one-dimensional-', '').replace('.json', '')}: bars, 2 s each`,
      unit: 'bars',
      ours: sum(plans.map(({ bins }) => bins)),
      floor: { name: 'bound', value: sum(plans.map(({ bound }) => bound)) },
      target: 'never more than one over',
      met: Math.max(...over) <= 1,
    },
  ];
}
