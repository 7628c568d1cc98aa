import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { bestCuts } from '../../../src/layout/cutting/bar-pricing.ts';
import { planCutting } from '../../../src/layout/cutting/index.ts';
import { loadSolver, type Solver } from '../../../src/layout/solver.ts';
import { lengthOf } from '../../../src/units/read-length.ts';
import { aCuttingJob, aShop, aSize, aStock, someBlanks } from './a-job.ts';
import { judged } from './judged.ts';

describe('the best ways to cut a bar', () => {
  // By hand: of a bar of 10.
  it.each([
    ['one that fills it', [6, 4], [0.6, 0.4], [1, 1], 1, []],
    ['worth more than the bar', [6, 4, 3], [0.6, 0.5, 0.3], [1, 1, 1], 1.1, [{ 0: 1, 1: 1 }]],
    ['as many as there are and no more', [2], [0.3], [4], 1.2, [{ 0: 4 }]],
    ['as many as fit', [3], [0.4], [9], 1.2, [{ 0: 3 }]],
    ['what is too long', [11], [5], [1], 0, []],
    ['what nobody asks for', [5], [5], [0], 0, []],
    ['then those without the first', [5, 6, 4], [1, 0.6, 0.6], [2, 1, 1], 2, [{ 0: 2 }, { 1: 1, 2: 1 }]],
  ] as const)('%s', (_, sizes, prices, limits, most, cuts) => {
    const found = bestCuts({ whole: 10, sizes }, prices, limits);
    expect(found.most).toBeCloseTo(most, 12);
    expect(found.cuts.map(each => Object.fromEntries(each))).toEqual(cuts);
  });

  it('are worth as much as the best of all ways', () => {
    const item = fc.record({ size: fc.integer({ min: 1, max: 30 }), price: fc.nat(20), limit: fc.nat(3) });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.array(item, { minLength: 1, maxLength: 5 }), (whole, items) => {
        const best = (at: number, room: number): number => {
          const each = items[at];
          if (each === undefined) return 0;
          const counts = Array.from({ length: each.limit + 1 }, (_, count) => count);
          const fitting = counts.filter(count => count * each.size <= room);
          return Math.max(...fitting.map(count => count * each.price + best(at + 1, room - count * each.size)));
        };
        const [sizes, prices, limits] = (['size', 'price', 'limit'] as const).map(key => items.map(each => each[key]));
        const { most, cuts } = bestCuts({ whole, sizes: sizes ?? [] }, prices ?? [], limits ?? []);
        expect(most).toBe(best(0, whole));
        for (const cut of cuts) {
          for (const [kind, count] of cut) expect(count).toBeLessThanOrEqual(limits?.[kind] ?? 0);
          const length = [...cut].reduce((sum, [kind, count]) => sum + count * (sizes?.[kind] ?? 0), 0);
          expect(length).toBeLessThanOrEqual(whole);
        }
        const kinds = cuts.flatMap(cut => [...cut.keys()]);
        expect(new Set(kinds).size).toBe(kinds.length);
      }),
    );
  });
});

describe('pieces that take the whole width of a board', () => {
  let solver: Solver;
  beforeAll(async () => {
    solver = await loadSolver();
  });

  // By hand: with a kerf of 1/8 and no trims, a board of 96 gives 40 + 55 3/4 (95 7/8 with the cut), and not 40 + 56.
  it.each([
    ['crosscut', '96 x 6', ['6 * 55 3/4 x 4', '6 * 40 x 4'], 6],
    ['crosscut, an eighth too long', '96 x 6', ['6 * 56 x 4', '6 * 40 x 4'], 9],
    ['ripped', '6 x 96', ['6 * 4 x 55 3/4', '6 * 4 x 40'], 6],
  ] as const)('%s: no plan can do with fewer', (_, size, pieces, bins) => {
    const untrimmed = aShop({ kerf: lengthOf('1/8'), sheetTrim: lengthOf('0'), stages: 'free' });
    const job = { stock: [aStock([aSize(size)])], shop: untrimmed };
    const [plan] = planCutting(someBlanks('ply', ...pieces), job, solver).value;
    expect({ bins: plan?.bins.length, bound: plan?.bound.bins }).toEqual({ bins, bound: bins });
  });

  it('can be sawn as it is printed, whatever the saw', () => {
    // Time for the linear program; the widths of a strip, of which no two fit beside each other.
    const inBars = aCuttingJob.map(job => ({
      shop: { ...job.shop, planning: { ...job.shop.planning, seconds: 0.3 } },
      stock: job.stock.map(stock => ({ ...stock, grain: 'length' as const, sizes: [aSize('97 x 6')] })),
      blanks: job.blanks.map(blank => ({ ...blank, width: lengthOf('4 1/2') })),
    }));
    fc.assert(
      fc.property(inBars, job => {
        expect(judged(job, solver)).toEqual([]);
      }),
      { endOnFailure: true, numRuns: Number(process.env['RUNS'] ?? 40) },
    );
  });
});
