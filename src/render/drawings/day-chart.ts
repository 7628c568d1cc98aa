import type { Schedule, Task } from '../../layout/shop-plan.ts';
import type { Figure, Mark } from '../figure.ts';
import { grouped } from '../order.ts';
import { LETTERING, line, type Pen, rectangle, text, WEIGHT } from './pen.ts';

/** What the chart writes: the name of a row, and the head of a day. */
export type ChartWords = {
  readonly row: (task: Task) => string;
  readonly day: (day: { readonly day: number; readonly date: string | undefined }) => string;
};

/**
 * The job as bars: a row for each kind of work and a bar for each of its tasks, a column for each working day. Work is
 * black, and the wait after it is a thin open bar.
 */
export function dayChart(
  schedule: Schedule,
  workdaySeconds: number,
  words: ChartWords,
  pen: Pen,
  width: number,
): Figure {
  const rows = [...grouped(schedule.tasks, words.row)];
  const days = schedule.tasks.reduce((most, { over }) => Math.max(most, over.day + (over.second > 0 ? 1 : 0)), 1);
  const left = 8 + Math.max(0, ...rows.map(([name]) => pen.measure(name, LETTERING, false)));
  const perDay = (width - left) / days;
  const bottom = HEAD + rows.length * ROW;
  // A night has no width: what begins or ends in it stands at the evening before.
  const place: Place = ({ day, second }) => left + (day + Math.min(1, second / workdaySeconds)) * perDay;
  return {
    width,
    height: bottom + 4,
    marks: [
      ...heads(schedule, days, { left, perDay, bottom }, words, pen),
      ...rows.flatMap(([name, tasks], row) => {
        const top = HEAD + row * ROW;
        return [
          line([left, top + ROW], [width, top + ROW], WEIGHT.hair),
          text([left - 6, top + ROW - 2.4], name, { align: 'right' }),
          ...tasks.flatMap(task => bars(task, top + ROW / 2, place)),
        ];
      }),
    ],
  };
}

type Place = (moment: { readonly day: number; readonly second: number }) => number;

/** A line at the start of each day, and its name where there is room for it. */
function heads(
  schedule: Schedule,
  days: number,
  at: { readonly left: number; readonly perDay: number; readonly bottom: number },
  words: ChartWords,
  pen: Pen,
): readonly Mark[] {
  const names = Array.from({ length: days }, (_, day) =>
    words.day({ day, date: schedule.days.find(each => each.day === day)?.date }),
  );
  const widest = Math.max(...names.map(name => pen.measure(name, LETTERING, true)));
  const every = Math.max(1, Math.ceil((widest + 6) / at.perDay));
  return [...names, undefined].flatMap((name, day) => {
    const x = at.left + day * at.perDay;
    const named = name !== undefined && day % every === 0 && x + widest <= at.left + days * at.perDay;
    return [
      line([x, HEAD - (named ? 16 : 4)], [x, at.bottom], WEIGHT.hair),
      ...(named ? [text([x + 3, HEAD - 7], name, { align: 'left', bold: true })] : []),
    ];
  });
}

/** The work, and the wait that follows it. */
function bars(task: Task, middle: number, place: Place): readonly Mark[] {
  const [starts, ends, over] = [place(task.starts), place(task.ends), place(task.over)];
  const bar = (from: number, to: number, height: number, fill: number): Mark =>
    rectangle({ x: from, y: middle - height / 2, width: Math.max(1.5, to - from), height }, WEIGHT.thin, fill);
  return [...(task.wait > 0 ? [bar(ends, over, 3, 1)] : []), ...(task.work > 0 ? [bar(starts, ends, 5.5, 0)] : [])];
}

const HEAD = 17;
const ROW = 10;
