import type { Day, Schedule, Task } from '../../layout/shop-plan.ts';
import { workday } from '../../trade/shop.ts';
import type { Draft, View } from '../draft.ts';
import { dayChart } from '../drawings/day-chart.ts';
import type { Figure } from '../figure.ts';
import { inRows } from '../order.ts';

/** days.hbs: the plan of each day, for the people of the shop, with a bar chart, and for one person alone. */
export type DaysView = { readonly schedules: readonly DaysSchedule[] };
export type DaysSchedule = {
  readonly bookmark: string;
  readonly title: string;
  readonly makespan: string;
  /** Of the people of the shop; empty for one person, where there are more. */
  readonly chart: string;
  /** Four days to a row. */
  readonly rows: readonly (readonly DayView[])[];
};
export type DayView = {
  readonly title: string;
  /** When the last work ends. */
  readonly until: string;
  readonly entries: readonly DayEntry[];
};
export type DayEntry = {
  /** When it begins; what follows it is when it ends. */
  readonly from: string;
  readonly person: string;
  readonly task: string;
  /** Whether a helper can do it alone. */
  readonly alone: boolean;
};

export function days(draft: Draft): View<DaysView> | undefined {
  const { schedules } = draft.plan.days;
  const figures = new Map<string, Figure>();
  if (schedules.length === 0) return undefined;
  const people = Math.max(...schedules.map(schedule => schedule.people));
  return {
    data: {
      schedules: [...schedules]
        .sort((a, b) => b.people - a.people)
        .map(schedule => daysSchedule(schedule, schedule.people === people, draft, figures)),
    },
    figures,
  };
}

function daysSchedule(schedule: Schedule, charted: boolean, draft: Draft, figures: Map<string, Figure>): DaysSchedule {
  const { say } = draft;
  const chart = charted ? `days-${schedule.people}` : '';
  const words = {
    row: (task: Task) => workName(task.work > 0 ? task : (waitedFor(task, schedule) ?? task), draft),
    day: (day: Pick<Day, 'day' | 'date'>) => shortDay(day),
  };
  if (charted) figures.set(chart, dayChart(schedule, workday(draft.job.shop), words, draft.pen, draft.paperWidth));
  const tasks = new Map(schedule.tasks.map(task => [task.id, task]));
  return {
    bookmark: `days-${schedule.people}`,
    title: schedule.people === 1 ? say('days.lead-one') : say('days.lead', { people: schedule.people }),
    makespan: makespan(schedule, draft),
    chart,
    rows: inRows(
      schedule.days
        .filter(day => day.entries.length > 0)
        .map(day => ({
          title: dayName(day, draft),
          until: clock(Math.max(...day.entries.map(entry => entry.ends)), draft),
          entries: entries(day, tasks, schedule.people, draft),
        })),
      DAYS_IN_ROW,
    ).map(row => [...row, ...NO_DAYS.slice(row.length)]),
  };
}

/** The work that a wait without work follows: it is drawn in the same row. */
const waitedFor = (task: Task, { tasks }: Schedule): Task | undefined =>
  tasks.find(each => each.work > 0 && task.after.includes(each.id));

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
  if (step?.coats === 1) return step.name;
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

const DAYS_IN_ROW = 4;
const NO_DAYS: readonly DayView[] = Array.from({ length: DAYS_IN_ROW }, () => ({ title: '', until: '', entries: [] }));
