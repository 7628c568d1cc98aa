import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

const FOLDER = '.cache/program';

/** The program bundled as it ships, made anew before each run: commands are tested as a person has them, and start fast. */
export const PROGRAM = join(new URL('../..', import.meta.url).pathname, FOLDER, 'cli.js');

export function setup(project: TestProject): void {
  build();
  project.onTestsRerun(build);
}

function build(): void {
  execFileSync(process.execPath, ['.build.js', FOLDER], { cwd: new URL('../..', import.meta.url).pathname });
}
