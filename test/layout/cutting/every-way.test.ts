import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weigh } from '../../../src/layout/cutting/bound.ts';
import { extent } from '../../../src/layout/cutting/cut-tree.ts';
import { demandOf } from '../../../src/layout/cutting/demand.ts';
import { everyWay, suitsEveryWay, type Tried, timesFor } from '../../../src/layout/cutting/every-way.ts';
import { binOf } from '../../../src/layout/cutting/fill.ts';
import { everyPiece, firstPlan } from '../../../src/layout/cutting/first-plan.ts';
import { problemOf } from '../../../src/layout/cutting/in-units.ts';
import { HAND_MOST, openHand, take, treeOfHand } from '../../../src/layout/cutting/least-rectangles.ts';
import { lyingIn } from '../../../src/layout/cutting/lying.ts';
import type { CuttingProblem } from '../../../src/layout/cutting/problem.ts';
import { LOOKS_A_SECOND, lookingAt } from '../../../src/layout/cutting/search.ts';
import { asJob, readInstances } from '../../published/cutting/instances.ts';
import { byEveryCut, cutUp, problemFor, type Size, someCuts } from './cut-up.ts';
import { expectSawable } from './sawable.ts';

const LOOKS = LOOKS_A_SECOND / 2;

/** From a first plan on, with looks that few problems need; undefined where it is not worth them. */
function tried(problem: CuttingProblem): Tried | undefined {
  const looking = lookingAt(problem, 1);
  const start = firstPlan({ ...looking, blinks: 0 }, everyPiece(problem), { fit: 'area', split: 'longer' }, undefined);
  const demand = demandOf(problem, []);
  if (!suitsEveryWay(looking, demand, start, LOOKS)) return undefined;
  return everyWay(looking, demand, start, weigh(problem, demand).shares(), 1, LOOKS);
}

const aSide = fc.integer({ min: 1, max: 7 });

describe('least rectangles', () => {
  it('of a set tell whether it comes out of a sheet, and how', () => {
    const found = { out: 0, not: 0 };
    const someSizes = fc.array(fc.tuple(aSide, aSide), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(someSizes, fc.integer({ min: 7, max: 9 }), fc.integer({ min: 7, max: 9 }), (sizes, length, width) => {
        const hand = openHand(length, width);
        // Once a piece is too many, those after it do not come out with it either.
        const taken = sizes.every((size, place) =>
          take(hand, place, [{ kind: place, turned: false, length: size[0], width: size[1] }]),
        );
        expect(taken).toBe(byEveryCut(sizes, length, width));
        found[taken ? 'out' : 'not'] += 1;
        if (!taken) return;
        const tree = treeOfHand(hand, sizes.length);
        if (tree === undefined) throw new Error('no tree');
        expect(extent(tree, 'crosscut')).toBeLessThanOrEqual(length);
        expect(extent(tree, 'rip')).toBeLessThanOrEqual(width);
      }),
      { numRuns: 300, seed: 1 },
    );
    expect(found.out).toBeGreaterThan(30);
    expect(found.not).toBeGreaterThan(30);
  });

  it('find each set of up to nine pieces that was cut from one sheet', () => {
    fc.assert(
      fc.property(someCuts(4, 8), cuts => {
        const problem = problemFor([90, 70], cutUp([90, 70], cuts), 'free');
        const lying = lyingIn(problem);
        const kinds = everyPiece(problem);
        const { length, width } = problem.bins[0]?.clear[0] ?? { length: 0, width: 0 };
        const hand = openHand(length, width);
        for (const [place, kind] of kinds.entries())
          expect(
            take(
              hand,
              place,
              lying.filter(lie => lie.kind === kind),
            ),
          ).toBe(true);
        const tree = treeOfHand(hand, kinds.length);
        if (tree === undefined) throw new Error('no tree');
        expectSawable(problem, [binOf(problem, 0, [tree])], kinds);
      }),
      { numRuns: 100, seed: 2 },
    );
  });
});

