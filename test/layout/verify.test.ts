import { beforeAll, describe, expect, it } from 'vitest';
import { planCutting } from '../../src/layout/cutting/index.ts';
import type { CutBin, CutPlan } from '../../src/layout/shop-plan.ts';
import { loadSolver } from '../../src/layout/solver.ts';
import { nm } from '../../src/units/length.ts';
import { aShop, aSize, aStock, someBlanks } from './cutting/a-job.ts';
import { verify } from './verify.ts';

// A judge that cannot say no proves nothing: each row spoils a good plan in one way and names what must be said.
const stock = aStock([aSize('96 x 48', { onHand: 1 })]);
const shop = aShop();
const blanks = someBlanks('ply', '4 * 30 x 15', '12 x 9', '20 x 6');
let good: CutPlan;

beforeAll(async () => {
  const [plan] = planCutting(blanks, { stock: [stock], shop }, await loadSolver()).value;
  if (plan === undefined) throw new Error('nothing was planned');
  good = plan;
});

const withBin = (change: (bin: CutBin) => Partial<CutBin>): CutPlan => ({
  ...good,
  bins: good.bins.map((bin, index) => (index === 0 ? { ...bin, ...change(bin) } : bin)),
});

describe('the judge of cut plans', () => {
  it('finds nothing wrong with a good one', () => {
    expect(verify(good, blanks, stock, shop)).toEqual([]);
  });

  it.each<readonly [string, (plan: CutPlan) => CutPlan, string]>([
    [
      'a piece is moved',
      () =>
        withBin(bin => ({ pieces: bin.pieces.map((piece, at) => (at === 0 ? { ...piece, along: nm(0) } : piece)) })),
      'is listed and never fell off',
    ],
    ['a piece is lost', () => withBin(bin => ({ pieces: bin.pieces.slice(1) })), 'comes out 0 times'],
    [
      'a piece comes twice',
      () => withBin(bin => ({ pieces: [...bin.pieces, ...bin.pieces.slice(0, 1)] })),
      'comes out 2 times',
    ],
    [
      'a piece is turned',
      () => withBin(bin => ({ pieces: bin.pieces.map(piece => ({ ...piece, turned: true })) })),
      'lies across the grain',
    ],
    ['a cut is left out', () => withBin(bin => ({ cuts: bin.cuts.slice(1) })), 'which is not there'],
    ['the last cut is left out', () => withBin(bin => ({ cuts: bin.cuts.slice(0, -1) })), 'is never picked up'],
    [
      'a setting is wrong',
      () =>
        withBin(bin => ({
          cuts: bin.cuts.map((cut, at) => (at === 3 ? { ...cut, setting: nm(cut.setting + 1) } : cut)),
        })),
      'and drops',
    ],
    ['the blade is thicker', plan => ({ ...plan, kerf: nm(plan.kerf + 1) }), 'is no kerf wide'],
    ['the sheet is shorter', () => withBin(() => ({ length: nm(500_000_000) })), 'is in the trim'],
    [
      'a sheet is used that is not there',
      () => withBin(() => ({ length: nm(3_000_000_000) })),
      'is not on hand any more',
    ],
    ['the bound is a boast', plan => ({ ...plan, bound: { bins: 9, by: 'area' } }), 'are fewer than'],
    ['settings are miscounted', plan => ({ ...plan, settings: plan.settings - 1 }), 'settings are said to be'],
    [
      'a defect lies in a piece',
      () =>
        withBin(bin => ({
          defects: [{ along: nm(100_000_000), across: nm(0), length: nm(9), width: bin.width }],
        })),
      'has a defect in it',
    ],
    ['waste is forgotten', () => withBin(() => ({ waste: [] })), 'is not listed'],
  ])('says so when %s', (_, spoil, sentence) => {
    expect(verify(spoil(good), blanks, stock, shop).join('\n')).toContain(sentence);
  });

  it.each([
    ['fence', aShop({ ripCapacity: nm(1) }), 'past'],
    ['stages', aShop({ stages: 2 }), 'changes direction the 3th time'],
  ])('holds the plan against the %s of the saw', (_, other, sentence) => {
    expect(verify(good, blanks, stock, other).join('\n')).toContain(sentence);
  });
});
