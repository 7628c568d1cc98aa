import type { Schedule, Task } from '../../layout/shop-plan.ts';
import type { Figure, Mark } from '../figure.ts';
import { HIDDEN_DASH, line, type Pen, rectangle, text, WEIGHT } from './pen.ts';

/** What the chart writes: the name of a task, and the head of a day. */
export type ChartWords = {
  readonly task: (task: Task) => string;
  readonly day: (day: { readonly day: number; readonly date: string | undefined }) => string;
};

/**
 * The job as bars: a row for each task, a column for each working day, in charts of at most `rows` rows. Work is
 * black, a wait after it is open; what takes two people is twice as high.
 */
export function dayCharts(
  schedule: Schedule,
  workdaySeconds: number,
  words: ChartWords,
  pen: Pen,
  width: number,
  rows: number,
): readonly Figure[] {
  const charts: Figure[] = [];
  for (let from = 0; from < schedule.tasks.length; from += rows) {
    charts.push(chart(schedule, schedule.tasks.slice(from, from + rows), workdaySeconds, words, pen, width));
  }
  return charts;
}

function chart(
  schedule: Schedule,
  tasks: readonly Task[],
  workdaySeconds: number,
  words: ChartWords,
  pen: Pen,
  width: number,
): Figure {
  const days = Math.max(1, ...schedule.tasks.map(task => task.ends.day + (task.ends.second > 0 ? 1 : 0)));
  const left = 8 + Math.max(...tasks.map(task => pen.measure(words.task(task), 9, false)));
  const perDay = (width - left) / days;
  const place = (moment: { day: number; second: number }): number =>
    left + (moment.day + moment.second / workdaySeconds) * perDay;
  const bottom = HEAD + tasks.length * ROW;
  const heads = Array.from({ length: days }, (_, day) => day);
  // Heads stand on every day that leaves them room.
  const widest = Math.max(...heads.map(day => pen.measure(words.day(dated(schedule, day)), 9, true)));
  const every = Math.max(1, Math.ceil((widest + 6) / perDay));
  return {
    width,
    height: bottom + 4,
    marks: [
      ...heads.flatMap(day => [
        line([left + day * perDay, HEAD - 4], [left + day * perDay, bottom], 0.5),
        ...(day % every === 0
          ? [text([left + day * perDay + 2, HEAD - 8], words.day(dated(schedule, day)), { align: 'left', bold: true })]
          : []),
      ]),
      line([width, HEAD - 4], [width, bottom], 0.5),
      ...tasks.flatMap((task, row) => bar(task, HEAD + row * ROW, place, words, left)),
    ],
  };
}

const dated = (schedule: Schedule, day: number) => ({
  day,
  date: schedule.days.find(each => each.day === day)?.date,
});

function bar(
  task: Task,
  top: number,
  place: (moment: { day: number; second: number }) => number,
  words: ChartWords,
  left: number,
): readonly Mark[] {
  const [from, to] = [place(task.starts), place(task.ends)];
  const middle = top + ROW / 2;
  const thick = task.people > 1 ? 9 : 5;
  return [
    line([0, top + ROW], [to, top + ROW], 0.5, HIDDEN_DASH),
    text([left - 6, middle + 3], words.task(task), { align: 'right' }),
    task.work === 0
      ? rectangle({ x: from, y: middle - 2.5, width: Math.max(1.5, to - from), height: 5 }, WEIGHT.thin, 1)
      : rectangle({ x: from, y: middle - thick / 2, width: Math.max(1.5, to - from), height: thick }, WEIGHT.thin, 0),
  ];
}

const HEAD = 22;
const ROW = 14;
