import type { DoorSet } from '../calculate/door-set.ts';
import type { Diagnosed } from '../diagnostics/diagnostic.ts';
import type { Job } from '../import/job.ts';
import { planBuying } from './buying/index.ts';
import { planDays } from './days/index.ts';
import type { ShopPlan } from './shop-plan.ts';
import type { Solver } from './solver.ts';
import { planWoodAndWork } from './wood-and-work.ts';

/** Lays out the wood and the work of a job whose doors are calculated and without errors. */
export function layOut(job: Job, doorSet: DoorSet, solver: Solver): Diagnosed<ShopPlan> {
  const made = planWoodAndWork(job, doorSet, solver);
  const { operations, cutPlans, batches, finish } = made.value;
  const labour = operations.reduce((sum, { minutes }) => sum + minutes.setup + minutes.pieces, 0);
  const shopping = planBuying(job, doorSet, cutPlans, finish, labour);
  const days = planDays(job, doorSet, operations, batches, finish);
  return {
    value: { ...made.value, shopping: shopping.value, days: days.value },
    diagnostics: [...made.diagnostics, ...shopping.diagnostics, ...days.diagnostics],
  };
}
