import { describe, expect, it } from 'vitest';
import { planBlanks } from '../../src/layout/blanks/index.ts';
import type { Blank } from '../../src/layout/shop-plan.ts';
import { workOf } from '../../src/layout/work.ts';
import type { Shop } from '../../src/trade/shop.ts';
import { aJob, aShop } from '../support/a-job.ts';
import { length } from '../support/length.ts';
import { doorSetOf, glassDoor, plainDoor, RAIL, type Sizes, STILE, solidDoor } from './a-door-set.ts';
import { print } from './print-plan.ts';

const SHOP = aShop();

// Final length + 1 in, final width + 1/4 in; what comes off a sheet is of final size. Common practice.
describe('blanks', () => {
  it('are rough where they come from a board, and final where they come from a sheet', () => {
    expect(blanksOf([plainDoor()], 'part')).toEqual([
      'B1.1-PANEL4: 27 11/16 × 12 1/16 of Maple ply 1/2',
      'B1.1-RAIL-BOTTOM3: 13 1/8 × 2 1/4 of Maple 4/4',
      'B1.1-RAIL-TOP2: 13 1/8 × 2 1/4 of Maple 4/4',
      'B1.1-STILE-LEFT0: 32 × 2 1/4 of Maple 4/4',
      'B1.1-STILE-RIGHT1: 32 × 2 1/4 of Maple 4/4',
    ]);
  });

  it('are the strips of a panel as the calculation has them', () => {
    expect(blanksOf([solidDoor()], 'strip')).toEqual([
      'W3.1-PANEL4.1: 28 3/16 × 3 1/2 of Cherry 4/4',
      'W3.1-PANEL4.2: 28 3/16 × 3 1/2 of Cherry 4/4',
      'W3.1-PANEL4.3: 28 3/16 × 3 1/2 of Cherry 4/4',
      'W3.1-PANEL4.4: 28 3/16 × 3 1/2 of Cherry 4/4',
    ]);
  });

  it('are nothing for glass', () => {
    expect(blanksOf([glassDoor()], 'part').join()).not.toContain('GLASS');
  });
});

// Nothing under 12 in goes over the jointer or through the planer: short parts come two or three from one blank.
describe('short parts', () => {
  const rails = (...lengths: readonly string[]): Sizes =>
    plainDoor({ parts: lengths.map(each => ['rail-top', each, '2', RAIL] as const) });
  it.each<[string, readonly string[], readonly string[]]>([
    ['11 in is 12 rough: alone', ['11', '11'], ['B1.1-RAIL-TOP0: 12 × 2 1/4', 'B1.1-RAIL-TOP1: 12 × 2 1/4']],
    // 2 · 8 11/16 + 1/8 + 1.
    ['two of 8 11/16', ['8 11/16', '8 11/16'], ['B1.1-RAIL-TOP0+RAIL-TOP1: 18 1/2 × 2 1/4']],
    // 3 · 3 5/8 + 2/8 + 1 = 12 1/8, and two would be 8 3/8.
    ['three of 3 5/8', ['3 5/8', '3 5/8', '3 5/8'], ['B1.1-RAIL-TOP0+RAIL-TOP1+RAIL-TOP2: 12 1/8 × 2 1/4']],
    [
      'the odd one has 12 in to itself',
      ['8', '8', '8'],
      ['B1.1-RAIL-TOP0+RAIL-TOP1: 17 1/8 × 2 1/4', 'B1.1-RAIL-TOP2: 12 × 2 1/4'],
    ],
    ['other lengths do not share', ['8', '9'], ['B1.1-RAIL-TOP0: 12 × 2 1/4', 'B1.1-RAIL-TOP1: 12 × 2 1/4']],
  ])('%s', (_why, lengths, expected) => {
    expect(blanksOf([rails(...lengths)], 'part').map(line => line.split(' of ')[0])).toEqual(expected);
  });
});

