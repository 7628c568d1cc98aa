import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { planCutting } from '../../../src/layout/cutting/index.ts';
import { loadSolver, type Solver } from '../../../src/layout/solver.ts';
import { aCuttingJob, aShop, aSize, aStock, type CuttingJob, someBlanks } from './a-job.ts';
import { judged } from './judged.ts';

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

const plan = (job: CuttingJob) => planCutting(job.blanks, job, solver);

// Worked by hand: nested through cuts with a 1/8 kerf, 1/4 trims.
describe('a plan that can be followed in the head', () => {
  it.each([
    // 48 − 2·1/4 = 47 1/2 = 3·15 3/4 + 2·1/8; 96 − 1/2 = 95 1/2 = 3·31 3/4 + 2·1/8: nine fill the sheet to the kerf
    { name: 'nine panels fill one sheet', sizes: ['9 * 31 3/4 x 15 3/4'], bins: 1 },
    // a tenth starts another sheet
    { name: 'a tenth takes a second', sizes: ['10 * 31 3/4 x 15 3/4'], bins: 2 },
    // 1/64 more and only two fit across and two along: 4 a sheet
    { name: 'a 64th too much', sizes: ['9 * 31 49/64 x 15 49/64'], bins: 3 },
  ])('$name', ({ sizes, bins }) => {
    const job = { stock: [aStock([aSize('96 x 48')])], shop: aShop(), blanks: someBlanks('ply', ...sizes) };
    expect(judged(job, solver)).toEqual([]);
    expect(plan(job).value[0]?.bins.length).toBe(bins);
  });
});

describe('any job', () => {
  it('can be sawn as it is printed', () => {
    fc.assert(
      fc.property(aCuttingJob, job => {
        expect(judged(job, solver)).toEqual([]);
      }),
      { endOnFailure: true, numRuns: Number(process.env['RUNS'] ?? 150) },
    );
  }, 240_000);
});
