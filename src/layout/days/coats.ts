import type { Job } from '../../import/job.ts';
import { duration, minutes, timesDuration } from '../../units/duration.ts';
import type { FinishPlan, FinishStepPlan } from '../shop-plan.ts';
import type { Group, Step } from './steps.ts';

/** The coats of one load of doors, one after the other, each with its wait; `of` is how many doors the job has in all. */
export function coatsOf(
  job: Job,
  finish: FinishPlan,
  load: Group,
  of: number,
  after: readonly string[],
): readonly Step[] {
  const steps: Step[] = [];
  for (const plan of finish.steps) {
    // A step that only waits is one wait, however often it says so.
    const coats = plan.kind === 'wait' ? 1 : plan.coats;
    for (let number = 1; number <= coats; number += 1) {
      const last = steps.at(-1);
      steps.push(coatOf(job, plan, load, of, number, last === undefined ? after : [last.id]));
    }
  }
  return steps;
}

function coatOf(
  job: Job,
  plan: FinishStepPlan,
  load: Group,
  of: number,
  number: number,
  after: readonly string[],
): Step {
  const { finishing, work } = job.shop;
  const onlyWaits = plan.kind === 'wait';
  const share = load.doors.length / of / Math.max(1, plan.coats);
  const isWet = plan.kind !== 'sand' && !onlyWaits;
  const isSprayed = isWet && (job.finish[plan.number - 1]?.transfer ?? 1) < 1;
  return {
    id: `finish/${load.go}/${plan.number}.${number}`,
    operation: 'finish',
    go: load.go,
    coat: { step: plan.number, number },
    doors: load.doors,
    people: onlyWaits ? 0 : 1,
    helperAlone: work.helperAlone.includes('finish'),
    work: onlyWaits ? duration(0) : minutes((plan.minutes.setup + plan.minutes.pieces) * share),
    wait: onlyWaits ? timesDuration(Math.max(1, plan.coats), plan.wait) : plan.wait,
    after,
    takes: {
      clamps: 0,
      sprayPlaces: isSprayed ? Math.min(load.doors.length, finishing.sprayPlaces) : 0,
      rackSlots: isWet ? Math.min(load.doors.length, finishing.rackSlots) : 0,
    },
  };
}
