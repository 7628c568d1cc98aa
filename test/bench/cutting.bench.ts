import fc from 'fast-check';
import { fewerSettings } from '../../src/layout/cutting/fewer-settings.ts';
import { handlingOf } from '../../src/layout/cutting/handling.ts';
import { problemOf } from '../../src/layout/cutting/in-units.ts';
import { planCutting } from '../../src/layout/cutting/index.ts';
import { isOfFirstCut } from '../../src/layout/cutting/rows.ts';
import { LOOKS_A_SECOND, lookingAt, search } from '../../src/layout/cutting/search.ts';
import { loadSolver, type Solver } from '../../src/layout/solver.ts';
import { aShopLikeJob, aShopOfDoors } from '../layout/cutting/shop-like.ts';
import { verify } from '../layout/verify.ts';
import { asJob, type Instance, readInstances } from '../published/cutting/instances.ts';
import { type Measurement, peakMemory, timed } from './measurement.ts';

/**
 * Cutting plans beside published values and proven bounds, in one run. Every plan goes through the judge. Times are
 * those that the planner is given, one core; sources of the data stand in fixtures/published/cutting.
 */
export async function measure(): Promise<readonly Measurement[]> {
  const solver = await loadSolver();
  const classes = readInstances('two-dimensional-class01-10.json');
  return [
    ...classBins(solver, classes, 1, Number.POSITIVE_INFINITY, 'any stages', 7243),
    ...classBins(solver, classes, 0.1, Number.POSITIVE_INFINITY, 'any stages', 7265),
    ...classBins(solver, classes, 1, 4, '3 stages and a trim', 7265),
    furniture(solver),
    ...bars(solver, 'one-dimensional-falkenauer.json'),
    ...bars(solver, 'one-dimensional-hard28.json'),
    shopJobs(solver),
    ...settings(solver),
    ...(await large(solver, 1000, 5)),
    ...(await large(solver, 10_000, 60)),
  ];
}

/** Bins and bound of a plan that the judge has nothing against. */
function planned(
  solver: Solver,
  instance: Instance,
  seconds: number,
  stages: number,
): { readonly bins: number; readonly bound: number } {
  const job = asJob(instance, 'free', seconds);
  const [stock] = job.stock;
  if (stock === undefined) throw new Error('no stock');
  if (stages === 4) {
    // Between what a shop can say (2, 3 or any) lies what the literature calls three stages with trimming.
    const found = search({ ...problemOf(job.blanks, stock, job.shop), stages }, noPatience(seconds), 1, solver);
    return { bins: found.bins.length, bound: found.bound.bins };
  }
  const [plan] = planCutting(job.blanks, job, solver).value;
  if (plan === undefined) throw new Error(`${instance.name} has no plan`);
  const wrong = verify(plan, job.blanks, stock, job.shop);
  if (wrong.length > 0) throw new Error(`${instance.name}: ${wrong[0]}`);
  return { bins: plan.bins.length, bound: plan.bound.bins };
}

