import type { Shop } from '../../trade/shop.ts';
import type { Solver } from '../solver.ts';
import { areaBound } from './bound.ts';
import { everyPiece, type Filling, firstPlan } from './first-plan.ts';
import { FITS, SPLITS } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import type { Direction } from './rectangles.ts';

/** The best filling found, and the least number of bins that any filling of the same pieces needs. */
export type Found = Filling & {
  readonly bound: { readonly bins: number; readonly by: 'area' | 'packing' | 'column-generation' };
};

export function search(problem: CuttingProblem, _planning: Shop['planning'], _solver: Solver): Found {
  let best: Filling | undefined;
  const order = everyPiece(problem);
  for (const first of FIRST) {
    for (const fit of FITS) {
      for (const split of SPLITS) {
        const filling = firstPlan(problem, order, { fit, split }, first);
        if (best === undefined || isBetter(problem, filling, best)) best = filling;
      }
    }
  }
  const found = best ?? { bins: [], left: order };
  return { ...found, bound: areaBound(problem, found) };
}

const FIRST: readonly (Direction | undefined)[] = [undefined, 'crosscut', 'rip'];

/** Nothing left uncut comes first, then what the bins cost. */
function isBetter(problem: CuttingProblem, one: Filling, two: Filling): boolean {
  return (one.left.length - two.left.length || cost(problem, one) - cost(problem, two)) < 0;
}

const cost = (problem: CuttingProblem, filling: Filling): number =>
  filling.bins.reduce((total, bin) => total + (problem.bins[bin.kind]?.cost ?? 0), 0);
