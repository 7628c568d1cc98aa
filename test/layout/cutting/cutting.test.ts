import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { planCutting } from '../../../src/layout/cutting/index.ts';
import { loadSolver, type Solver } from '../../../src/layout/solver.ts';
import { lengthOf } from '../../../src/units/read-length.ts';
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

// Worked by hand: 48 − 2·1/4 = 47 1/2 = 2·23 11/16 + 1/8, and no two lengths are the same. Cut as wide as their pieces,
// the strips want a rip at 23 11/16 and one at 23; the narrow ones can as well fall at 23 11/16 and be trimmed later.
it('cuts narrow strips of a sheet at a setting that is made for wider ones', () => {
  const job = {
    stock: [aStock([aSize('96 x 48')])],
    shop: aShop({ stages: 3 }),
    blanks: someBlanks('ply', '2 * 60 x 23 11/16', '2 * 35 3/8 x 23 11/16', '2 * 50 x 23', '2 * 45 3/8 x 23'),
  };
  expect(judged(job, solver)).toEqual([]);
  const bins = plan(job).value[0]?.bins ?? [];
  const ofSheets = bins.flatMap(bin =>
    bin.cuts.filter(cut => !cut.trim && cut.direction === 'rip' && cut.from.length > lengthOf('90')),
  );
  expect(bins.length).toBe(2);
  expect(new Set(ofSheets.map(cut => cut.setting))).toEqual(new Set([lengthOf('23 11/16')]));
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