describe('a hand', () => {
  it('says when there are more pieces than it holds, so that nothing is proven by that', () => {
    const hand = openHand(100, 100);
    const fits = Array.from({ length: HAND_MOST + 1 }, (_, place) =>
      take(hand, place, [{ kind: 0, turned: false, length: 5, width: 5 }]),
    );
    expect(fits).toEqual([...Array.from({ length: HAND_MOST }, () => true), false]);
    expect(hand.isOver).toBe(true);
  });
});

describe('every way', () => {
  // Worked by hand: the first fills its sheet only as a wheel of four around one, which no through cut leaves whole.
  it.each<{ readonly sheet: Size; readonly sizes: readonly Size[]; readonly least: number }>([
    {
      sheet: [30, 30],
      sizes: [
        [20, 10],
        [10, 20],
        [20, 10],
        [10, 20],
        [10, 10],
      ],
      least: 2,
    },
    {
      sheet: [10, 10],
      sizes: [
        [6, 6],
        [6, 6],
        [4, 10],
        [4, 10],
        [6, 4],
        [6, 4],
      ],
      least: 2,
    },
    {
      sheet: [10, 10],
      sizes: [
        [6, 5],
        [5, 6],
        [6, 6],
      ],
      least: 3,
    },
  ])('of $sizes takes no fewer than $least', ({ sheet, sizes, least }) => {
    const every = tried(problemFor(sheet, sizes, 'free'));
    expect([every?.filling.bins.length, every?.isLeast]).toEqual([least, true]);
  });

  it('is never said to take more sheets than the pieces were cut from, and keeps all of them', () => {
    const seen = { certain: 0, fewer: 0 };
    fc.assert(
      fc.property(
        fc.array(someCuts(2, 4), { minLength: 2, maxLength: 4 }),
        fc.constantFrom(3 as const, 'free' as const),
        (sheets, stages) => {
          const sizes = sheets.flatMap(cuts => cutUp([90, 70], cuts));
          const problem = problemFor([90, 70], sizes, stages);
          const every = tried(problem);
          if (every === undefined) return;
          const { filling, isLeast } = every;
          expectSawable(problem, filling.bins, everyPiece(problem));
          if (isLeast && stages === 'free') expect(filling.bins.length).toBeLessThanOrEqual(sheets.length);
          if (isLeast) seen.certain += 1;
          if (isLeast && filling.bins.length < sheets.length) seen.fewer += 1;
        },
      ),
      { numRuns: 200, seed: 3 },
    );
    expect(seen.certain).toBeGreaterThan(100);
  });

  /**
   * S. Martello, D. Vigo, Management Science 44 (1998) 388-399, and J. O. Berkey, P. Y. Wang, JORS 38 (1987) 423-429;
   * the copies and the best published values of three stages are those of fixtures/published/cutting.
   */
  it('is at an end for nearly all published instances of 20 pieces, with no more sheets than are published', () => {
    const seen = { asked: 0, certain: 0 };
    const instances = readInstances('two-dimensional-class01-10.json').filter(({ name }) => name.includes('_n20_'));
    for (const instance of instances) {
      const { blanks, stock, shop } = asJob(instance, 'free', 1);
      const [sheet] = stock;
      if (sheet === undefined) throw new Error('no stock');
      const every = tried(problemOf(blanks, sheet, shop));
      if (every === undefined) continue;
      seen.asked += 1;
      const { filling, isLeast } = every;
      expect(filling.bins.length).toBeGreaterThanOrEqual(instance.lowerBound);
      if (!isLeast) continue;
      seen.certain += 1;
      expect(filling.bins.length).toBeLessThanOrEqual(instance.published ?? 0);
    }
    expect(seen.asked).toBeGreaterThan(60);
    expect(seen.certain / seen.asked).toBeGreaterThan(0.9);
  });

  // The sequence as its authors print it: reluctant doubling.
  it('runs for 1, 1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8 times as long', () => {
    const times = Array.from({ length: 15 }, (_, at) => timesFor(at + 1));
    expect(times).toEqual([1, 1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8]);
  });
});
