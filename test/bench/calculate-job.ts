import { calculate } from '../../src/calculate/index.ts';
import type { Job } from '../../src/import/job.ts';
import { plus, times } from '../../src/units/length.ts';
import { aJob } from '../support/a-job.ts';
import { length } from '../support/length.ts';
import { timed } from './measurement.ts';

/** What doors of every kind cost, no two of one size: calculating them, and reading the same data from text. */
export type CalculateJob = { readonly doors: number; readonly seconds: number; readonly floor: number };

/** The least of three runs after a first one, processor time: what other programs take at the same moment does not count. */
async function cost(doors: number): Promise<CalculateJob> {
  const job = jobOf(doors);
  const text = JSON.stringify(calculate(job).value);
  const runs: number[] = [];
  // One result at a time: three of them would make the collector look through the memory of the other two.
  for (let run = 0; run < 3; run += 1) runs.push((await timed(() => calculate(job))).processorSeconds);
  const floor = await timed(() => JSON.parse(text));
  return { doors, seconds: Math.min(...runs), floor: floor.processorSeconds };
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

process.stdout.write(JSON.stringify([await cost(1000), await cost(10_000)]));
