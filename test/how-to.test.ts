import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { applyPatch, parsePatch } from 'diff';
import ExcelJS from 'exceljs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readText } from './support/pdf.ts';

const project = new URL('..', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'how-to-'));
const guide = readFileSync(join(project, 'DEVELOPERS.md'), 'utf8');

/** What a section of the guide shows: a change (`diff`), or commands (`sh`). */
function shownIn(section: string, kind: 'diff' | 'sh'): string {
  const [, text = ''] = guide.split(`### ${section}\n`);
  const [, shown] = new RegExp(`\`\`\`${kind}\\n([\\s\\S]*?)\`\`\``).exec(text.split('\n### ')[0] ?? '') ?? [];
  if (shown === undefined) throw new Error(`the guide shows no ${kind} under "${section}"`);
  return shown;
}

/** Changes the copy of the project as a diff says; every part of it must fit. */
function change(diff: string): void {
  for (const patch of parsePatch(diff)) {
    const [before, after] = [patch.oldFileName, patch.newFileName].map(name => name?.replace(/^[ab]\//, '') ?? '');
    const text = before === '/dev/null' ? '' : readFileSync(join(folder, before ?? ''), 'utf8');
    const changed = applyPatch(text, patch);
    if (changed === false) throw new Error(`the change of ${before} does not fit`);
    writeFileSync(join(folder, after ?? ''), changed);
  }
}

/** The program that is built from a copy of the project. */
const run = (...words: readonly string[]) =>
  spawnSync(process.execPath, ['dist/cli.js', ...words], { cwd: folder, encoding: 'utf8' });

beforeAll(() => {
  for (const each of ['package.json', 'tsconfig.json', '.build.js', 'src', 'templates', 'fixtures/demo'])
    cpSync(join(project, each), join(folder, each), { recursive: true });
  symlinkSync(join(project, 'node_modules'), join(folder, 'node_modules'));
  for (const section of ['An operation', 'A rule of a style', 'A sheet']) change(shownIn(section, 'diff'));
  // Last, so that the words it copies are those of all that was added.
  execFileSync('sh', ['-e'], { cwd: folder, input: shownIn('A language', 'sh') });
  change(shownIn('A language', 'diff'));
  execFileSync(process.execPath, ['.build.js'], { cwd: folder });
});

afterAll(() => rmSync(folder, { recursive: true }));

describe('the guide for contributors', () => {
  it('shows changes that the compiler takes', { timeout: 240_000 }, () => {
    const compiler = join(folder, 'node_modules', 'typescript-7', 'bin', 'tsc');
    const { stdout } = spawnSync(process.execPath, [compiler, '--noEmit', '-p', folder], { encoding: 'utf8' });
    expect(stdout).toBe('');
  });

  it('adds an operation and a sheet, and the packet has them', async () => {
    const { status } = run(
      'packet',
      'fixtures/demo/small.xlsx',
      '--out',
      'made',
      '--only',
      'cover',
      'routes',
      'receipt',
    );
    expect(status).toBe(0);
    const text = (await readText(readFileSync(join(folder, 'made', 'packet.pdf')))).join('\n');
    for (const words of ['Fit the bumpers', 'to be signed when the doors hang', 'Received, date'])
      expect(text).toContain(words);
  });

  it('adds a rule of a style, and a check says it', () => {
    const { stdout, stderr } = run('check', 'fixtures/demo/kitchen.xlsx');
    expect(stdout + stderr).toContain('The glass of style Glass is 1/8 thick.');
  });

  it('adds a language, and a job may ask for it', async () => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.readFile(join(folder, 'fixtures/demo/small.xlsx'));
    book.getWorksheet('Job')?.addRow(['Language', 'français']);
    await book.xlsx.writeFile(join(folder, 'placard.xlsx'));
    expect(run('packet', 'placard.xlsx', '--out', 'placard', '--only', 'cover').status).toBe(0);
    const { job } = JSON.parse(readFileSync(join(folder, 'placard', 'manifest.json'), 'utf8'));
    expect(job.language).toBe('fr');
  });
});
