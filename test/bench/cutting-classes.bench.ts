import { BINS_SHARE } from '../../src/layout/cutting/index.ts';
import { loadSolver, type Solver } from '../../src/layout/solver.ts';
import { type Instance, readInstances } from '../published/cutting/instances.ts';
import { planned, sum } from './cutting-planned.ts';
import type { Measurement } from './measurement.ts';

/**
 * Sheets beside published values and proven bounds, in one run. Every plan of any stages goes through the judge. Seconds are
 * those that the planner is given for the sheets: what it takes beside them for settings, the published problem does not
 * ask for. Sources of the data stand in fixtures/published/cutting.
 */
export async function measure(): Promise<readonly Measurement[]> {
  const solver = await loadSolver();
  const classes = readInstances('two-dimensional-class01-10.json');
  return [
    ...classBins(solver, classes, 0.1, Number.POSITIVE_INFINITY, 'any stages', 7265),
    ...classBins(solver, classes, 1, Number.POSITIVE_INFINITY, 'any stages', 7243),
    ...classBins(solver, classes, 1, 4, '3 stages and a trim', 7265),
  ];
}

function classBins(
  solver: Solver,
  instances: readonly Instance[],
  seconds: number,
  stages: number,
  name: string,
  target: number,
): readonly Measurement[] {
  const given = stages === Number.POSITIVE_INFINITY ? seconds / BINS_SHARE : seconds;
  const plans = instances.map(instance => planned(solver, instance, given, stages));
  const ours = sum(plans.map(({ bins }) => bins));
  const proven = plans.filter(({ bins, bound }) => bins === bound).length;
  return [
    {
      what: `500 instances of classes 1-10, ${name}, ${seconds} s each for sheets`,
      unit: 'sheets',
      ours,
      peer: { name: 'published', value: sum(instances.map(({ published }) => published ?? 0)) },
      floor: { name: 'bound', value: sum(plans.map(({ bound }) => bound)) },
      target: `≤ ${target}`,
      met: ours <= target,
    },
    { what: '… of these proven to need no fewer', unit: 'of 500', ours: proven },
    ...CLASSES.map(number => {
      const own = instances.flatMap((instance, at) => (classOf(instance) === number ? (plans[at] ?? []) : []));
      const published = instances.filter(each => classOf(each) === number).map(each => each.published ?? 0);
      return {
        what: `… class ${number}`,
        unit: 'sheets',
        ours: sum(own.map(({ bins }) => bins)),
        peer: { name: 'published', value: sum(published) },
        floor: { name: 'bound', value: sum(own.map(({ bound }) => bound)) },
      };
    }),
  ];
}

const CLASSES = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

/** `class03_n20_5` is of class 3. */
const classOf = ({ name }: Instance): number => Number(name.slice('class'.length, 'class'.length + 2));
