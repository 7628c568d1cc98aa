import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ceilTo, floorTo, minus, mm, nm, plus, roundTo, share, times } from '../../src/units/length.ts';
import { length } from '../support/length.ts';
import { law } from '../support/runs.ts';

const aLength = fc.integer({ min: -5_000_000_000, max: 5_000_000_000 }).map(nm);
const anIncrement = fc.constantFrom(length('1/64'), length('1/32'), length('1/16'), mm(1), length('0.5 mm'));

describe('lengths', () => {
  it('add, take away and multiply exactly', () => {
    expect(plus(length('14 3/8'), length('1/64'), mm(1))).toBe(365_125_000 + 396_875 + 1_000_000);
    expect(minus(length('15 3/8'), length('2'), length('2'))).toBe(length('11 3/8'));
    expect(times(-2, length('3/8'))).toBe(-19_050_000);
    expect(Object.is(times(-1, nm(0)), 0)).toBe(true);
  });

  it('refuse a fraction of a nanometre', () => {
    expect(() => nm(0.5)).toThrow('0.5 is not a whole number of nanometres');
    expect(() => nm(2 ** 53)).toThrow();
    expect(() => share(mm(1), 0, mm(1))).toThrow();
  });

  it('share, and say what is left', () => {
    // a pair in a 30 in opening, 1/2 in over each side, 1/8 in between: (31 − 1/8) / 2 = 15 7/16
    expect(share(length('30 7/8'), 2, length('1/32'))).toEqual({ each: length('15 7/16'), rest: nm(0) });
    // thirds of 10 in on 1/32: 3 5/16 and 1/16 over
    expect(share(length('10'), 3, length('1/32'))).toEqual({ each: length('3 5/16'), rest: length('1/16') });
  });

  it('shares and their rest are the whole, and the rest is less than one more step for each', () => {
    law([aLength, fc.integer({ min: 1, max: 9 }), anIncrement], (total, count, increment) => {
      const { each, rest } = share(total, count, increment);
      expect(plus(times(count, each), rest)).toBe(total);
      expect(each / increment).toBe(Math.floor(each / increment));
      expect(rest).toBeGreaterThanOrEqual(0);
      expect(rest).toBeLessThan(count * increment);
    });
  });

  it('rounding lands on the increment, on the side that its name says', () => {
    law([aLength, anIncrement], (size, increment) => {
      const [down, up, near] = [floorTo(increment, size), ceilTo(increment, size), roundTo(increment, size)];
      for (const rounded of [down, up, near]) expect(Math.abs(rounded % increment)).toBe(0);
      expect(down).toBeLessThanOrEqual(size);
      expect(size - down).toBeLessThan(increment);
      expect(up).toBeGreaterThanOrEqual(size);
      expect(up - size).toBeLessThan(increment);
      expect(Math.abs(near - size) * 2).toBeLessThanOrEqual(increment);
    });
  });
});
