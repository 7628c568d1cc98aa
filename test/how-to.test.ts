import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readText } from './support/pdf.ts';

const project = new URL('..', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'how-to-'));
const guide = readFileSync(join(project, 'DEVELOPERS.md'), 'utf8');

/** The change that a section of the guide shows. */
function changeIn(section: string): string {
  const [, text = ''] = guide.split(`### ${section}\n`);
  const [, change] = /```diff\n([\s\S]*?)```/.exec(text.split('\n### ')[0] ?? '') ?? [];
  if (change === undefined) throw new Error(`the guide shows no change under "${section}"`);
  return change;
}

/** In a copy of the project. */
const run = (...words: readonly string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', 'src/cli.ts', ...words], { cwd: folder, encoding: 'utf8' });

beforeAll(() => {
  for (const each of ['package.json', 'tsconfig.json', 'src', 'templates', 'fixtures/demo'])
    cpSync(join(project, each), join(folder, each), { recursive: true });
  symlinkSync(join(project, 'node_modules'), join(folder, 'node_modules'));
  for (const section of ['An operation', 'A rule of a style'])
    execFileSync('git', ['apply', '-'], { cwd: folder, input: changeIn(section) });
});

afterAll(() => rmSync(folder, { recursive: true }));

describe('the guide for contributors', () => {
  it('shows changes that the compiler takes', () => {
    const compiler = join(folder, 'node_modules', 'typescript', 'bin', 'tsc');
    const { stdout } = spawnSync(process.execPath, [compiler, '--noEmit', '-p', folder], { encoding: 'utf8' });
    expect(stdout).toBe('');
  });

  it('adds an operation, and a route sheet has it', async () => {
    expect(run('packet', 'fixtures/demo/small.xlsx', '--out', 'made', '--only', 'routes').status).toBe(0);
    const text = (await readText(readFileSync(join(folder, 'made', 'packet.pdf')))).join('\n');
    expect(text).toContain('Fit the bumpers');
  });

  it('adds a rule of a style, and a check says it', () => {
    const { stdout, stderr } = run('check', 'fixtures/demo/kitchen.xlsx');
    expect(stdout + stderr).toContain('The glass of style Glass is 1/8 thick.');
  });
});
