import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { planCutting } from '../../src/layout/cutting/index.ts';
import { loadSolver, type Solver } from '../../src/layout/solver.ts';
import { aShopLikeJob } from '../layout/cutting/shop-like.ts';
import { bundled } from './bundled.ts';
import type { CuttingOfDoors } from './cutting-doors.ts';
import type { Measurement } from './measurement.ts';

/** Jobs of a shop: how many are proven, and how time and memory grow with the doors. */
export async function measure(): Promise<readonly Measurement[]> {
  const cuttingDoors = bundled('cutting-doors');
  return [...large(cuttingDoors, 1000, 5), ...large(cuttingDoors, 10_000, 60), shopJobs(await loadSolver())];
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

/** In a process of its own, as a shop runs it. */
function large(cuttingDoors: string, doors: number, seconds: number): readonly Measurement[] {
  const told = execFileSync(process.execPath, [cuttingDoors, `${doors}`], { encoding: 'utf8' });
  const { blanks, processorSeconds, bins, bound, memory } = JSON.parse(told) as CuttingOfDoors;
  return [
    {
      what: `plan of ${doors} doors, ${blanks} blanks`,
      unit: 's',
      ours: processorSeconds,
      target: `≤ ${seconds} s`,
      met: processorSeconds <= seconds,
    },
    { what: '… boards and sheets', unit: '', ours: bins, floor: { name: 'bound', value: bound } },
    { what: '… peak memory', unit: 'MB', ours: memory, target: '< 1024 MB', met: memory < 1024 },
  ];
}
