import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { importJob } from '../../src/import/index.ts';
import type { Job } from '../../src/import/job.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';

const demo = async (name: string): Promise<Job> => {
  const read = await readXlsx(await readFile(new URL(`../../fixtures/demo/${name}.xlsx`, import.meta.url)), name);
  expect(read.diagnostics).toEqual([]);
  const job = importJob(read.value ?? { file: name, sheets: [] });
  expect(job.diagnostics).toEqual([]);
  return job.value;
};

describe('the demo workbooks', () => {
  it('small has four openings and takes everything else by default', async () => {
    const job = await demo('small');
    expect(job.openings.map(({ cabinet, label }) => `${cabinet}/${label}`)).toEqual(['L1/A', 'L1/B', 'L2/A', 'L3/A']);
    expect(job.styles).toHaveLength(1);
    expect(job.stock.map(({ kind }) => kind)).toEqual(['board', 'sheet']);
  });

  it('kitchen has more than thirty openings of every kind', async () => {
    const job = await demo('kitchen');
    expect(job.openings.reduce((total, { quantity }) => total + quantity, 0)).toBeGreaterThanOrEqual(30);
    expect(new Set(job.openings.map(({ hanging }) => hanging.kind))).toEqual(new Set(['single', 'pair', 'fixed']));
    expect(new Set(job.openings.map(({ mounting }) => mounting.kind))).toEqual(new Set(['overlay', 'inset']));
    expect(new Set(job.openings.map(({ kind }) => kind)).size).toBe(4);
    expect(job.openings.some(({ grid }) => grid.panelsHigh === 3)).toBe(true);
    const infills = job.styles.map(style => (style.build === 'slab' ? 'slab' : style.infill.kind));
    expect(infills).toEqual(['plywood', 'solid', 'glass', 'slab']);
  });
});