it('names a blank for parts of two doors by both', () => {
  const rail = (code: string) => plainDoor({ code, parts: [['rail-top', '8', '2', RAIL]] });
  expect(blanksOf([rail('B1.1'), rail('B2.1')], 'part').join()).toMatch(/^B1.1-RAIL-TOP0\+B2.1-RAIL-TOP0: /);
});

// 4 · (3/8 + 1/8) + 2 in to hold = 4 in.
describe('glass stops', () => {
  it('come four from a blank that is wide enough to hold, one length at a time', () => {
    const stops = (long: string, count: number) =>
      Array.from({ length: count }, () => ['glass-stop', long, '3/8', { kind: 'glass-stop' }] as const);
    expect(blanksOf([glassDoor({ parts: [...stops('28', 5), ...stops('9', 2)] })], 'stops')).toEqual([
      'STOPS-1: 29 × 4 of Maple 4/4',
      'STOPS-2: 29 × 2 1/2 of Maple 4/4',
      // 2 · 1/2 + 2; 9 + 1 would be too short for the jointer.
      'STOPS-3: 12 × 3 of Maple 4/4',
    ]);
  });
});

describe('test pieces', () => {
  it('are two for each bit and one for the rabbet, 16 in long, of the width that is run', () => {
    expect(blanksOf([plainDoor()], 'test')).toEqual([
      'TEST-C1.1: 17 × 2 1/4 of Maple 4/4',
      'TEST-C1.2: 17 × 2 1/4 of Maple 4/4',
      'TEST-G1.1: 17 × 2 1/4 of Maple 4/4',
      'TEST-G1.2: 17 × 2 1/4 of Maple 4/4',
      'TEST-R1.1: 16 × 4 of Maple ply 1/2',
    ]);
  });

  it('are a piece of strip where the panel is solid', () => {
    expect(blanksOf([solidDoor()], 'test')).toContain('TEST-R1.1: 17 × 3 1/2 of Cherry 4/4');
  });
});

// One for twenty, at least one, as long and as wide as the largest of its twenty: common practice.
describe('spares', () => {
  const stiles = (count: number, long: string, wide = '2'): Sizes =>
    plainDoor({
      code: `${long}${wide}`,
      parts: Array.from({ length: count }, () => ['stile-left', long, wide, STILE] as const),
    });
  it.each<[string, readonly Sizes[], readonly string[]]>([
    ['one at least', [stiles(2, '31')], ['32 × 2 1/4']],
    ['one for twenty', [stiles(20, '31')], ['32 × 2 1/4']],
    ['two for twenty-one', [stiles(21, '31')], ['32 × 2 1/4', '32 × 2 1/4']],
    [
      'long ones have a long one, short ones a short one',
      [stiles(4, '85'), stiles(16, '40'), stiles(20, '31')],
      ['86 × 2 1/4', '32 × 2 1/4'],
    ],
    ['as wide as the widest that it stands in for', [stiles(2, '40', '2'), stiles(2, '31', '3')], ['41 × 3 1/4']],
  ])('%s', (_why, doors, expected) => {
    expect(blanksOf(doors, 'spare').map(line => line.split(': ')[1]?.split(' of ')[0])).toEqual(expected);
  });

  it('are separate where the groove is another: it is cut before anybody knows what they become', () => {
    const deep = plainDoor({ code: 'B2.1', joint: { grooveDepth: length('1/2') } });
    expect(blanksOf([plainDoor(), deep], 'spare')).toHaveLength(4);
  });
});

const blanksOf = (doors: readonly Sizes[], purpose: Blank['purpose'], shop: Shop = SHOP): readonly string[] =>
  planBlanks(workOf(aJob({ shop }), doorSetOf(...doors)))
    .blanks.filter(blank => blank.purpose === purpose)
    .map(({ code, length: long, width, stock }) => `${code}: ${print(long)} × ${print(width)} of ${stock}`)
    .sort();
