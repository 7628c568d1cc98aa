import type { DoorCode } from '../../codes/codes.ts';
import type { Job } from '../../import/job.ts';
import { type Duration, duration, timesDuration } from '../../units/duration.ts';
import type { FinishPlan, FinishStepPlan } from '../shop-plan.ts';
import { wholeMinutes } from './shares.ts';
import type { Step } from './steps.ts';

/** Doors that are coated and dry together, of all those of the job. */
export type Load = {
  readonly phase: number;
  readonly load: number;
  readonly doors: readonly DoorCode[];
  readonly of: number;
};

/** The coats of one load of doors, one after the other, each with its wait. */
export function coatsOf(job: Job, finish: FinishPlan, load: Load, after: readonly string[]): readonly Step[] {
  const steps: Step[] = [];
  for (const plan of finish.steps) {
    // A step that only waits is one wait, however often it says so.
    const coats = plan.kind === 'wait' ? 1 : plan.coats;
    for (let number = 1; number <= coats; number += 1) {
      const last = steps.at(-1);
      steps.push(coatOf(job, plan, load, number, last === undefined ? after : [last.id]));
    }
  }
  return steps;
}

function coatOf(job: Job, plan: FinishStepPlan, load: Load, number: number, after: readonly string[]): Step {
  const { finishing, work } = job.shop;
  const onlyWaits = plan.kind === 'wait';
  const isWet = plan.kind !== 'sand' && !onlyWaits;
  const isSprayed = isWet && (job.finish[plan.number - 1]?.transfer ?? 1) < 1;
  return {
    id: `finish/${load.phase}.${load.load}/${plan.number}.${number}`,
    operation: 'finish',
    go: load.load,
    coat: { step: plan.number, number },
    doors: load.doors,
    people: onlyWaits ? 0 : 1,
    helperAlone: work.helperAlone.includes('finish'),
    takes: {
      clamps: 0,
      sprayPlaces: isSprayed ? Math.min(load.doors.length, finishing.sprayPlaces) : 0,
      rackSlots: isWet ? Math.min(load.doors.length, finishing.rackSlots) : 0,
    },
    work: onlyWaits ? duration(0) : workOn(plan, load),
    wait: onlyWaits ? timesDuration(Math.max(1, plan.coats), plan.wait) : plan.wait,
    after,
  };
}

/** The load's share of the fillings, each with its set-up, and of the doors. A load begins with a filling of its own. */
function workOn(plan: FinishStepPlan, { doors, of }: Load): Duration {
  const share = doors.length / of;
  const fillings = Math.max(1, plan.batches.length);
  const setup = plan.minutes.setup / plan.coats / fillings;
  return wholeMinutes(setup * Math.ceil(fillings * share) + (plan.minutes.pieces / plan.coats) * share);
}