function classBins(
  solver: Solver,
  instances: readonly Instance[],
  seconds: number,
  stages: number,
  name: string,
  target: number,
): readonly Measurement[] {
  const plans = instances.map(instance => planned(solver, instance, seconds, stages));
  const ours = sum(plans.map(({ bins }) => bins));
  const proven = plans.filter(({ bins, bound }) => bins === bound).length;
  return [
    {
      what: `500 instances of classes 1-10, ${name}, ${seconds} s each`,
      unit: 'sheets',
      ours,
      peer: { name: 'published', value: sum(instances.map(({ published }) => published ?? 0)) },
      floor: { name: 'bound', value: sum(plans.map(({ bound }) => bound)) },
      target: `≤ ${target}`,
      met: ours <= target,
    },
    { what: '… of these proven to need no fewer', unit: 'of 500', ours: proven },
  ];
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

function shopJobs(solver: Solver): Measurement {
  const jobs = fc.sample(aShopLikeJob, { numRuns: 200, seed: 1 });
  const proven = jobs.filter(job => {
    const [plan] = planCutting(job.blanks, job, solver).value;
    return plan !== undefined && plan.bins.length === plan.bound.bins;
  });
  return {
    what: '200 drawn shop jobs, 2 s each: proven to need no fewer',
    unit: 'of 200',
    ours: proven.length,
    target: '≥ 180',
    met: proven.length >= 180,
  };
}

function settings(solver: Solver): readonly Measurement[] {
  const orders = readInstances('two-dimensional-furniture.json').filter(
    each => sum(each.pieces.map(([, , copies]) => copies)) <= 350,
  );
  const counts = orders.map(order => {
    const job = asJob(order, 3, 2);
    const [stock] = job.stock;
    if (stock === undefined) throw new Error('no stock');
    const problem = problemOf(job.blanks, stock, job.shop);
    const handle = handlingOf(problem, stock, job.shop);
    const found = search(problem, noPatience(1.5), 1, solver);
    const looking = lookingAt(problem, 1);
    const wishes = { handle, weights: { remnant: 1, bin: undefined }, made: new Set<number>(), spare: 0 };
    const after = fewerSettings(looking, found, [Number.POSITIVE_INFINITY], noPatience(2), wishes);
    const asked = (bins: typeof found.bins): readonly number[] => [
      ...new Set(bins.flatMap(bin => handle(bin).settings)),
    ];
    const firsts = (bins: typeof found.bins): number => asked(bins).filter(isOfFirstCut).length;
    const sizes =
      new Set(order.pieces.map(([length]) => length)).size + new Set(order.pieces.map(([, width]) => width)).size;
    return {
      firsts: { before: firsts(found.bins), after: firsts(after.bins) },
      all: {
        before: asked(found.bins).length - firsts(found.bins),
        after: asked(after.bins).length - firsts(after.bins),
        sizes,
      },
      sheets: after.bins.length - found.bins.length,
    };
  });
  const firsts = sum(counts.map(({ firsts }) => firsts.after));
  const before = sum(counts.map(({ firsts }) => firsts.before));
  return [
    {
      what: `fence settings of first cuts, ${orders.length} furniture orders`,
      unit: 'settings',
      ours: firsts,
      peer: { name: 'without looking for fewer', value: before },
      target: 'at least 37 % fewer, not one sheet more',
      met: firsts <= 0.63 * before && counts.every(({ sheets }) => sheets <= 0),
    },
    {
      what: '… of all cuts, each made once',
      unit: 'settings',
      ours: sum(counts.map(({ all }) => all.after)),
      peer: { name: 'without looking for fewer', value: sum(counts.map(({ all }) => all.before)) },
      floor: { name: 'different lengths and widths', value: sum(counts.map(({ all }) => all.sizes)) },
    },
  ];
}

async function large(solver: Solver, doors: number, seconds: number): Promise<readonly Measurement[]> {
  const job = aShopOfDoors(doors);
  const { value, processorSeconds } = await timed(() => planCutting(job.blanks, job, solver));
  const bins = sum(value.value.map(plan => plan.bins.length));
  return [
    {
      what: `plan of ${doors} doors, ${job.blanks.length} blanks`,
      unit: 's',
      ours: processorSeconds,
      target: `≤ ${seconds} s`,
      met: processorSeconds <= seconds,
    },
    {
      what: '… boards and sheets',
      unit: '',
      ours: bins,
      floor: { name: 'bound', value: sum(value.value.map(plan => plan.bound.bins)) },
    },
    { what: '… peak memory', unit: 'MB', ours: peakMemory(), target: '< 1024 MB', met: peakMemory() < 1024 },
  ];
}

/** So many seconds, and all of them. */
const noPatience = (seconds: number) => ({ looks: seconds * LOOKS_A_SECOND, patience: Number.POSITIVE_INFINITY });

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
