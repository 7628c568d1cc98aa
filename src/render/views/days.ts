import type { Day, Schedule, Task } from '../../layout/shop-plan.ts';
import { workday } from '../../trade/shop.ts';
import type { Draft, View } from '../draft.ts';
import { dayCharts } from '../drawings/day-chart.ts';
import type { Figure } from '../figure.ts';

/** days.hbs: a bar chart and the plan of each day, for one person and for the people of the shop. */
export type DaysView = { readonly schedules: readonly DaysSchedule[] };
export type DaysSchedule = {
  readonly bookmark: string;
  readonly title: string;
  readonly makespan: string;
  readonly charts: readonly string[];
  readonly days: readonly {
    readonly title: string;
    readonly entries: readonly {
      readonly from: string;
      readonly to: string;
      readonly person: string;
      readonly task: string;
      readonly doors: string;
      readonly alone: boolean;
    }[];
  }[];
};

export function days(draft: Draft): View<DaysView> | undefined {
  const { schedules } = draft.plan.days;
  const figures = new Map<string, Figure>();
  if (schedules.length === 0) return undefined;
  return { data: { schedules: schedules.map(schedule => daysSchedule(schedule, draft, figures)) }, figures };
}

function daysSchedule(schedule: Schedule, draft: Draft, figures: Map<string, Figure>): DaysSchedule {
  const { say } = draft;
  const words = {
    task: (task: Task) => taskName(task, draft),
    day: (day: Pick<Day, 'day' | 'date'>) => dayName(day, draft),
  };
  const charts = dayCharts(schedule, workday(draft.job.shop), words, draft.pen, draft.paperWidth, CHART_ROWS);
  const tasks = new Map(schedule.tasks.map(task => [task.id, task]));
  return {
    bookmark: `days-${schedule.people}`,
    title: schedule.people === 1 ? say('days.lead-one') : say('days.lead', { people: schedule.people }),
    makespan: makespan(schedule, draft),
    charts: charts.map((figure, index) => {
      figures.set(`days-${schedule.people}-${index}`, figure);
      return `days-${schedule.people}-${index}`;
    }),
    days: schedule.days.map(day => ({
      title: dayName(day, draft),
      entries: entries(day, tasks, schedule.people, draft),
    })),
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

function taskName(task: Task, { say, plan }: Draft): string {
  const operation = say(`operation.${task.operation}`);
  if (task.coat !== undefined) {
    const step = plan.finish.steps.find(each => each.number === task.coat?.step);
    return say('days.coat', { step: step?.name ?? operation, number: task.coat.number });
  }
  return task.go > 1 || task.doors.length > 0 ? say('days.go', { operation, go: task.go }) : operation;
}

const entries = (
  day: Day,
  tasks: ReadonlyMap<string, Task>,
  people: number,
  draft: Draft,
): DaysSchedule['days'][number]['entries'] =>
  [...day.entries]
    .sort((a, b) => a.starts - b.starts || a.person - b.person)
    .flatMap(entry => {
      const task = tasks.get(entry.task);
      if (task === undefined) return [];
      return {
        from: clock(entry.starts, draft),
        to: clock(entry.ends, draft),
        person: people === 1 ? '' : draft.say('days.person', { number: entry.person + 1 }),
        task: taskName(task, draft),
        doors: task.doors.length === 0 ? '' : draft.say('days.pieces', { doors: task.doors.length }),
        alone: task.helperAlone,
      };
    });

/** Seconds from the start of work, as the clock on the wall has it. */
function clock(second: number, { job }: Draft): string {
  const [hours = 0, minutes = 0] = job.shop.work.startsAt.split(':').map(Number);
  const total = Math.round(hours * 60 + minutes + second / 60);
  return `${Math.floor(total / 60) % 24}:${`${total % 60}`.padStart(2, '0')}`;
}

/** Rows that fill a page under its heading. */
const CHART_ROWS = 42;
