import type { Shop } from '../../trade/shop.ts';
import type { Solver } from '../solver.ts';
import { type Bound, packingBound } from './bound.ts';
import { chanceFrom } from './chance.ts';
import { fewerBins } from './fewer-bins.ts';
import { everyPiece, type Filling, firstPlan, isBetter } from './first-plan.ts';
import { FITS, type Looking, SPLITS } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import type { Direction } from './rows.ts';

/** The best filling found, and the least number of bins that any filling of the same pieces needs. */
export type Found = Filling & { readonly bound: Bound };

/** Looks that take about a second. */
const LOOKS_A_SECOND = 50_000_000;

export function search(
  problem: CuttingProblem,
  planning: Pick<Shop['planning'], 'seconds' | 'seed'>,
  _solver: Solver,
): Found {
  const looking: Looking = { problem, chance: chanceFrom(planning.seed), blinks: 0, looks: 0 };
  const start = bestFirstPlan(looking);
  const bound = packingBound(problem, demandOf(problem, start.left));
  if (start.left.length === 0 && start.bins.length <= bound.bins && problem.bins.length === 1)
    return { ...start, bound };
  const best = fewerBins(
    { ...looking, blinks: BLINKS },
    start,
    problem.bins.length === 1 ? bound.bins : 0,
    problem.bins.map(bin => bin.available),
    planning.seconds * LOOKS_A_SECOND,
    () => {},
  );
  return { ...best, bound };
}

const BLINKS = 0.02;

function bestFirstPlan(looking: Looking): Filling {
  const order = everyPiece(looking.problem);
  let best: Filling | undefined;
  for (const first of FIRST) {
    for (const fit of FITS) {
      for (const split of SPLITS) {
        const filling = firstPlan(looking, order, { fit, split }, first);
        if (best === undefined || isBetter(looking.problem, filling, best)) best = filling;
      }
    }
  }
  return best ?? { bins: [], left: order };
}

const FIRST: readonly (Direction | undefined)[] = [undefined, 'crosscut', 'rip'];

/** What was cut: all pieces but those that are left. */
const demandOf = (problem: CuttingProblem, left: readonly number[]): readonly number[] =>
  problem.pieces.map((piece, kind) => piece.blanks.length - left.filter(each => each === kind).length);
