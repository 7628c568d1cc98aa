import type { DoorSet } from '../calculate/door-set.ts';
import type { Diagnosed } from '../diagnostics/diagnostic.ts';
import type { Job } from '../import/job.ts';
import { planBlanks } from './blanks/index.ts';
import { checkPlan } from './checks.ts';
import { planCutting } from './cutting/index.ts';
import { planFinish } from './finishing/index.ts';
import { planBatches } from './glue-up.ts';
import { planOperations } from './operations/index.ts';
import { planRoutes } from './routes.ts';
import type { ShopPlan } from './shop-plan.ts';
import type { Solver } from './solver.ts';
import { workOf } from './work.ts';

/** What is made, from which wood and how; what is bought for it and when it is done comes after. */
export type WoodAndWork = Omit<ShopPlan, 'shopping' | 'days'>;

/** The blanks of a job, how they are cut from boards and sheets, and every operation from there to the hung door. */
export function planWoodAndWork(job: Job, doorSet: DoorSet, solver: Solver): Diagnosed<WoodAndWork> {
  const work = workOf(job, doorSet);
  const blanks = planBlanks(work);
  const cutPlans = planCutting(blanks.blanks, job, solver);
  const finish = planFinish(job, doorSet);
  const batches = planBatches(doorSet.doors, job.shop);
  const operations = planOperations(work, { blanks, batches, cutPlans: cutPlans.value, finish: finish.value });
  return {
    value: {
      operations,
      routes: planRoutes(work, blanks),
      blanks: blanks.blanks,
      cutPlans: cutPlans.value,
      batches,
      finish: finish.value,
    },
    diagnostics: [...cutPlans.diagnostics, ...checkPlan(work, operations), ...finish.diagnostics],
  };
}
