import type { DoorSet } from '../../calculate/door-set.ts';
import { type Diagnosed, type Diagnostic, problem } from '../../diagnostics/diagnostic.ts';
import type { Job } from '../../import/job.ts';
import type { CutPlan, FinishPlan, Shopping, ShoppingLine } from '../shop-plan.ts';
import { abrasives } from './abrasives.ts';
import { coatings } from './coatings.ts';
import { cost } from './cost.ts';
import { glass } from './glass.ts';
import { glue } from './glue.ts';
import { hardware } from './hardware.ts';
import { wood } from './wood.ts';

/**
 * What to buy for a job and what the job costs: wood as the cutting plans want it, hardware by the pack, glue, abrasives
 * and finish by the can, glass by the pane; what is on hand taken off. `labourMinutes` is the work of all operations.
 */
export function planBuying(
  job: Job,
  doorSet: DoorSet,
  cutPlans: readonly CutPlan[],
  finish: FinishPlan,
  labourMinutes: number,
): Diagnosed<Shopping> {
  const hard = hardware(job, doorSet);
  const lines = [
    ...wood(job, doorSet, cutPlans),
    ...hard.value,
    ...glue(doorSet, job.shop),
    ...abrasives(job, doorSet, finish),
    ...coatings(job, finish),
    ...glass(doorSet, job.shop),
  ];
  return {
    value: cost(lines, labourMinutes, job.shop.work),
    diagnostics: [...hard.diagnostics, ...everyLineHasAPrice(lines)],
  };
}

function everyLineHasAPrice(lines: readonly ShoppingLine[]): readonly Diagnostic[] {
  const items = lines.filter(line => line.buy > 0 && line.amount === undefined).map(line => line.item);
  return items.length === 0 ? [] : [problem('prices-missing', { kind: 'sheet', sheet: 'Stock' }, { items })];
}
