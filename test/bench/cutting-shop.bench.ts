import fc from 'fast-check';
import { planCutting } from '../../src/layout/cutting/index.ts';
import { loadSolver, type Solver } from '../../src/layout/solver.ts';
import { aShopLikeJob, aShopOfDoors } from '../layout/cutting/shop-like.ts';
import { sum } from './cutting-planned.ts';
import { type Measurement, peakMemory, timed } from './measurement.ts';

/** Jobs of a shop: how many are proven, and how time and memory grow with the doors. */
export async function measure(): Promise<readonly Measurement[]> {
  const solver = await loadSolver();
  return [...(await large(solver, 1000, 5)), ...(await large(solver, 10_000, 60)), shopJobs(solver)];
}

function shopJobs(solver: Solver): Measurement {
  const jobs = fc.sample(aShopLikeJob, { numRuns: 200, seed: 1 });
  const proven = jobs.filter(({ blanks, stock, shop }) => {
    // All of the time: a shop whose search shows no progress is not kept waiting for it.
    const patient = { ...shop, planning: { ...shop.planning, seconds: 2, patience: Number.POSITIVE_INFINITY } };
    const [plan] = planCutting(blanks, { stock, shop: patient }, solver).value;
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
