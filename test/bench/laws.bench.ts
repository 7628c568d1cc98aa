import fc from 'fast-check';
import { calculate } from '../../src/calculate/index.ts';
import { aSmallDrawing, drawnJob } from '../calculate/drawn-jobs.ts';
import { judgeDoors } from '../calculate/judge-doors.ts';
import type { Measurement } from './measurement.ts';

/** A hundred times as many as in the test run. */
const CASES = 100_000;

/** The laws of the test run, tried on many more doors. */
export async function measure(): Promise<readonly Measurement[]> {
  const broken = fc.check(
    fc.property(aSmallDrawing, drawing => {
      const job = drawnJob(drawing);
      return judgeDoors(job, calculate(job).value).length === 0;
    }),
    { numRuns: CASES },
  );
  return [
    {
      what: `laws on ${CASES} drawn jobs: broken after`,
      unit: 'jobs',
      ours: broken.failed ? broken.numRuns : CASES,
      target: 'none broken',
      met: !broken.failed,
    },
  ];
}
