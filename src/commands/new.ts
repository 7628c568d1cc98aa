import { existsSync } from 'node:fs';
import { newWorkbook } from '../import/blank-workbook.ts';
import { machine } from '../machine.ts';
import type { Units } from '../units/read-length.ts';
import type { ExitCode } from './exit-code.ts';
import { tellLine } from './telling.ts';

/** `stilebook new FILE`: a workbook to start a job with. A file that is there already is never written over. */
export async function newFile(file: string, options: { readonly units: Units }): Promise<ExitCode> {
  if (existsSync(file)) {
    process.stderr.write(`stilebook: ${file} is there already. Name a new file.\n`);
    return 2;
  }
  await machine.writeFile(file, await newWorkbook(options.units));
  tellLine(`${file} is ready to be filled in: one row of Cabinets for each opening.`);
  return 0;
}
