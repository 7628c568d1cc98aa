import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { worthOf } from '../../../src/layout/cutting/column-generation.ts';
import { openDemandPricers } from '../../../src/layout/cutting/demand-pricing.ts';
import { binOf } from '../../../src/layout/cutting/fill.ts';
import { freeStretchOf, priceFree } from '../../../src/layout/cutting/free-pricing.ts';
import { problemOf } from '../../../src/layout/cutting/in-units.ts';
import { countsOf } from '../../../src/layout/cutting/patterns.ts';
import type { CuttingProblem } from '../../../src/layout/cutting/problem.ts';
import { piecesIn } from '../../../src/layout/cutting/rows.ts';
import { asJob } from '../../published/cutting/instances.ts';

type Piece = readonly [length: number, width: number, copies: number];

/** A sheet of 10 by 10 that a blade without thickness cuts. */
function aProblem(pieces: readonly Piece[], stages: number): CuttingProblem {
  const instance = {
    name: 'by hand',
    core: false,
    bin: [10, 10] as const,
    pieces,
    published: undefined,
    lowerBound: 0,
  };
  const { blanks, stock, shop } = asJob(instance, 'free', 1);
  const [only] = stock;
  if (only === undefined) throw new Error('no stock');
  return { ...problemOf(blanks, only, shop), stages };
}

const sizeOf = ({ pieces, unit }: CuttingProblem, kind: number): string =>
  `${((pieces[kind]?.length ?? 0) * unit) / 1e6} x ${((pieces[kind]?.width ?? 0) * unit) / 1e6}`;

/** What is worth most of all that is found, as sizes. */
function bestOf(problem: CuttingProblem, prices: Readonly<Record<string, number>>): Readonly<Record<string, number>> {
  const each = problem.pieces.map((_, kind) => prices[sizeOf(problem, kind)] ?? 0);
  const demand = problem.pieces.map(piece => piece.blanks.length);
  const found = openDemandPricers(problem, demand, 0).flatMap(pricer => pricer.better(each, 0));
  const [best] = [...found].sort((one, two) => worthOf(two, each) - worthOf(one, each));
  return Object.fromEntries([...(best?.counts ?? [])].map(([kind, count]) => [sizeOf(problem, kind), count]));
}

const ANY = Number.POSITIVE_INFINITY;

