import { execFileSync } from 'node:child_process';
import { join } from 'node:path';

/** Beside the program, so that the bundle finds what ships with it. */
const FOLDER = '.cache';

/** Bundles a file of the bench as the program is, and tells where: what runs the sources wraps every function. */
export function bundled(name: string): string {
  execFileSync(process.execPath, ['.build.js', FOLDER, `test/bench/${name}.ts`]);
  return join(FOLDER, `${name}.js`);
}
