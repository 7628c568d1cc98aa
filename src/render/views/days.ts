import type { Day, Schedule, Task } from '../../layout/shop-plan.ts';
import { workday } from '../../trade/shop.ts';
import type { Draft, View } from '../draft.ts';
import { dayChart } from '../drawings/day-chart.ts';
import type { Figure } from '../figure.ts';
import { inRows } from '../order.ts';

/** days.hbs: a bar chart and the plan of each day, for one person and for the people of the shop. */
export type DaysView = { readonly schedules: readonly DaysSchedule[] };
export type DaysSchedule = {
  readonly bookmark: string;
  readonly title: string;
  readonly makespan: string;
  readonly chart: string;
  /** Three days to a row. */
  readonly rows: readonly (readonly DayView[])[];
};
export type DayView = { readonly title: string; readonly entries: readonly DayEntry[] };
export type DayEntry = {
  readonly from: string;
  readonly to: string;
  readonly person: string;
  readonly task: string;
  /** Whether a helper can do it alone. */
  readonly alone: boolean;
};

export function days(draft: Draft): View<DaysView> | undefined {
  const { schedules } = draft.plan.days;
  const figures = new Map<string, Figure>();
  if (schedules.length === 0) return undefined;
  return { data: { schedules: schedules.map(schedule => daysSchedule(schedule, draft, figures)) }, figures };
}

function daysSchedule(schedule: Schedule, draft: Draft, figures: Map<string, Figure>): DaysSchedule {
  const { say } = draft;
  const chart = `days-${schedule.people}`;
  const words = {
    row: (task: Task) => workName(task, draft),
    day: (day: Pick<Day, 'day' | 'date'>) => shortDay(day),
  };
  figures.set(chart, dayChart(schedule, workday(draft.job.shop), words, draft.pen, draft.paperWidth));
  const tasks = new Map(schedule.tasks.map(task => [task.id, task]));
  return {
    bookmark: `days-${schedule.people}`,
    title: schedule.people === 1 ? say('days.lead-one') : say('days.lead', { people: schedule.people }),
    makespan: makespan(schedule, draft),
    chart,
    rows: inRows(
      schedule.days
        .filter(day => day.entries.length > 0)
        .map(day => ({ title: dayName(day, draft), entries: entries(day, tasks, schedule.people, draft) })),
      DAYS_IN_ROW,
    ).map(row => [...row, ...NO_DAYS.slice(row.length)]),
  };
}

function makespan(schedule: Schedule, draft: Draft): string {
  const days = (seconds: number): string => (Math.ceil((seconds / workday(draft.job.shop)) * 10) / 10).toString();
  const sentence = draft.say('days.makespan', {
    days: days(schedule.makespan),
    bound: days(schedule.bound.makespan),
    by: draft.say(`days.by.${schedule.bound.by}`),
  });
  return schedule.proven ? `${sentence} ${draft.say('days.proven')}` : sentence;
}

const dayName = (day: Pick<Day, 'day' | 'date'>, { say }: Draft): string =>
  day.date === undefined ? say('days.day', { number: day.day + 1 }) : `${day.day + 1} · ${day.date}`;

/** `12-18`, below its number. */
const shortDay = ({ day, date }: Pick<Day, 'day' | 'date'>): string =>
  date === undefined ? `${day + 1}` : `${day + 1} · ${date.slice(5)}`;

/** What is done, whichever batch it is done to. */
function workName(task: Task, { say, plan }: Draft): string {
  if (task.coat === undefined) return say(`operation.${task.operation}`);
  const step = plan.finish.steps.find(each => each.number === task.coat?.step);
  return say('days.coat', { step: step?.name ?? say(`operation.${task.operation}`), number: task.coat.number });
}

/** What one person does on a day; the same work on one batch after the other is one entry. */
function entries(day: Day, tasks: ReadonlyMap<string, Task>, people: number, draft: Draft): readonly DayEntry[] {
  const spans: { person: number; starts: number; ends: number; tasks: Task[] }[] = [];
  for (const entry of [...day.entries].sort((a, b) => a.person - b.person || a.starts - b.starts)) {
    const task = tasks.get(entry.task);
    const last = spans.at(-1);
    if (task === undefined) continue;
    const goesOn =
      last?.person === entry.person && last.tasks.every(each => workName(each, draft) === workName(task, draft));
    if (goesOn) Object.assign(last, { ends: entry.ends, tasks: [...last.tasks, task] });
    else spans.push({ person: entry.person, starts: entry.starts, ends: entry.ends, tasks: [task] });
  }
  return spans
    .sort((a, b) => a.starts - b.starts || a.person - b.person)
    .map(span => ({
      from: clock(span.starts, draft),
      to: clock(span.ends, draft),
      person: people === 1 ? '' : `${span.person}`,
      task: entryName(span.tasks, draft),
      alone: span.tasks.every(task => task.helperAlone),
    }));
}

/** `Sand flush 2, 3` where there are batches. */
function entryName(tasks: readonly Task[], draft: Draft): string {
  const [first] = tasks;
  if (first === undefined) return '';
  const batches = tasks.filter(task => task.doors.length > 0).map(task => task.go);
  return [workName(first, draft), [...new Set(batches)].join(', ')].filter(Boolean).join(' ');
}

/** Seconds from the start of work, as the clock on the wall has it. */
function clock(second: number, { job }: Draft): string {
  const [hours = 0, minutes = 0] = job.shop.work.startsAt.split(':').map(Number);
  const total = Math.round(hours * 60 + minutes + second / 60);
  return `${Math.floor(total / 60) % 24}:${`${total % 60}`.padStart(2, '0')}`;
}

const DAYS_IN_ROW = 3;
const NO_DAYS: readonly DayView[] = Array.from({ length: DAYS_IN_ROW }, () => ({ title: '', entries: [] }));
