import { spawnSync } from 'node:child_process';
import { PROGRAM } from './built-program.ts';

const project = new URL('../..', import.meta.url).pathname;

export type Ran = { readonly status: number | null; readonly out: string; readonly told: string };

/** Runs the program as a person would, from the project's folder: exit code, standard output, standard error. */
export function stilebook(...words: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...words], {
    cwd: project,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  });
  return { status, out: stdout, told: stderr };
}
