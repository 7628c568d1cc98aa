import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { openPool } from '../../../src/layout/cutting/cover.ts';
import { costOfBins, everyPiece, type Filling, firstPlan } from '../../../src/layout/cutting/first-plan.ts';
import { problemOf } from '../../../src/layout/cutting/in-units.ts';
import { oneBinLess, suitsOneBinLess } from '../../../src/layout/cutting/one-bin-less.ts';
import type { Looking } from '../../../src/layout/cutting/placing.ts';
import type { CuttingProblem } from '../../../src/layout/cutting/problem.ts';
import { LOOKS_A_SECOND, lookingAt } from '../../../src/layout/cutting/search.ts';
import { loadSolver, type Solver } from '../../../src/layout/solver.ts';
import { lengthOf } from '../../../src/units/read-length.ts';
import { aShop, aSize, aStock, someBlanks } from './a-job.ts';
import { expectSawable } from './sawable.ts';

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

const LOOKS = LOOKS_A_SECOND / 5;

/** A plan that was made piece by piece, and what is made of it. */
function improved(problem: CuttingProblem): {
  readonly start: Filling;
  readonly end: Filling;
  readonly suits: boolean;
} {
  const looking: Looking = { ...lookingAt(problem, 1), easy: false, blinks: 0 };
  const start = firstPlan(looking, everyPiece(problem), { fit: 'area', split: 'longer' }, undefined);
  const demand = problem.pieces.map(piece => piece.blanks.length);
  const suits = suitsOneBinLess(looking, demand, start, LOOKS);
  const end = suits ? oneBinLess(looking, demand, start, 0, openPool(), solver, LOOKS) : start;
  return { start, end, suits };
}

describe('a plan of few unlike pieces in a sheet', () => {
  const aSizeOf = (least: number, most: number): fc.Arbitrary<number> =>
    fc.integer({ min: least, max: most }).map(n => 4 * n);
  const somePieces = fc.uniqueArray(fc.tuple(aSizeOf(4, 14), aSizeOf(3, 8)), {
    selector: ([length, width]) => `${length} x ${width}`,
    minLength: 8,
    maxLength: 24,
  });

  it('keeps all pieces, stays sawable and within stages and stock, and never costs more', () => {
    let better = 0;
    fc.assert(
      fc.property(
        somePieces,
        fc.constantFrom(3 as const, 'free' as const),
        fc.constantFrom('0', '1/4'),
        fc.constantFrom('length' as const, 'none' as const),
        fc.nat(2),
        (sizes, stages, leastSkim, grain, onHand) => {
          const blanks = someBlanks('ply', ...sizes.map(([length, width]) => `${length} x ${width}`));
          const small = onHand > 0 ? [aSize('80 x 40', { onHand, buy: false })] : [];
          const stock = aStock([...small, aSize('96 x 48')], { grain });
          const problem = problemOf(blanks, stock, aShop({ stages, leastSkim: lengthOf(leastSkim) }));
          const { start, end, suits } = improved(problem);
          if (!suits) return;
          expectSawable(problem, end.bins, everyPiece(problem));
          expect(end.left).toEqual([]);
          expect(costOfBins(problem, end.bins)).toBeLessThanOrEqual(costOfBins(problem, start.bins) + 1e-9);
          for (const [kind, { available }] of problem.bins.entries())
            expect(end.bins.filter(bin => bin.kind === kind).length).toBeLessThanOrEqual(available);
          if (costOfBins(problem, end.bins) < costOfBins(problem, start.bins) - 1e-9) better += 1;
        },
      ),
      { numRuns: 20, seed: 1 },
    );
    // Otherwise it would keep all these laws by doing nothing.
    expect(better).toBeGreaterThan(3);
  });
});
