import { type Duration, duration } from '../../units/duration.ts';
import type { Moment } from '../shop-plan.ts';
import { calendarOf, type Hours } from './calendar.ts';
import { dayNumber } from './dates.ts';
import { type Limits, type Planned, projectOf, withWaits } from './limits.ts';
import { shortPlan } from './project/search.ts';

/** A planned job, as the packet's manifest keeps it. */
export type PlannedDays = {
  readonly hours: Omit<Hours, 'startDate'>;
  readonly limits: Limits;
  readonly tasks: readonly Planned[];
};

/** How far a task is: the share of its work that is left, and how long ago its last piece was done. */
export type Progressed = { readonly left: number; readonly doneAgo: number };

/** `second` counts from the start of work on that day, and may lie before it or after its end. */
export type Now = { readonly date: string; readonly second: number };

/**
 * When the rest of a job is done, if everybody goes on as planned from now. What is done drops out, and what was begun
 * keeps its share; of a wait that began with work that is done, only the rest is waited for. A task that nobody has
 * touched has no entry in `progress`; what only waits never has one.
 */
export function forecast(days: PlannedDays, progress: ReadonlyMap<string, Progressed>, now: Now): Moment {
  const { from, second, gap } = nextWork(days.hours, now);
  const calendar = calendarOf({ ...days.hours, startDate: from });
  const steps = [untilNow(second), ...remaining(days.tasks, progress, gap)];
  const { plan } = shortPlan(projectOf(withWaits(steps), days.limits, calendar), EFFORT);
  return calendar.endOf(plan.makespan);
}

/** Where in the working time work goes on: now, or on the next morning; `gap` is the time by the clock until then. */
function nextWork(
  hours: PlannedDays['hours'],
  { date, second }: Now,
): { readonly from: string; readonly second: number; readonly gap: number } {
  const calendar = calendarOf({ ...hours, startDate: date });
  const isToday = calendar.dateOfDay(0) === date && second < calendar.secondsADay;
  if (isToday && second >= 0) return { from: date, second, gap: 0 };
  const from = calendar.dateOfDay(calendar.dateOfDay(0) === date && !isToday ? 1 : 0) ?? date;
  const nights = (dayNumber(from) ?? 0) - (dayNumber(date) ?? 0);
  return { from, second: 0, gap: nights * SECONDS_BY_THE_CLOCK - second };
}

/** What is left to do, and to wait for: each after those that it comes after and that are not over, or from now on. */
function remaining(
  tasks: readonly Planned[],
  progress: ReadonlyMap<string, Progressed>,
  gap: number,
): readonly Planned[] {
  const ages = agesOf(tasks, progress, gap);
  const steps: Planned[] = [];
  const kept = new Set<string>();
  for (const task of tasks) {
    const age = ages.get(task.id);
    if (age !== undefined && age >= task.wait) continue;
    kept.add(task.id);
    if (age !== undefined) {
      steps.push({ ...task, after: [NOW], work: duration(0), people: 0, wait: duration(Math.round(task.wait - age)) });
      continue;
    }
    const after = task.after.filter(id => kept.has(id));
    steps.push({ ...task, after: after.length > 0 ? after : [NOW], work: leftOf(task, progress) });
  }
  return steps;
}

/** How long ago the work of each task was done when work goes on. What only waits is done when all that it waits for is over. */
function agesOf(
  tasks: readonly Planned[],
  progress: ReadonlyMap<string, Progressed>,
  gap: number,
): ReadonlyMap<string, number> {
  const ages = new Map<string, number>();
  const waits = new Map(tasks.map(task => [task.id, task.wait]));
  for (const task of tasks) {
    const own = progress.get(task.id);
    if (own !== undefined && own.left <= 0) ages.set(task.id, own.doneAgo + gap);
    if (own !== undefined || task.work > 0) continue;
    const begun = task.after.map(id => (ages.get(id) ?? Number.NEGATIVE_INFINITY) - (waits.get(id) ?? 0));
    const age = begun.reduce((least, each) => Math.min(least, each), Number.POSITIVE_INFINITY);
    if (begun.length > 0 && age >= 0) ages.set(task.id, age);
  }
  return ages;
}

const leftOf = (task: Planned, progress: ReadonlyMap<string, Progressed>): Duration =>
  duration(Math.round(task.work * Math.min(1, Math.max(0, progress.get(task.id)?.left ?? 1))));

/** What has gone of the day already: nothing else begins before it is over. */
const untilNow = (seconds: number): Planned => ({
  id: NOW,
  people: 0,
  helperAlone: true,
  takes: { clamps: 0, sprayPlaces: 0, rackSlots: 0 },
  work: duration(seconds),
  wait: duration(0),
  after: [],
});

const NOW = 'until now';
const SECONDS_BY_THE_CLOCK = 86_400;
/** Asked for at every look at the progress, so it takes few plans. */
const EFFORT = { plans: 30, seed: 1 };
