import type { DoorSet } from './calculate/door-set.ts';
import { calculate } from './calculate/index.ts';
import { type Diagnostic, isError } from './diagnostics/diagnostic.ts';
import { importJob } from './import/index.ts';
import type { Job } from './import/job.ts';
import type { Workbook } from './import/workbook.ts';
import { layOut } from './layout/index.ts';
import type { ShopPlan } from './layout/shop-plan.ts';
import type { Solver } from './layout/solver.ts';

/** The three stages before paper: enough to say everything that is wrong with a workbook. */
export function planJob(workbook: Workbook, solver: Solver): Planned | Refused {
  const job = importJob(workbook);
  const doorSet = calculate(job.value);
  const found = [...job.diagnostics, ...doorSet.diagnostics];
  // Wood is cut from the packet, so one error anywhere means that nothing is laid out at all.
  if (found.some(isError)) return { kind: 'refused', job: job.value, diagnostics: found };
  const plan = layOut(job.value, doorSet.value, solver);
  const diagnostics = [...found, ...plan.diagnostics];
  if (diagnostics.some(isError)) return { kind: 'refused', job: job.value, diagnostics };
  return { kind: 'planned', job: job.value, doorSet: doorSet.value, plan: plan.value, diagnostics };
}

export type Planned = {
  readonly kind: 'planned';
  readonly job: Job;
  readonly doorSet: DoorSet;
  readonly plan: ShopPlan;
  readonly diagnostics: readonly Diagnostic[];
};

/** Nothing was built: what has to be mended first, and the job as far as it could be read. */
export type Refused = {
  readonly kind: 'refused';
  readonly job: Job;
  readonly diagnostics: readonly Diagnostic[];
};
