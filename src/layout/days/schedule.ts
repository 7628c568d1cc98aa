import type { Shop } from '../../trade/shop.ts';
import { duration } from '../../units/duration.ts';
import type { Schedule, Task } from '../shop-plan.ts';
import type { Calendar } from './calendar.ts';
import { daysOf } from './crew.ts';
import { type Limits, projectOf, RESOURCES, withWaits } from './limits.ts';
import { boundOf } from './project/bound.ts';
import { networkOf } from './project/network.ts';
import type { Plan } from './project/project.ts';
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
  const bound = boundOf(networkOf(projectOf(withWaits(steps), limitsOf(shop, people), calendar)));
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
    return shortPlan(projectOf(worked, limitsOf(shop, people), calendar), { plans: Math.ceil(plans * share), seed })
      .plan;
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

const limitsOf = ({ gluing, finishing }: Shop, people: number): Limits => ({
  people,
  clamps: gluing.clamps,
  sprayPlaces: finishing.sprayPlaces,
  rackSlots: finishing.rackSlots,
});

/** Fewer plans for more tasks, so that a large job takes little longer than its first plan does. */
const effortFor = (tasks: number, shop: Shop) => ({
  plans: Math.min(PLANS_MAX, Math.max(1, Math.floor(PLACEMENTS / Math.max(1, tasks)))),
  seed: shop.planning.seed,
});

const PLANS_MAX = 2000;
const PLACEMENTS = 30_000;
