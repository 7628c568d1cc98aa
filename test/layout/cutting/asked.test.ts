import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { askOf } from '../../../src/layout/cutting/asked.ts';
import { fewerSettings } from '../../../src/layout/cutting/fewer-settings.ts';
import { handlingOf, sawOf } from '../../../src/layout/cutting/handling.ts';
import { problemOf } from '../../../src/layout/cutting/in-units.ts';
import { sawingOrder } from '../../../src/layout/cutting/sawing.ts';
import { lookingAt, search } from '../../../src/layout/cutting/search.ts';
import { loadSolver, type Solver } from '../../../src/layout/solver.ts';
import { aCuttingJob } from './a-job.ts';

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

const RUNS = Number(process.env['RUNS'] ?? 150);

describe('what a search is told of the cuts of a bin', () => {
  it('is what the cuts are that are printed', () => {
    fc.assert(
      fc.property(aCuttingJob, ({ stock: [stock], shop, blanks }) => {
        if (stock === undefined) return;
        const problem = problemOf(blanks, stock, shop);
        const saw = sawOf(problem, shop);
        const effort = { looks: 100_000, patience: 100_000 };
        const found = search(problem, effort, 1, solver);
        const handle = handlingOf(problem, stock, shop);
        const wishes = { handle, weights: { remnant: 1, bin: undefined }, made: new Set<number>(), spare: 0 };
        const supply = problem.bins.map(bin => bin.available);
        const settled = fewerSettings(lookingAt(problem, 1), found, supply, effort, wishes);
        for (const bin of [...found.bins, ...settled.bins]) {
          const kind = problem.bins[bin.kind];
          if (kind === undefined) throw new Error('a bin of no kind');
          const told: string[] = [];
          askOf(saw, bin, kind, stock.kind, {
            cut: (direction, setting) => told.push(`${direction} at ${setting}`),
            leftover: (length, width) => told.push(`${length} x ${width} left`),
          });
          const { cuts, sides } = sawingOrder(saw, bin, kind, stock.kind);
          const printed = [
            ...cuts.filter(cut => !cut.trim).map(cut => `${cut.direction} at ${cut.setting}`),
            ...sides.flatMap(side =>
              side.kind === 'leftover' && !side.spoilt ? [`${side.at.length} x ${side.at.width} left`] : [],
            ),
          ];
          expect(told.sort()).toEqual(printed.sort());
        }
      }),
      { numRuns: RUNS, endOnFailure: true },
    );
  });
});
