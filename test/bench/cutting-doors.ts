import { forShortWork } from '../../src/engine.ts';
import { planCutting } from '../../src/layout/cutting/index.ts';
import { loadSolver } from '../../src/layout/solver.ts';
import { aShopOfDoors } from '../layout/cutting/shop-like.ts';
import { sum } from './cutting-planned.ts';
import { peakMemory, timed } from './measurement.ts';

/** What the cutting plan of so many doors is, and what it costs. */
export type CuttingOfDoors = {
  readonly blanks: number;
  readonly processorSeconds: number;
  readonly bins: number;
  readonly bound: number;
  readonly memory: number;
};

async function cuttingOf(doors: number): Promise<CuttingOfDoors> {
  const solver = await loadSolver();
  const job = aShopOfDoors(doors);
  const { value, processorSeconds } = await timed(() => planCutting(job.blanks, job, solver));
  return {
    blanks: job.blanks.length,
    processorSeconds,
    bins: sum(value.value.map(plan => plan.bins.length)),
    bound: sum(value.value.map(plan => plan.bound.bins)),
    memory: peakMemory(),
  };
}

// As the command does that builds a packet.
forShortWork();
process.stdout.write(JSON.stringify(await cuttingOf(Number(process.argv[2]))));
