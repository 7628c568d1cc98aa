import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weigh } from '../../../src/layout/cutting/bound.ts';
import { openPool } from '../../../src/layout/cutting/cover.ts';
import { exchange, suitsExchange } from '../../../src/layout/cutting/exchange.ts';
import { everyPiece, type Filling, firstPlan } from '../../../src/layout/cutting/first-plan.ts';
import { problemOf } from '../../../src/layout/cutting/in-units.ts';
import type { Looking } from '../../../src/layout/cutting/placing.ts';
import { rowByRow, suitsRowByRow } from '../../../src/layout/cutting/row-by-row.ts';
import { piecesIn } from '../../../src/layout/cutting/rows.ts';
import { LOOKS_A_SECOND, lookingAt } from '../../../src/layout/cutting/search.ts';
import { aShop, aSize, aStock, someBlanks } from './a-job.ts';
import { expectSawable } from './sawable.ts';

type Search = {
  readonly name: string;
  readonly suits: (looking: Looking, demand: readonly number[], start: Filling) => boolean;
  readonly search: typeof rowByRow;
  readonly sizes: { readonly length: number; readonly width: number };
  readonly pieces: number;
};

const searches: readonly Search[] = [
  {
    name: 'pieces exchanged',
    suits: suitsExchange,
    search: (looking, start, ...others) => {
      const { problem } = looking;
      const { shares } = weigh(
        problem,
        problem.pieces.map(piece => piece.blanks.length),
      );
      return exchange(looking, start, shares(), ...others);
    },
    sizes: { length: 14, width: 8 },
    pieces: 20,
  },
  {
    name: 'row by row',
    suits: (looking, _, start) => suitsRowByRow(looking, start),
    search: rowByRow,
    sizes: { length: 8, width: 5 },
    pieces: 50,
  },
];

describe.each(searches)('a sheet less, $name', ({ suits, search, sizes, pieces }) => {
  const aSizeOf = (most: number): fc.Arbitrary<number> => fc.integer({ min: 2, max: 4 * most });
  const somePieces = fc.uniqueArray(fc.tuple(aSizeOf(sizes.length), aSizeOf(sizes.width)), {
    selector: ([length, width]) => `${length} x ${width}`,
    minLength: pieces / 2,
    maxLength: pieces,
  });

  it('keeps all pieces, stays sawable and within the stages, never takes more, and is the same twice', () => {
    let better = 0;
    fc.assert(
      fc.property(
        somePieces,
        fc.constantFrom(3 as const, 'free' as const),
        fc.constantFrom('length' as const, 'none' as const),
        (drawn, stages, grain) => {
          const blanks = someBlanks('ply', ...drawn.map(([length, width]) => `${length} x ${width}`));
          const problem = problemOf(blanks, aStock([aSize('96 x 48')], { grain }), aShop({ stages }));
          const improved = (): readonly [Filling, Filling] => {
            const looking: Looking = { ...lookingAt(problem, 1), easy: false, blinks: 0 };
            const start = firstPlan(looking, everyPiece(problem), { fit: 'area', split: 'longer' }, undefined);
            const looks = LOOKS_A_SECOND / 20;
            const demand = problem.pieces.map(piece => piece.blanks.length);
            return [start, suits(looking, demand, start) ? search(looking, start, 1, looks, openPool().see) : start];
          };
          const [start, end] = improved();
          expectSawable(problem, end.bins, everyPiece(problem));
          expect(end.left).toEqual([]);
          expect(end.bins.length).toBeLessThanOrEqual(start.bins.length);
          expect(improved()[1].bins.map(piecesIn)).toEqual(end.bins.map(piecesIn));
          if (end.bins.length < start.bins.length) better += 1;
        },
      ),
      { numRuns: 20, seed: 1 },
    );
    // Otherwise it would keep all these laws by doing nothing.
    expect(better).toBeGreaterThan(3);
  });
});
