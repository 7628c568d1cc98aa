import type { Door, DoorSet } from '../../calculate/door-set.ts';
import { type Diagnosed, type Diagnostic, gather, problem } from '../../diagnostics/diagnostic.ts';
import { cellOf } from '../../diagnostics/place.ts';
import type { FinishStep, Job } from '../../import/job.ts';
import { COAT_MINUTES, type CoatMinutes, ORDER_OF_SIDES } from '../../trade/finishing.ts';
import type { Shop } from '../../trade/shop.ts';
import { addAreas } from '../../units/area.ts';
import { inMinutes } from '../../units/duration.ts';
import type { FinishPlan, FinishStepPlan } from '../shop-plan.ts';
import { mixes } from './mixes.ts';
import { additiveFor, coatVolume, shareOut } from './mixing.ts';

/** What to mix for each coat, in how many fillings of the pot, and how many doors are wet at once. */
export function planFinish(job: Job, doorSet: DoorSet): Diagnosed<FinishPlan> {
  // In the order of their codes, so that the order of rows does not decide which doors share a mix.
  const doors = [...doorSet.doors].sort((a, b) => (a.code < b.code ? -1 : 1));
  const steps = gather(job.finish.map((step, at) => planStep(step, at + 1, doors, job.shop)));
  return {
    value: { area: addAreas(doors.map(door => door.finishArea)), steps: steps.value },
    diagnostics: [...steps.diagnostics, ...rackHoldsThem(job, steps.value)],
  };
}

function planStep(step: FinishStep, number: number, doors: readonly Door[], shop: Shop): Diagnosed<FinishStepPlan> {
  const pace = shop.work.minutes['finish'] ?? COAT_MINUTES[step.kind];
  const volume = coatVolume(addAreas(doors.map(door => door.finishArea)), step);
  const batches = mixes(doors, step, pace.piece, shop.finishing);
  const plan: FinishStepPlan = {
    number,
    name: step.name,
    kind: step.kind,
    coats: step.coats,
    grit: step.grit,
    volume,
    components: shareOut(volume, step),
    additive: step.additive && { ...step.additive, volume: additiveFor(volume, step.additive) },
    batches: batches.value,
    sides: ORDER_OF_SIDES[step.kind],
    rackSlots: wetAtOnce(step, doors.length, pace),
    minutes: stepMinutes(step, doors.length, batches.value.length, pace),
    wait: step.wait,
  };
  return { value: plan, diagnostics: batches.diagnostics };
}

/** Ready once for each mix of a wet coat, once for each coat of a dry one. */
function stepMinutes(step: FinishStep, doors: number, fillings: number, pace: CoatMinutes): FinishStepPlan['minutes'] {
  if (step.kind === 'wait') return { setup: 0, pieces: 0 };
  return { setup: step.coats * Math.max(1, fillings) * pace.setup, pieces: step.coats * doors * pace.piece };
}

/** A door comes off the rack when its wait is over; until then the next ones are added at the pace of the work. */
function wetAtOnce(step: FinishStep, doors: number, pace: CoatMinutes): number {
  if (step.kind === 'sand' || step.kind === 'wait') return 0;
  if (pace.piece <= 0) return doors;
  return Math.min(doors, Math.floor(inMinutes(step.wait) / pace.piece) + 1);
}

/** Said of the step in which most doors are wet: what holds those holds all. */
function rackHoldsThem({ finish, shop }: Job, plans: readonly FinishStepPlan[]): readonly Diagnostic[] {
  const slots = shop.finishing.rackSlots;
  const wet = plans.reduce((most, plan) => Math.max(most, plan.rackSlots), 0);
  const at = plans.findIndex(plan => plan.rackSlots === wet);
  const step = finish[at];
  if (wet <= slots || step === undefined) return [];
  return [problem('rack-too-small', cellOf(step.from, 'wait'), { step: step.name, wet, slots })];
}
