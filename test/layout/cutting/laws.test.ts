import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { planCutting } from '../../../src/layout/cutting/index.ts';
import type { CutPlan } from '../../../src/layout/shop-plan.ts';
import { loadSolver, type Solver } from '../../../src/layout/solver.ts';
import { nm } from '../../../src/units/length.ts';
import { lengthOf } from '../../../src/units/read-length.ts';
import { verify } from '../verify.ts';
import { aBlank, aCuttingJob, aShop, aSize, aStock, type CuttingJob, someBlanks } from './a-job.ts';

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

const RUNS = Number(process.env['RUNS'] ?? 20);
const plan = (job: CuttingJob) => planCutting(job.blanks, job, solver);

/** A number in the plan that is a length is twice as long in a shop of giants; counts and codes stay. */
const LENGTHS = /^(along|across|length|width|setting|kerf|thickness)$/;
const withoutMass = (plans: readonly CutPlan[], factor: number): unknown =>
  JSON.parse(
    JSON.stringify(plans, (key, value) =>
      key === 'mass' || key === 'waste' || key === 'defects'
        ? undefined
        : typeof value === 'number' && LENGTHS.test(key)
          ? value * factor
          : value,
    ),
  );

describe('what a shop would take for granted', () => {
  it('the order of the blanks makes no difference', () => {
    fc.assert(
      fc.property(aCuttingJob, fc.infiniteStream(fc.nat()), (job, keys) => {
        const shuffled = [...job.blanks]
          .map(blank => ({ blank, key: keys.next().value ?? 0 }))
          .sort((one, two) => one.key - two.key)
          .map(({ blank }) => blank);
        expect(plan({ ...job, blanks: shuffled })).toEqual(plan(job));
      }),
      { numRuns: RUNS, endOnFailure: true },
    );
  });

  it('a shop that is twice as large cuts the same plan', () => {
    fc.assert(
      fc.property(aCuttingJob, job => {
        const twice = (length: number) => nm(2 * length);
        const { saw, planning } = job.shop;
        const giant: CuttingJob = {
          stock: job.stock.map(stock => ({
            ...stock,
            thickness: twice(stock.thickness),
            sizes: stock.sizes.map(size => ({
              ...size,
              length: twice(size.length),
              width: twice(size.width),
              defects: size.defects.map(({ start, end }) => ({ start: twice(start), end: twice(end) })),
            })),
          })),
          shop: {
            ...job.shop,
            saw: {
              ...saw,
              kerf: twice(saw.kerf),
              sheetTrim: twice(saw.sheetTrim),
              boardEndTrim: twice(saw.boardEndTrim),
              boardEdgeLoss: twice(saw.boardEdgeLoss),
              ripCapacity: twice(saw.ripCapacity),
              crosscutCapacity: twice(saw.crosscutCapacity),
              leastSkim: twice(saw.leastSkim),
            },
            planning: {
              ...planning,
              remnantLength: twice(planning.remnantLength),
              remnantWidth: twice(planning.remnantWidth),
            },
          },
          blanks: job.blanks.map(blank => ({ ...blank, length: twice(blank.length), width: twice(blank.width) })),
        };
        expect(withoutMass(plan(giant).value, 1)).toEqual(withoutMass(plan(job).value, 2));
      }),
      { numRuns: RUNS, endOnFailure: true },
    );
  });

  // The search ends after so many looks, and more stock makes other looks: the noise that we allow it is one bin.
  it('one more sheet on hand never makes more than one more to buy, by area', () => {
    const areaOf = (each: { readonly length: number; readonly width: number }): number =>
      (each.length / 1e6) * (each.width / 1e6);
    fc.assert(
      fc.property(aCuttingJob, job => {
        const buyable = job.stock.map(stock => ({
          ...stock,
          sizes: stock.sizes.map(size => ({ ...size, buy: true })),
        }));
        const richer = buyable.map(stock => ({
          ...stock,
          sizes: stock.sizes.map((size, at) => (at === 0 ? { ...size, onHand: size.onHand + 1 } : size)),
        }));
        const bought = (stock: typeof buyable): number =>
          plan({ ...job, stock })
            .value.flatMap(each => each.bins.filter(bin => bin.source === 'buy'))
            .reduce((total, bin) => total + areaOf(bin), 0);
        const largest = Math.max(...buyable.flatMap(stock => stock.sizes.map(areaOf)));
        expect(bought(richer)).toBeLessThanOrEqual(bought(buyable) + largest * 1.000001);
      }),
      { numRuns: RUNS, endOnFailure: true },
    );
  });
});

