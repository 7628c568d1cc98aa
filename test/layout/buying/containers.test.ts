import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boughtVolume, cansFor } from '../../../src/layout/buying/containers.ts';
import type { Volume } from '../../../src/units/mass.ts';
import { law } from '../../support/runs.ts';

const volume = (count: number): Volume => count as Volume;
const cans = (needed: number, sizes: readonly number[]) =>
  cansFor(volume(needed), sizes.map(volume)).map(each => [each.count, each.volume]);

// In pints: quarts of 2, gallons of 8, pails of 40.
describe('cans for what is needed', () => {
  it.each([
    { needed: 0, sizes: [2, 8, 40], buys: [], why: 'nothing for nothing' },
    { needed: 1, sizes: [2, 8, 40], buys: [[1, 2]], why: 'the smallest that holds it' },
    { needed: 5.5, sizes: [2, 8, 40], buys: [[3, 2]], why: 'three quarts are 1/2 pint too much, a gallon 2 1/2' },
    { needed: 7, sizes: [2, 8, 40], buys: [[1, 8]], why: 'as much as four quarts, in one can' },
    {
      needed: 9,
      sizes: [2, 8, 40],
      buys: [
        [1, 8],
        [1, 2],
      ],
      why: 'a gallon and a quart',
    },
    { needed: 39.5, sizes: [2, 8, 40], buys: [[1, 40]], why: 'one pail, not five gallons' },
    {
      needed: 41,
      sizes: [2, 8, 40],
      buys: [
        [1, 40],
        [1, 2],
      ],
      why: 'a pail and a quart',
    },
    { needed: 8, sizes: [2, 8, 40], buys: [[1, 8]], why: 'exactly one can is one can' },
    { needed: 3 * (8 / 3), sizes: [2, 8, 40], buys: [[1, 8]], why: 'and a float’s noise buys no second' },
    { needed: 5, sizes: [], buys: [], why: 'nobody sells it' },
  ])('$needed of $sizes: $buys, $why', ({ needed, sizes, buys }) => {
    expect(cans(needed, sizes)).toEqual(buys);
  });

  const sizes = fc.uniqueArray(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 3 });

  it('are enough, and no can could stay in the shop', () => {
    law([fc.integer({ min: 1, max: 60 }), sizes], (needed, sold) => {
      const bought = cansFor(volume(needed), sold.map(volume));
      const all = boughtVolume(bought);
      expect(all).toBeGreaterThanOrEqual(needed);
      for (const can of bought) expect(all - can.volume).toBeLessThan(needed);
    });
  });

  it('are the least, and then the fewest: tried against every other choice', () => {
    law([fc.integer({ min: 1, max: 60 }), sizes], (needed, sold) => {
      const bought = cansFor(volume(needed), sold.map(volume));
      const count = bought.reduce((sum, each) => sum + each.count, 0);
      expect([boughtVolume(bought), count]).toEqual(leastByTrial(needed, sold));
    });
  });
});

/** The least volume of at least `needed`, and the fewest cans that make it: the fewest cans to each sum, one can more at a time. */
function leastByTrial(needed: number, sizes: readonly number[]): readonly [volume: number, cans: number] {
  const fewest = [0];
  for (let sum = 1; ; sum += 1) {
    const options = sizes.flatMap(size => (fewest[sum - size] === undefined ? [] : [(fewest[sum - size] ?? 0) + 1]));
    if (options.length > 0) fewest[sum] = Math.min(...options);
    const cans = fewest[sum];
    if (sum >= needed && cans !== undefined) return [sum, cans];
  }
}
