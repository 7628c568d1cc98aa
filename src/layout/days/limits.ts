import { addDurations } from '../../units/duration.ts';
import type { Schedule, Task } from '../shop-plan.ts';
import type { Calendar } from './calendar.ts';
import type { Need, Project } from './project/project.ts';

/** How much there is of everything that a task may have to wait for. */
export type Limits = {
  readonly people: number;
  readonly clamps: number;
  readonly sprayPlaces: number;
  readonly rackSlots: number;
};

/**
 * One of two people or more is the helper, who alone does only what the shop lets him do: of all other work there can be
 * no more at once than there are others.
 */
export function projectOf(worked: readonly Worked<Planned>[], limits: Limits, { clock }: Calendar): Project {
  const place = new Map(worked.flatMap(({ step, waits }, at) => [step, ...waits].map(({ id }) => [id, at])));
  return {
    clock,
    capacities: RESOURCES.map(resource => resource.capacity(limits)),
    activities: worked.map(({ step, waits }) => ({
      duration: step.work,
      hold: step.wait,
      wait: addDurations([step, ...waits].map(each => each.wait)),
      after: [...new Set(step.after.flatMap(id => place.get(id) ?? []))],
      needs: RESOURCES.flatMap(({ amount, held }, resource): readonly Need[] =>
        amount(step) > 0 ? [{ resource, amount: amount(step), held }] : [],
      ),
    })),
  };
}

/** What a planner must know of a task. */
export type Planned = Pick<Task, 'id' | 'people' | 'helperAlone' | 'takes' | 'work' | 'wait' | 'after'>;

/** A step, and those after it that are nothing but waits. */
export type Worked<S extends Planned> = { readonly step: S; readonly waits: readonly S[] };

/**
 * A cure begins when the clamps come off, at night too, so what only waits is planned as part of what it follows: then it
 * need not begin within the working time.
 */
export function withWaits<S extends Planned>(steps: readonly S[]): readonly Worked<S>[] {
  const followers = new Map<string, number>();
  for (const id of steps.flatMap(step => step.after)) followers.set(id, (followers.get(id) ?? 0) + 1);
  const worked: { step: S; waits: S[] }[] = [];
  const lastOf = new Map<string, { step: S; waits: S[] }>();
  for (const step of steps) {
    const [only, ...others] = step.after;
    const host = only !== undefined && others.length === 0 && followers.get(only) === 1 ? lastOf.get(only) : undefined;
    const into = step.work === 0 && step.takes.clamps + step.takes.rackSlots === 0 ? host : undefined;
    if (into !== undefined) into.waits.push(step);
    else worked.push({ step, waits: [] });
    const last = into ?? worked.at(-1);
    if (last !== undefined) lastOf.set(step.id, last);
  }
  return worked;
}

type Resource = {
  readonly name: Schedule['bound']['by'];
  readonly capacity: (limits: Limits) => number;
  readonly amount: (step: Planned) => number;
  /** Until the wait is over, and not only while somebody works. */
  readonly held: boolean;
};

/** In the order in which a project numbers them. */
export const RESOURCES: readonly Resource[] = [
  { name: 'people', capacity: limits => limits.people, amount: step => step.people, held: false },
  {
    name: 'people',
    capacity: limits => Math.max(1, limits.people - 1),
    amount: step => (step.helperAlone ? 0 : step.people),
    held: false,
  },
  { name: 'clamps', capacity: limits => limits.clamps, amount: step => step.takes.clamps, held: true },
  { name: 'spray', capacity: limits => limits.sprayPlaces, amount: step => step.takes.sprayPlaces, held: false },
  { name: 'rack', capacity: limits => limits.rackSlots, amount: step => step.takes.rackSlots, held: true },
];
