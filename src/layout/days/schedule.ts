import type { Shop } from '../../trade/shop.ts';
import { duration } from '../../units/duration.ts';
import type { Schedule, Task } from '../shop-plan.ts';
import type { Calendar } from './calendar.ts';
import { daysOf } from './crew.ts';
import { type Limits, projectOf, RESOURCES, withWaits } from './limits.ts';
import type { Bound } from './project/bound.ts';
import type { Plan } from './project/project.ts';
import { searchFor } from './project/search.ts';
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
  const { steps, plan, bound } = bestOf(splits, people, shop, calendar, fewer);
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
  fewer: Scheduled | undefined,
): Pick<Scheduled, 'steps' | 'plan'> & { readonly bound: Bound } {
  const looked = splits.map(steps => {
    const worked = withWaits(steps);
    const plans = plansFor(worked.length);
    const search = searchFor(projectOf(worked, limitsOf(shop, people), calendar), shop.planning.seed);
    return { steps, search, plans, makespan: search.until(Math.ceil(plans / (4 * splits.length))).plan.makespan };
  });
  const { steps, search, plans } = looked.reduce((best, each) =>
    each.makespan < best.makespan - calendar.secondsADay / 2 ? each : best,
  );
  const { plan, bound } = search.until(plans);
  const theirs = looked.find(each => each.steps === fewer?.steps);
  return fewer !== undefined && theirs !== undefined && fewer.plan.makespan < plan.makespan
    ? { steps: fewer.steps, plan: fewer.plan, bound: theirs.search.bound }
    : { steps, plan, bound };
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
const plansFor = (tasks: number): number =>
  Math.min(PLANS_MAX, Math.max(1, Math.floor(PLACEMENTS / Math.max(1, tasks))));

const PLANS_MAX = 2000;
const PLACEMENTS = 10_000;
