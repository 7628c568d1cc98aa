import { execFileSync } from 'node:child_process';
import { bundled } from './bundled.ts';
import type { CalculateJob } from './calculate-job.ts';
import { growth, type Measurement } from './measurement.ts';

/** Bundled as the program is: what runs the sources wraps every function, and that is not ours to count. */
export async function measure(): Promise<readonly Measurement[]> {
  const told = execFileSync(process.execPath, [bundled('calculate-job')], { encoding: 'utf8' });
  const [thousand, tenThousand] = JSON.parse(told) as readonly [CalculateJob, CalculateJob];
  const exponent = growth([1000, thousand.seconds], [10_000, tenThousand.seconds]);
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
  ];
}
