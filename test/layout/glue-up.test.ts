import { describe, expect, it } from 'vitest';
import type { Sight } from '../../src/calculate/door-set.ts';
import type { PartCode } from '../../src/codes/codes.ts';
import { clampsFor, planBatches } from '../../src/layout/glue-up.ts';
import type { Shop } from '../../src/trade/shop.ts';
import { ZERO } from '../../src/units/length.ts';
import { aShop } from '../support/a-job.ts';
import { length } from '../support/length.ts';
import { doorSetOf, plainDoor, slabDoor } from './a-door-set.ts';

const SHOP = aShop();

// One clamp across each rail line and two along the stiles of a door over 40 in: common practice.
describe('clamps for a door', () => {
  it.each([
    // height  rows  columns  clamps  why this row
    ['31', 1, 1, 2], //               top and bottom
    ['31', 2, 1, 3], //               one middle rail
    ['31', 2, 2, 3], //               and it is one line, however many panels wide
    ['40', 1, 1, 2], //               not over 40
    ['40 1/64', 1, 1, 4], //          two more along the stiles
    ['85', 3, 1, 6], //               four lines and two
  ])('%s high, %i × %i panels: %i', (height, rows, columns, clamps) => {
    expect(clampsFor(doorOf('B1.1', height, rows, columns), SHOP)).toBe(clamps);
  });
});

describe('batches', () => {
  it('are filled with the doors that take most clamps first, and smaller ones fill what is left', () => {
    // Twelve clamps: 6 + 4 + 2, then 2 and 2.
    const doors = [
      doorOf('B1.1', '31', 1, 1),
      doorOf('B2.1', '30', 1, 1),
      doorOf('P1.1', '85', 3, 1),
      doorOf('P2.1', '50', 1, 1),
      doorOf('B3.1', '29', 1, 1),
    ];
    expect(planBatches(doors, SHOP)).toEqual([
      { number: 1, doors: ['P1.1', 'P2.1', 'B1.1'], clamps: 12 },
      { number: 2, doors: ['B2.1', 'B3.1'], clamps: 4 },
    ]);
  });

  it('leave a door alone that takes more clamps than there are', () => {
    const doors = [doorOf('P1.1', '85', 3, 1), doorOf('B1.1', '31', 1, 1)];
    expect(planBatches(doors, withClamps(4)).map(({ doors: held, clamps }) => [held, clamps])).toEqual([
      [['P1.1'], 6],
      [['B1.1'], 2],
    ]);
  });

  it('hold no slabs', () => {
    expect(planBatches(doorSetOf(slabDoor()).doors, SHOP)).toEqual([]);
  });
});

const withClamps = (clamps: number): Shop => ({ ...SHOP, gluing: { ...SHOP.gluing, clamps } });

function doorOf(code: string, height: string, rows: number, columns: number) {
  const sights = Array.from({ length: rows * columns }, (_, at): Sight => {
    const place = { left: ZERO, bottom: ZERO, width: length('8'), height: length('8') };
    return { ...place, row: Math.floor(at / columns) + 1, column: (at % columns) + 1, infill: 'P' as PartCode };
  });
  const [door] = doorSetOf(plainDoor({ code, height, changes: { sights } })).doors;
  if (door === undefined) throw new Error('one door');
  return door;
}
