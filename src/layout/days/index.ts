import type { DoorSet } from '../../calculate/door-set.ts';
import { type Diagnosed, type Diagnostic, problem } from '../../diagnostics/diagnostic.ts';
import type { Job } from '../../import/job.ts';
import type { DayPlan, FinishPlan, GlueUpBatch, Operation, Schedule } from '../shop-plan.ts';
import { calendarOf, worksAtAll } from './calendar.ts';
import { type Scheduled, scheduleFor } from './schedule.ts';
import { fewestLoads, stepsOf } from './steps.ts';

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
  const splits = splitsOf(doorSet, job).map(loads => stepsOf(job, doorSet, laid, loads));
  const calendar = calendarOf(work);
  const crews = [...new Set([1, 2, Math.max(1, work.people)])].sort((a, b) => a - b);
  const scheduled: Scheduled[] = [];
  for (const people of crews) scheduled.push(scheduleFor(splits, people, job.shop, calendar, scheduled.at(-1)));
  const schedules = scheduled.map(each => each.schedule);
  return { value: { schedules }, diagnostics: schedules.flatMap(schedule => isInTime(job, schedule)) };
}

/**
 * In how many loads the doors may go from the clamps to the room: as few as the rack lets them, so that set-ups are made
 * once, or more, so that one load dries while another is worked at. A load of fewer than four doors is no load.
 */
function splitsOf(doorSet: DoorSet, job: Job): readonly number[] {
  const fewest = fewestLoads(doorSet, job);
  const most = doorSet.doors.length > DOORS_SPLIT_MAX ? 1 : Math.floor(doorSet.doors.length / 4);
  return [fewest, ...FINER.map(times => times * fewest).filter(loads => loads <= most)];
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

const FINER = [2, 3, 4, 6];
/** Larger jobs go in so many loads already that finer ones gain nothing, and trying them takes time. */
const DOORS_SPLIT_MAX = 1000;
const IN_SHOP = { kind: 'sheet', sheet: 'Shop' } as const;
