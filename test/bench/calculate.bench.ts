import fc from 'fast-check';
import { calculate } from '../../src/calculate/index.ts';
import type { Job } from '../../src/import/job.ts';
import { plus, times } from '../../src/units/length.ts';
import { aDrawing, drawnJob } from '../calculate/drawn-jobs.ts';
import { judgeDoors } from '../calculate/judge-doors.ts';
import { aJob } from '../support/a-job.ts';
import { length } from '../support/length.ts';
import { growth, type Measurement, timed } from './measurement.ts';

/** A hundred times as many as in the test run. */
const LAW_CASES = 100_000;

/** Doors of every kind, no two of one size; and the laws of the test run, tried on many more jobs. */
export async function measure(): Promise<readonly Measurement[]> {
  const thousand = await cost(1000);
  const tenThousand = await cost(10_000);
  const exponent = growth([1000, thousand.seconds], [10_000, tenThousand.seconds]);
  const broken = fc.check(
    fc.property(aDrawing, drawing => {
      const job = drawnJob(drawing);
      return judgeDoors(job, calculate(job).value).length === 0;
    }),
    { numRuns: LAW_CASES },
  );
  return [
    { what: 'calculate 1,000 doors, processor', unit: 's', ours: thousand.seconds },
    {
      what: 'calculate 10,000 doors, processor',
      unit: 's',
      ours: tenThousand.seconds,
      floor: { name: 'the same data read from JSON', value: tenThousand.floor },
      target: '≤ 1 s',
      met: tenThousand.seconds <= 1,
    },
    { what: 'exponent of growth', unit: '', ours: exponent, target: '≤ 1.1', met: exponent <= 1.1 },
    {
      what: `laws on ${LAW_CASES} drawn jobs: broken after`,
      unit: 'jobs',
      ours: broken.failed ? broken.numRuns : LAW_CASES,
      target: 'none broken',
      met: !broken.failed,
    },
  ];
}

/** The least of three runs, processor time: what other programs take at the same moment does not count. */
async function cost(doors: number): Promise<{ readonly seconds: number; readonly floor: number }> {
  const job = jobOf(doors);
  const runs = [
    await timed(() => calculate(job)),
    await timed(() => calculate(job)),
    await timed(() => calculate(job)),
  ];
  const text = JSON.stringify(runs[0]?.value.value);
  const floor = await timed(() => JSON.parse(text));
  return { seconds: Math.min(...runs.map(run => run.processorSeconds)), floor: floor.processorSeconds };
}

/** Openings of every kind in turn, each 1/64 in wider than the one of its kind before it. */
function jobOf(doors: number): Job {
  const kinds = aJob().openings.map(opening => ({ ...opening, quantity: 1 }));
  const leaves = kinds.map(({ hanging }) => (hanging.kind === 'pair' ? 2 : 1));
  const rounds = Math.ceil(doors / leaves.reduce((sum, each) => sum + each, 0));
  const openings = Array.from({ length: rounds }, (_, round) =>
    kinds.map((opening, at) => ({
      ...opening,
      cabinet: `C${round}-${at}`,
      width: plus(opening.width, times(round % 640, length('1/64'))),
      height: plus(opening.height, times(Math.floor(round / 640), length('1/64'))),
    })),
  ).flat();
  return aJob({ openings });
}
