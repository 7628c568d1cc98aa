import { machine } from '../machine.ts';
import { askProgress } from '../station/ask-progress.ts';
import { printProgress } from '../station/print-progress.ts';
import type { ExitCode } from './exit-code.ts';
import { type FloorOptions, floorOf } from './station.ts';
import { tellJson, tellLine } from './telling.ts';

/** `stilebook progress JOB`: what is done, what is left, and what the next glue-up waits for. */
export async function progress(job: string, options: FloorOptions & { readonly json?: boolean }): Promise<ExitCode> {
  const found = await askProgress(floorOf(options), job, machine, () => undefined);
  if (found === undefined) {
    process.stderr.write(`stilebook: there is no packet of job ${job} in ${floorOf(options).packetsRoot}.\n`);
    return 2;
  }
  if (options.json === true) tellJson(found);
  else tellLine(printProgress(found));
  return 0;
}