describe('what is on hand', () => {
  it('is used before anything is bought', () => {
    // Each panel fits the offcut and the sheet alike.
    const stock = aStock([aSize('96 x 48'), aSize('40 x 30', { onHand: 2, buy: false })]);
    const blanks = someBlanks('ply', '2 * 30 x 20');
    const [cut] = planCutting(blanks, { stock: [stock], shop: aShop() }, solver).value;
    expect(cut?.bins.map(bin => bin.source)).toEqual(['on-hand', 'on-hand']);
  });

  it('is said to run out when nothing can be bought', () => {
    const stock = aStock([aSize('40 x 30', { onHand: 1, buy: false })]);
    const { diagnostics } = planCutting(someBlanks('ply', '3 * 30 x 20'), { stock: [stock], shop: aShop() }, solver);
    expect(diagnostics.map(({ code, severity, facts }) => [code, severity, facts])).toEqual([
      ['stock-runs-out', 'error', { stock: 'ply', pieces: 2 }],
    ]);
  });

  it('says of a piece that is too large for every sheet which one it is', () => {
    const stock = aStock([aSize('96 x 48')]);
    const { diagnostics } = planCutting(
      someBlanks('ply', '97 x 20', '30 x 20'),
      { stock: [stock], shop: aShop() },
      solver,
    );
    expect(diagnostics.map(({ code, severity, facts }) => [code, severity, facts])).toEqual([
      ['piece-fits-no-stock', 'error', { code: 'P1', stock: 'ply', length: lengthOf('97'), width: lengthOf('20') }],
    ]);
  });
});

// A board of 96 × 6 with 2 in off each end yields two strips of 2 1/2 in, and of each three lengths of 28 in.
describe('stiles that should look alike', () => {
  const boards = aStock([aSize('96 x 6')], { name: 'maple', kind: 'board' });
  const stiles = ['D1', 'D2', 'D3', 'D4', 'D5'].flatMap(door =>
    ['SL', 'SR'].map(mark => aBlank('maple', `${door}-${mark}`, lengthOf('28'), lengthOf('2 1/2'))),
  );

  it('come from one board where colour is matched, without a board more', () => {
    const job = { stock: [boards], shop: aShop({}, { colourMatch: 'stiles' as const }) };
    const [cut] = planCutting(stiles, job, solver).value;
    expect(cut === undefined ? ['nothing'] : verify(cut, stiles, boards, job.shop)).toEqual([]);
    expect(cut?.bins.length).toBe(2);
    const doors = cut?.bins.map(bin => bin.pieces.map(piece => piece.blank.split('-')[0] ?? '')) ?? [];
    for (const each of doors) for (const door of each) expect(each.filter(other => other === door).length).toBe(2);
  });
});

// Of the same board a door takes 28 + 16 in of each strip, with its kerfs 44 1/4: two doors come from one board.
describe('doors that should be of one colour', () => {
  const boards = aStock([aSize('96 x 6')], { name: 'maple', kind: 'board' });
  const parts = ['D1', 'D2', 'D3', 'D4', 'D5', 'D6'].flatMap(door => [
    ...['SL', 'SR'].map(mark => aBlank('maple', `${door}-${mark}`, lengthOf('28'), lengthOf('2 1/2'))),
    ...['RT', 'RB'].map(mark => aBlank('maple', `${door}-${mark}`, lengthOf('16'), lengthOf('2 1/2'))),
  ]);

  it('come whole from one board, without a board more', () => {
    const job = { stock: [boards], shop: aShop({}, { colourMatch: 'door' as const }) };
    const [cut] = planCutting(parts, job, solver).value;
    expect(cut === undefined ? ['nothing'] : verify(cut, parts, boards, job.shop)).toEqual([]);
    expect(cut?.bins.length).toBe(3);
    const doors = cut?.bins.map(bin => bin.pieces.map(piece => piece.blank.split('-')[0] ?? '')) ?? [];
    for (const each of doors) for (const door of each) expect(each.filter(other => other === door).length).toBe(4);
  });
});
