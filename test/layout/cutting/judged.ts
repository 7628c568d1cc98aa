import { planCutting } from '../../../src/layout/cutting/index.ts';
import type { Solver } from '../../../src/layout/solver.ts';
import { verify } from '../verify.ts';
import type { CuttingJob } from './a-job.ts';

/** What the judge says, of the blanks that were not said to be left out. */
export function judged(job: CuttingJob, solver: Solver): readonly string[] {
  const { value, diagnostics } = planCutting(job.blanks, job, solver);
  const tooLarge = new Set(diagnostics.flatMap(each => (each.code === 'piece-fits-no-stock' ? [each.facts.code] : [])));
  const short = diagnostics.reduce((sum, each) => sum + (each.code === 'stock-runs-out' ? each.facts.pieces : 0), 0);
  const cut = new Set(value.flatMap(each => each.bins.flatMap(bin => bin.pieces.map(piece => piece.blank as string))));
  const wanted = job.blanks.filter(blank => !tooLarge.has(blank.code));
  const missing = wanted.filter(blank => !cut.has(blank.code));
  const [stock] = job.stock;
  return [
    ...(missing.length === short ? [] : [`${missing.length} are missing, and ${short} are said to be`]),
    ...value.flatMap(each =>
      stock === undefined
        ? []
        : verify(each, short > 0 ? wanted.filter(blank => cut.has(blank.code)) : wanted, stock, job.shop),
    ),
  ];
}
