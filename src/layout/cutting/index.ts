import { type Diagnosed, type Diagnostic, problem } from '../../diagnostics/diagnostic.ts';
import { cellOf } from '../../diagnostics/place.ts';
import type { Job, Stock } from '../../import/job.ts';
import { nm } from '../../units/length.ts';
import type { Blank, CutPlan } from '../shop-plan.ts';
import type { Solver } from '../solver.ts';
import { drawUp, type Numbers } from './draw-up.ts';
import { type Filling, fitsSomewhere } from './first-plan.ts';
import { problemOf } from './in-units.ts';
import type { CuttingProblem } from './problem.ts';
import { search } from './search.ts';

/**
 * Cuts the blanks of a job from its boards and sheets, stock by stock in the order of their names. Blanks that no stock
 * yields are left out and said, at the stock's row.
 */
export function planCutting(
  blanks: readonly Blank[],
  job: Pick<Job, 'stock' | 'shop'>,
  solver: Solver,
): Diagnosed<readonly CutPlan[]> {
  const diagnostics: Diagnostic[] = [];
  const plans: CutPlan[] = [];
  const numbers: Numbers = { board: 0, sheet: 0, offcut: 0 };
  for (const stock of [...job.stock].sort((one, two) => (one.name < two.name ? -1 : 1))) {
    const own = blanks.filter(blank => blank.stock === stock.name);
    if (own.length === 0) continue;
    const cutting = problemOf(own, stock, job.shop);
    const found = search(cutting, job.shop.planning, solver);
    diagnostics.push(...notCut(cutting, found, stock));
    if (found.bins.length > 0) plans.push(drawUp(cutting, found, stock, job.shop, numbers));
  }
  return { value: plans, diagnostics };
}

/** Says of each blank that was left whether it is too large, or the stock ran out before it. */
function notCut(cutting: CuttingProblem, found: Filling, stock: Stock): readonly Diagnostic[] {
  const at = cellOf(stock.from, 'name');
  const looking = { problem: cutting, chance: () => 0, blinks: 0, looks: 0 };
  const left = found.left.flatMap(kind => cutting.pieces[kind] ?? []);
  const tooLarge = new Set(left.filter(piece => !fitsSomewhere(looking, piece)));
  const short = left.filter(piece => !tooLarge.has(piece)).length;
  return [
    ...[...tooLarge].flatMap(piece =>
      piece.blanks.map(code =>
        problem('piece-fits-no-stock', at, {
          code,
          stock: stock.name,
          length: nm((piece.length - cutting.kerf) * cutting.unit),
          width: nm((piece.width - cutting.kerf) * cutting.unit),
        }),
      ),
    ),
    ...(short > 0 ? [problem('stock-runs-out', at, { stock: stock.name, pieces: short })] : []),
  ];
}
