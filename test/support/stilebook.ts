import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

const project = new URL('../..', import.meta.url).pathname;

export type Ran = { readonly status: number | null; readonly out: string; readonly told: string };

/** Runs the program as a person would, from the project's folder: exit code, standard output, standard error. */
export function stilebook(...words: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', 'tsx', join(project, 'src/cli.ts'), ...words],
    { cwd: project, encoding: 'utf8', env: { ...process.env, NO_COLOR: '1' } },
  );
  return { status, out: stdout, told: stderr };
}
