import type { DoorSet } from '../../calculate/door-set.ts';
import { type Diagnosed, type Diagnostic, problem } from '../../diagnostics/diagnostic.ts';
import type { Job } from '../../import/job.ts';
import type { DayPlan, FinishPlan, GlueUpBatch, Operation, Schedule } from '../shop-plan.ts';
import { calendarOf, worksAtAll } from './calendar.ts';
import { type Scheduled, scheduleFor } from './schedule.ts';
import { stepsOf } from './steps.ts';

/**
 * When what is done: a schedule for one person, for one and a helper, and for the people that the shop has. All of them
 * keep the shop's hours, its clamps, its spray places and its drying rack. The same job gives the same days.
 */
export function planDays(
  job: Job,
  doorSet: DoorSet,
  operations: readonly Operation[],
  batches: readonly GlueUpBatch[],
  finish: FinishPlan,
): Diagnosed<DayPlan> {
  const { work } = job.shop;
  if (!worksAtAll(work)) return { value: { schedules: [] }, diagnostics: [problem('no-working-time', IN_SHOP, {})] };
  const laid = { operations, batches, finish };
  const finer = doorSet.doors.length > DOORS_SPLIT_MAX || finish.steps.length === 0 ? [1] : FINER;
  const splits = finer.map(times => stepsOf(job, doorSet, laid, times));
  const calendar = calendarOf(work);
  const crews = [...new Set([1, 2, Math.max(1, work.people)])].sort((a, b) => a - b);
  const scheduled: Scheduled[] = [];
  for (const people of crews) scheduled.push(scheduleFor(splits, people, job.shop, calendar, scheduled.at(-1)));
  const schedules = scheduled.map(each => each.schedule);
  return { value: { schedules }, diagnostics: schedules.flatMap(schedule => isInTime(job, schedule)) };
}

/** The people that the shop has must be done on the due date; what is missed by others is for the packet to show. */
function isInTime(job: Job, schedule: Schedule): readonly Diagnostic[] {
  const { dueDate } = job;
  const done = schedule.ends.date;
  if (schedule.people !== Math.max(1, job.shop.work.people) || dueDate === undefined || done === undefined) return [];
  if (done <= dueDate) return [];
  const late = schedule.days.filter(day => day.date !== undefined && day.date > dueDate).length;
  return [
    problem(
      'due-date-missed',
      { kind: 'sheet', sheet: 'Job' },
      { due: dueDate, done, days: late, people: schedule.people, by: schedule.bound.by },
    ),
  ];
}

/** So many times as many loads as the drying rack asks for: one dries while another is coated, but each is set up for. */
const FINER = [1, 2, 3];
/** Larger jobs go in so many loads already that finer ones gain nothing, and trying them takes time. */
const DOORS_SPLIT_MAX = 1000;
const IN_SHOP = { kind: 'sheet', sheet: 'Shop' } as const;
