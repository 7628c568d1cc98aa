import type { Shop } from '../../trade/shop.ts';
import { duration } from '../../units/duration.ts';
import type { Schedule, Task } from '../shop-plan.ts';
import type { Calendar } from './calendar.ts';
import { daysOf } from './crew.ts';
import type { Need, Project } from './project/project.ts';
import { shortPlan } from './project/search.ts';
import type { Step } from './steps.ts';

/**
 * The tasks of a job in time, for so many people, and who does what on each day. `splits` are the same work in few loads
 * and in more of them, coarsest first; a finer one is taken where it saves half a day.
 */
export function scheduleFor(
  splits: readonly (readonly Step[])[],
  people: number,
  shop: Shop,
  calendar: Calendar,
): Schedule {
  const steps = bestSplit(splits, people, shop, calendar);
  const project = projectOf(steps, people, shop, calendar);
  const { plan, bound } = shortPlan(project, effortFor(steps.length, shop));
  const tasks = steps.map((step, at) => taskAt(step, plan.starts[at] ?? 0, calendar));
  return {
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
}

function bestSplit(
  splits: readonly (readonly Step[])[],
  people: number,
  shop: Shop,
  calendar: Calendar,
): readonly Step[] {
  let best: readonly Step[] = [];
  let shortest = Number.POSITIVE_INFINITY;
  for (const steps of splits) {
    if (splits.length === 1) return steps;
    const { plan } = shortPlan(projectOf(steps, people, shop, calendar), FIRST_LOOK);
    if (plan.makespan < shortest - calendar.secondsADay / 2) {
      best = steps;
      shortest = plan.makespan;
    }
  }
  return best;
}

/**
 * One of two people or more is the helper, who alone does only what the shop lets him do: of all other work there can be
 * no more at once than there are others.
 */
export function projectOf(steps: readonly Step[], people: number, shop: Shop, { clock }: Calendar): Project {
  const place = new Map(steps.map((step, at) => [step.id, at]));
  return {
    clock,
    capacities: RESOURCES.map(resource => resource.capacity(shop, people)),
    activities: steps.map(step => ({
      duration: step.work,
      wait: step.wait,
      after: step.after.flatMap(id => place.get(id) ?? []),
      needs: RESOURCES.flatMap(({ amount, held }, resource): readonly Need[] =>
        amount(step) > 0 ? [{ resource, amount: amount(step), held }] : [],
      ),
    })),
  };
}

function taskAt(step: Step, start: number, calendar: Calendar): Task {
  const { clamps: _clamps, sprayPlaces: _places, rackSlots: _slots, ...task } = step;
  const starts = calendar.startOf(start);
  return { ...task, starts, ends: step.work === 0 ? starts : calendar.endOf(start + step.work) };
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
  { name: 'clamps', capacity: shop => shop.gluing.clamps, amount: step => step.clamps, held: true },
  { name: 'spray', capacity: shop => shop.finishing.sprayPlaces, amount: step => step.sprayPlaces, held: false },
  { name: 'rack', capacity: shop => shop.finishing.rackSlots, amount: step => step.rackSlots, held: true },
];

const FIRST_LOOK = { plans: 8, seed: 1 };
const PLANS_MAX = 300;
const PLACEMENTS = 20_000;
