import type { Shop } from '../../trade/shop.ts';
import { addDurations, duration } from '../../units/duration.ts';
import type { Schedule, Task } from '../shop-plan.ts';
import type { Calendar } from './calendar.ts';
import { daysOf } from './crew.ts';
import { boundOf } from './project/bound.ts';
import { networkOf } from './project/network.ts';
import type { Need, Plan, Project } from './project/project.ts';
import { shortPlan } from './project/search.ts';
import type { Step } from './steps.ts';

/** A schedule, and what another one may start from. */
export type Scheduled = { readonly schedule: Schedule; readonly steps: readonly Step[]; readonly plan: Plan };

/**
 * The tasks of a job in time, for so many people, and who does what on each day. `splits` are the same work in few loads
 * and in more of them, coarsest first; a finer one is taken where it saves half a day. `fewer` is the schedule for fewer
 * people: where chance found no shorter one, they do as those would.
 */
export function scheduleFor(
  splits: readonly (readonly Step[])[],
  people: number,
  shop: Shop,
  calendar: Calendar,
  fewer: Scheduled | undefined,
): Scheduled {
  const own = bestOf(splits, people, shop, calendar);
  const { steps, plan } = fewer !== undefined && fewer.plan.makespan < own.plan.makespan ? fewer : own;
  const bound = boundOf(networkOf(projectOf(withWaits(steps), people, shop, calendar)));
  const tasks = tasksAt(steps, plan.starts, calendar);
  const schedule: Schedule = {
    people,
    startDate: calendar.dateOfDay(0),
    ends: calendar.endOf(plan.makespan),
    proven: plan.makespan === bound.makespan,
    makespan: duration(plan.makespan),
    bound: {
      makespan: duration(bound.makespan),
      by: bound.by === 'path' ? 'critical-path' : (RESOURCES[bound.by]?.name ?? 'people'),
    },
    tasks,
    days: daysOf(tasks, people, calendar),
  };
  return { schedule, steps, plan };
}

/** A quick look at each split, and then all the effort on the one that looks best. */
function bestOf(
  splits: readonly (readonly Step[])[],
  people: number,
  shop: Shop,
  calendar: Calendar,
): { readonly steps: readonly Step[]; readonly plan: Plan } {
  const planned = (steps: readonly Step[], share: number): Plan => {
    const worked = withWaits(steps);
    const { plans, seed } = effortFor(worked.length, shop);
    return shortPlan(projectOf(worked, people, shop, calendar), { plans: Math.ceil(plans * share), seed }).plan;
  };
  let [best = []] = splits;
  let shortest = Number.POSITIVE_INFINITY;
  for (const steps of splits.length > 1 ? splits : []) {
    const { makespan } = planned(steps, 1 / (4 * splits.length));
    if (makespan < shortest - calendar.secondsADay / 2) {
      best = steps;
      shortest = makespan;
    }
  }
  return { steps: best, plan: planned(best, 1) };
}

/**
 * One of two people or more is the helper, who alone does only what the shop lets him do: of all other work there can be
 * no more at once than there are others.
 */
function projectOf(worked: readonly Worked[], people: number, shop: Shop, { clock }: Calendar): Project {
  const place = new Map(worked.flatMap(({ step, waits }, at) => [step, ...waits].map(({ id }) => [id, at])));
  return {
    clock,
    capacities: RESOURCES.map(resource => resource.capacity(shop, people)),
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

/** A step, and those after it that are nothing but waits. */
type Worked = { readonly step: Step; readonly waits: readonly Step[] };

/**
 * A cure begins when the clamps come off, at night too, so what only waits is planned as part of what it follows: then it
 * need not begin within the working time.
 */
function withWaits(steps: readonly Step[]): readonly Worked[] {
  const followers = new Map<string, number>();
  for (const id of steps.flatMap(step => step.after)) followers.set(id, (followers.get(id) ?? 0) + 1);
  const worked: { step: Step; waits: Step[] }[] = [];
  const lastOf = new Map<string, { step: Step; waits: Step[] }>();
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

function tasksAt(steps: readonly Step[], starts: ArrayLike<number>, calendar: Calendar): readonly Task[] {
  const tasks = new Map<string, Task>();
  for (const [at, { step, waits }] of withWaits(steps).entries()) {
    const start = starts[at] ?? 0;
    const begins = calendar.startOf(start);
    const ends = step.work === 0 ? begins : calendar.endOf(start + step.work);
    let over = calendar.waited(ends, step.wait);
    tasks.set(step.id, { ...step, starts: begins, ends, over });
    for (const wait of waits) {
      const from = over;
      over = calendar.waited(from, wait.wait);
      tasks.set(wait.id, { ...wait, starts: from, ends: from, over });
    }
  }
  return steps.flatMap(step => tasks.get(step.id) ?? []);
}

/** Fewer plans for more tasks, so that a large job takes little longer than its first plan does. */
const effortFor = (tasks: number, shop: Shop) => ({
  plans: Math.min(PLANS_MAX, Math.max(1, Math.floor(PLACEMENTS / Math.max(1, tasks)))),
  seed: shop.planning.seed,
});

type Resource = {
  readonly name: Schedule['bound']['by'];
  readonly capacity: (shop: Shop, people: number) => number;
  readonly amount: (step: Step) => number;
  /** Until the wait is over, and not only while somebody works. */
  readonly held: boolean;
};

const RESOURCES: readonly Resource[] = [
  { name: 'people', capacity: (_, people) => people, amount: step => step.people, held: false },
  {
    name: 'people',
    capacity: (_, people) => Math.max(1, people - 1),
    amount: step => (step.helperAlone ? 0 : step.people),
    held: false,
  },
  { name: 'clamps', capacity: shop => shop.gluing.clamps, amount: step => step.takes.clamps, held: true },
  { name: 'spray', capacity: shop => shop.finishing.sprayPlaces, amount: step => step.takes.sprayPlaces, held: false },
  { name: 'rack', capacity: shop => shop.finishing.rackSlots, amount: step => step.takes.rackSlots, held: true },
];

const PLANS_MAX = 2000;
const PLACEMENTS = 30_000;
