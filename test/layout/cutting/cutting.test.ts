import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { planCutting } from '../../../src/layout/cutting/index.ts';
import { loadSolver, type Solver } from '../../../src/layout/solver.ts';
import { verify } from '../verify.ts';
import { aCuttingJob, aShop, aSize, aStock, type CuttingJob, someBlanks } from './a-job.ts';

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

const plan = (job: CuttingJob) => planCutting(job.blanks, job, solver);

/** What the judge says, of the blanks that were not said to be left out. */
const judged = (job: CuttingJob): readonly string[] => {
  const { value, diagnostics } = plan(job);
  const tooLarge = new Set(diagnostics.flatMap(each => (each.code === 'piece-fits-no-stock' ? [each.facts.code] : [])));
  const short = diagnostics.reduce((sum, each) => sum + (each.code === 'stock-runs-out' ? each.facts.pieces : 0), 0);
  const cut = new Set(value.flatMap(each => each.bins.flatMap(bin => bin.pieces.map(piece => piece.blank as string))));
  const wanted = job.blanks.filter(blank => !tooLarge.has(blank.code));
  const missing = wanted.filter(blank => !cut.has(blank.code));
  const [stock] = job.stock;
  return [
    ...(missing.length === short ? [] : [`${missing.length} are missing, and ${short} are said to be`]),
    ...value.flatMap(each =>
      stock === undefined
        ? []
        : verify(each, short > 0 ? wanted.filter(blank => cut.has(blank.code)) : wanted, stock, job.shop),
    ),
  ];
};

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
    expect(judged(job)).toEqual([]);
    expect(plan(job).value[0]?.bins.length).toBe(bins);
  });
});

describe('any job', () => {
  it('can be sawn as it is printed', () => {
    fc.assert(
      fc.property(aCuttingJob, job => {
        expect(judged(job)).toEqual([]);
      }),
      { endOnFailure: true, numRuns: Number(process.env['RUNS'] ?? 150) },
    );
  }, 240_000);
});
