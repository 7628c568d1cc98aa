import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { importJob } from '../../src/import/index.ts';
import type { Job } from '../../src/import/job.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';

/** A job without the places that its records came from. */
async function jobIn(path: string): Promise<unknown> {
  const { value, diagnostics } = await readXlsx(
    await readFile(new URL(`../../fixtures/${path}`, import.meta.url)),
    path,
  );
  const job = importJob(value ?? { file: path, sheets: [] });
  expect([...diagnostics, ...job.diagnostics]).toEqual([]);
  return withoutPlaces(job.value);
}

const withoutPlaces = (job: Job): unknown =>
  JSON.parse(JSON.stringify(job, (key, value) => (key === 'from' ? undefined : value)));

describe('one workbook by other writers is one and the same job', () => {
  it.each(['libreoffice', 'sheetjs', 'openpyxl', 'xlsxwriter'])('%s', async writer => {
    expect(await jobIn(`writers/${writer}.xlsx`)).toEqual(await jobIn('demo/small.xlsx'));
  });
});
