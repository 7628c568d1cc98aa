import type { DoorSet } from '../calculate/door-set.ts';
import type { Diagnosed } from '../diagnostics/diagnostic.ts';
import type { Job } from '../import/job.ts';
import { planBlanks } from './blanks/index.ts';
import { planBuying } from './buying/index.ts';
import { checkPlan } from './checks.ts';
import { planCutting } from './cutting/index.ts';
import { planDays } from './days/index.ts';
import { planFinish } from './finishing/index.ts';
import { planBatches } from './glue-up.ts';
import { planOperations } from './operations/index.ts';
import { planRoutes } from './routes.ts';
import type { ShopPlan } from './shop-plan.ts';
import type { Solver } from './solver.ts';
import { workOf } from './work.ts';

/** Lays out the wood and the work of a job whose doors are calculated and without errors. */
export function layOut(job: Job, doorSet: DoorSet, solver: Solver): Diagnosed<ShopPlan> {
  const work = workOf(job, doorSet);
  const blanks = planBlanks(work);
  const cutPlans = planCutting(blanks.blanks, job, solver);
  const finish = planFinish(job, doorSet);
  const batches = planBatches(doorSet.doors, job.shop);
  const operations = planOperations(work, { blanks, batches, cutPlans: cutPlans.value, finish: finish.value });
  const labour = operations.reduce((sum, { minutes }) => sum + minutes.setup + minutes.pieces, 0);
  const shopping = planBuying(job, doorSet, cutPlans.value, finish.value, labour);
  const days = planDays(job, doorSet, operations, batches, finish.value);
  return {
    value: {
      operations,
      routes: planRoutes(work, blanks),
      blanks: blanks.blanks,
      cutPlans: cutPlans.value,
      shopping: shopping.value,
      batches,
      finish: finish.value,
      days: days.value,
    },
    diagnostics: [
      ...cutPlans.diagnostics,
      ...checkPlan(work, operations),
      ...finish.diagnostics,
      ...shopping.diagnostics,
      ...days.diagnostics,
    ],
  };
}
