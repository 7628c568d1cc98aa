import { execFileSync } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { newWorkbook } from '../../src/import/blank-workbook.ts';
import { importJob } from '../../src/import/index.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';
import { fill } from '../support/fill-workbook.ts';

/** Fills in the blank workbooks, lets LibreOffice open and save them, and compares the jobs. */
export async function sameByLibreOffice(): Promise<{
  readonly tried: number;
  readonly lost: readonly string[];
  readonly more: string;
}> {
  const lost: string[] = [];
  for (const units of ['inch', 'mm'] as const) {
    const mine = await fill(await newWorkbook(units), units);
    const theirs = await savedByLibreOffice(mine);
    if ((await jobText(mine)) !== (await jobText(theirs))) lost.push(`the workbook in ${units} is another job`);
  }
  return { tried: 2, lost, more: 'opened and saved by LibreOffice' };
}

async function jobText(bytes: Uint8Array): Promise<string> {
  const { value } = await readXlsx(bytes, 'new.xlsx');
  return JSON.stringify(importJob(value ?? { file: '', sheets: [] }).value, (key, part) =>
    key === 'from' ? undefined : part,
  );
}

/** A workbook as LibreOffice saves it after opening it. Throws where there is no LibreOffice. */
async function savedByLibreOffice(bytes: Uint8Array): Promise<Uint8Array> {
  const folder = await mkdtemp(join(tmpdir(), 'saved-'));
  try {
    const [from, to] = [join(folder, 'book.xlsx'), join(folder, 'out')];
    await writeFile(from, bytes);
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    execFileSync('soffice', [profile, '--headless', '--convert-to', 'xlsx', '--outdir', to, from], {
      stdio: 'ignore',
      timeout: 120_000,
    });
    return await readFile(join(to, 'book.xlsx'));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
