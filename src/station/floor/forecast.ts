import { forecast, type Now, type PlannedDays, type Progressed } from '../../layout/days/forecast.ts';
import { duration } from '../../units/duration.ts';
import type { Book, Piece } from './book.ts';
import { currentMarks, type JobState, pieceState } from './job-state.ts';
import { isDone } from './route.ts';

/** When a job will be done, if the rest of its plan goes as planned from now on. */
export type Forecast = {
  /** Working days that are left, today among them while the shop still works. */
  readonly days: number;
  readonly finish: string;
  /** What the plan said before the work began; empty where the job has no start. */
  readonly planned: string;
};

/**
 * What is left is planned again from `now`, with all waits, people, clamps and racks. `now` is the host's clock, whose
 * time of day is the shop's. Undefined where the packet has no plan, or where all of it is done.
 */
export function forecastOf(book: Book, state: JobState, now: Date): Forecast | undefined {
  const { schedule } = book.manifest;
  if (schedule === null) return undefined;
  const progress = progressed(schedule, book, state, now);
  const isOpen = schedule.tasks.some(task => task.work > 0 && (progress.get(task.id)?.left ?? 1) > 0);
  if (!isOpen) return undefined;
  const { day, date } = forecast(plannedDays(schedule), progress, shopTime(now, schedule.hours.startsAt));
  return date === undefined ? undefined : { days: day + 1, finish: date, planned: schedule.ends.date ?? '' };
}

type Schedule = NonNullable<Book['manifest']['schedule']>;

const plannedDays = ({ hours, limits, tasks }: Schedule): PlannedDays => ({
  hours,
  limits,
  tasks: tasks.map(task => ({ ...task, work: duration(task.work), wait: duration(task.wait) })),
});

/** How far each task is of which anything is done. */
function progressed(schedule: Schedule, book: Book, state: JobState, now: Date): ReadonlyMap<string, Progressed> {
  const progress = new Map<string, Progressed>();
  for (const task of schedule.tasks) {
    const pieces = piecesOf(task, book);
    const done = pieces.filter(piece => isDone(state, piece, task.operation));
    if (done.length === 0) continue;
    const last = done.reduce((latest, piece) => Math.max(latest, doneAt(state, piece, task.operation)), 0);
    const doneAgo = Math.max(0, (now.getTime() - last) / 1000);
    progress.set(task.id, { left: 1 - done.length / pieces.length, doneAgo });
  }
  return progress;
}

/** Those that are run in a task: all of its operation, or those of its doors. */
function piecesOf({ operation, doors }: Schedule['tasks'][number], book: Book): readonly Piece[] {
  const all = book.operations.get(operation)?.pieces ?? [];
  if (doors.length === 0) return all;
  const own = new Set(doors);
  return all.filter(piece => own.has(piece.door));
}

const doneAt = (state: JobState, piece: Piece, operation: string): number =>
  currentMarks(pieceState(state, piece.code))
    .filter(mark => mark.operation === operation)
    .reduce((latest, mark) => Math.max(latest, Date.parse(mark.serverTime)), 0);

function shopTime(now: Date, startsAt: string): Now {
  const [hour = 0, minute = 0] = startsAt.split(':').map(Number);
  const two = (value: number): string => `${value}`.padStart(2, '0');
  return {
    date: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`,
    second: (now.getHours() - hour) * 3600 + (now.getMinutes() - minute) * 60 + now.getSeconds(),
  };
}