describe('the best way to cut a sheet of what is asked for', () => {
  // By hand, of a sheet of 10 by 10.
  it.each<readonly [string, readonly Piece[], Record<string, number>, Record<string, number>, number]>([
    [
      'fills it',
      [
        [10, 6, 1],
        [10, 4, 1],
        [9, 9, 1],
      ],
      { '10 x 6': 6, '10 x 4': 4, '9 x 9': 8 },
      { '10 x 6': 1, '10 x 4': 1 },
      ANY,
    ],
    ['has as many as are asked for', [[5, 5, 3]], { '5 x 5': 1 }, { '5 x 5': 3 }, ANY],
    ['has as many as there is room for', [[5, 5, 9]], { '5 x 5': 1 }, { '5 x 5': 4 }, ANY],
    // Two of 6 x 5 would be worth most, and there is one. Its like beside it is left out, and what else may go there is
    // left to whoever cuts the pattern: of each rectangle only the best way is known.
    [
      'has no more than that',
      [
        [6, 5, 1],
        [4, 10, 1],
        [4, 5, 2],
      ],
      { '6 x 5': 9, '4 x 10': 7, '4 x 5': 2 },
      { '6 x 5': 1, '4 x 10': 1 },
      ANY,
    ],
    // Around 2 x 2 in the middle: no through cut is left.
    [
      'is cut through',
      [
        [6, 4, 2],
        [4, 6, 2],
      ],
      { '6 x 4': 2, '4 x 6': 3 },
      { '6 x 4': 1, '4 x 6': 2 },
      ANY,
    ],
    // A strip of 6, of it 6 x 6 and 6 x 4 behind it; beside them 4 x 7 and 4 x 3: three stages, and no trim.
    [
      'in three stages',
      [
        [6, 6, 1],
        [6, 4, 1],
        [4, 7, 1],
        [4, 3, 1],
      ],
      { '6 x 6': 1, '6 x 4': 1, '4 x 7': 1, '4 x 3': 1 },
      { '6 x 6': 1, '6 x 4': 1, '4 x 7': 1, '4 x 3': 1 },
      3,
    ],
    // 4 x 7 must be trimmed beside 4 x 3 from 4 x 10, which is the third stage.
    [
      'in three stages and a trim',
      [
        [10, 3, 1],
        [6, 7, 1],
        [4, 7, 1],
      ],
      { '10 x 3': 1, '6 x 7': 1, '4 x 7': 1 },
      { '10 x 3': 1, '6 x 7': 1, '4 x 7': 1 },
      4,
    ],
  ])('%s', (_, pieces, prices, best, stages) => {
    expect(bestOf(aProblem(pieces, stages), prices)).toEqual(best);
  });

  it('has no pricer where there are two stages only', () => {
    expect(openDemandPricers(aProblem([[5, 5, 1]], 2), [1], 0)).toEqual([]);
  });

  const aSize = fc.integer({ min: 2, max: 10 });
  const somePieces = fc
    .uniqueArray(fc.tuple(aSize, aSize), {
      selector: ([length, width]) => `${length} ${width}`,
      minLength: 1,
      maxLength: 6,
    })
    .chain(sizes =>
      fc.tuple(fc.constant(sizes), fc.array(fc.nat(30), { minLength: sizes.length, maxLength: sizes.length })),
    );

  // A recursion that knows of no demand, and keeps no pieces: `priceFree`, after Gilmore and Gomory.
  it('is worth as much as the best of all ways where there is more of everything than a sheet holds', () => {
    fc.assert(
      fc.property(somePieces, ([sizes, each]) => {
        const problem = aProblem(
          sizes.map(([length, width]) => [length, width, 30] as const),
          ANY,
        );
        const prices = problem.pieces.map((_, kind) => each[kind] ?? 0);
        const [clear] = problem.bins[0]?.clear ?? [];
        const stretch = clear === undefined ? undefined : freeStretchOf(problem.pieces, clear);
        const most = stretch === undefined ? 0 : priceFree(stretch, prices).value;
        const found = openDemandPricers(
          problem,
          problem.pieces.map(() => 30),
          0,
        ).flatMap(pricer => pricer.better(prices, 0));
        const worths = found.map(pattern => worthOf(pattern, prices));
        expect(Math.max(0, ...worths)).toBe(most);
      }),
    );
  });

  it('has no more than is asked for, and is a tree of cuts that the saw can follow', () => {
    fc.assert(
      fc.property(
        somePieces,
        fc.array(fc.nat(3), { minLength: 6, maxLength: 6 }),
        fc.constantFrom(3, 4, ANY),
        ([sizes, each], asked, stages) => {
          const problem = aProblem(
            sizes.map(([length, width]) => [length, width, 3] as const),
            stages,
          );
          const demand = problem.pieces.map((_, kind) => asked[kind] ?? 0);
          const prices = problem.pieces.map((_, kind) => each[kind] ?? 0);
          const found = openDemandPricers(problem, demand, 0).flatMap(pricer => pricer.better(prices, 0));
          for (const { bin, counts, trees } of found) {
            for (const [kind, count] of counts) expect(count).toBeLessThanOrEqual(demand[kind] ?? 0);
            const cut = binOf(problem, bin, trees);
            expect(cut.rows.every(row => row.left >= 0)).toBe(true);
            // A tree may have a piece once too often: whoever cuts it leaves that out.
            const pieces = countsOf(piecesIn(cut));
            for (const [kind, count] of counts) expect(pieces.get(kind)).toBeGreaterThanOrEqual(count);
            for (const row of cut.rows) if (row.parts.length > 0) expect(row.stage).toBeLessThanOrEqual(stages);
          }
        },
      ),
    );
  });
});
