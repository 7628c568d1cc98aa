import fc from 'fast-check';
import { calculate } from '../../src/calculate/index.ts';
import { aDrawing, aSmallDrawing, drawnJob } from '../calculate/drawn-jobs.ts';
import { judgeDoors } from '../calculate/judge-doors.ts';
import type { Measurement } from './measurement.ts';

/** A hundred times as many as in the test run; most of them one opening, so that they end in minutes. */
const CASES = 100_000;
const drawings = fc.oneof({ weight: 9, arbitrary: aSmallDrawing }, { weight: 1, arbitrary: aDrawing });

/** The laws of the test run, tried on many more doors. */
export async function measure(): Promise<readonly Measurement[]> {
  const broken = fc.check(
    fc.property(drawings, drawing => {
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
