import fc from 'fast-check';
import { loadSolver } from '../../src/layout/solver.ts';
import { aCuttingJob } from '../layout/cutting/a-job.ts';
import { judged } from '../layout/cutting/judged.ts';
import type { Told } from './run.ts';

/** Plans so many drawn jobs (any saw, boards with defects, wood that runs out) and has each plan sawn by the judge. */
export async function judgePlans(count: number, seed: number): Promise<Told> {
  const solver = await loadSolver();
  const lost: string[] = [];
  for (const [index, job] of fc.sample(aCuttingJob, { numRuns: count, seed }).entries()) {
    try {
      lost.push(...judged(job, solver).map(sentence => `job ${index} of seed ${seed}: ${sentence}`));
    } catch (error) {
      lost.push(`job ${index} of seed ${seed}: ${String(error)}`);
    }
  }
  return { tried: count, lost, more: 'cutting plans sawn by the judge' };
}
