import { expect } from 'vitest';
import { isSawable } from '../../../src/layout/cutting/fill.ts';
import type { CuttingProblem } from '../../../src/layout/cutting/problem.ts';
import { type OpenBin, piecesIn } from '../../../src/layout/cutting/rows.ts';

/** The bins have these pieces and no others, by kind, and the saw can follow each of them within the stages. */
export function expectSawable(problem: CuttingProblem, bins: readonly OpenBin[], pieces: readonly number[]): void {
  expect(byKind(bins.flatMap(piecesIn))).toEqual(byKind(pieces));
  for (const bin of bins) {
    expect(isSawable(problem, bin)).toBe(true);
    for (const row of bin.rows) {
      expect(row.left).toBeGreaterThanOrEqual(0);
      if (row.parts.length > 0) expect(row.stage).toBeLessThanOrEqual(problem.stages);
    }
  }
}

const byKind = (kinds: readonly number[]): readonly number[] => [...kinds].sort((one, two) => one - two);
