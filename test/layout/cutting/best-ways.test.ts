import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isKnown, knownFor } from '../../../src/layout/cutting/beginnings.ts';
import { forget, placeOf, putInOrder, sift, type Ways, waysFor } from '../../../src/layout/cutting/best-ways.ts';

/** Notes values as whoever goes on with beginnings does; what each stands for is told by the rank at which it came. */
function noteAll(ways: Ways, values: readonly number[]): void {
  for (const [rank, value] of values.entries()) {
    if (value >= (ways.limit[0] ?? 0)) continue;
    ways.value[ways.count] = value;
    ways.from[ways.count] = rank;
    ways.lie[ways.count] = 2 * rank;
    ways.where[ways.count] = rank % 4;
    ways.count += 1;
    if (ways.count === ways.value.length) sift(ways);
  }
}

const inOrder = (ways: Ways): readonly number[] => {
  putInOrder(ways);
  return Array.from({ length: ways.count }, (_, rank) => placeOf(ways, rank));
};

describe('the best ways', () => {
  // Few different values, so that many are the same, or all.
  const values = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 80 });

  it('are those that sorting all of them puts first, each with what it stands for', () => {
    const ways = waysFor(6);
    fc.assert(
      fc.property(values, some => {
        forget(ways);
        noteAll(ways, some);
        const places = inOrder(ways);
        expect(places.map(place => ways.value[place])).toEqual([...some].sort((one, two) => one - two).slice(0, 6));
        expect(new Set(places).size).toBe(places.length);
        for (const place of places) {
          const rank = ways.from[place] ?? -1;
          expect(some[rank]).toBe(ways.value[place]);
          expect([ways.lie[place], ways.where[place]]).toEqual([2 * rank, rank % 4]);
        }
      }),
      { numRuns: 300, seed: 1 },
    );
  });
});

describe('beginnings', () => {
  it('are known in the step in which they came up, and told apart by pieces and room', () => {
    const known = knownFor(20);
    const marks = fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 })), { maxLength: 20 });
    fc.assert(
      fc.property(marks, some => {
        known.step += 1;
        const before = new Set<string>();
        for (const [mark, front] of some) {
          expect(isKnown(known, mark, front)).toBe(before.has(`${mark} ${front}`));
          before.add(`${mark} ${front}`);
        }
      }),
      { numRuns: 200, seed: 1 },
    );
  });
});
