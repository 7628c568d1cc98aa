import type { Book, Piece } from './book.ts';
import type { JobState } from './job-state.ts';
import { isDone } from './route.ts';

/** When a job will be done, if the rest of its plan goes as planned from today on. */
export type Forecast = {
  /** Working days that are left, today among them. */
  readonly days: number;
  readonly finish: string;
  /** What the plan said before the work began; empty where the job has no start. */
  readonly planned: string;
};

/**
 * The plan is taken up again where its earliest open task stands, so what comes after keeps its waits and its order.
 * `today` is an ISO date. Undefined where the packet has no plan, or where all of it is done.
 */
export function forecastOf(book: Book, state: JobState, today: string): Forecast | undefined {
  const { schedule } = book.manifest;
  const open = schedule?.tasks.flatMap(task => openDay(book, state, task) ?? []) ?? [];
  if (schedule === null || open.length === 0) return undefined;
  const days = schedule.ends.day - Math.min(...open) + 1;
  return { days, finish: workingDay(schedule, today, days), planned: schedule.ends.date ?? '' };
}

type Schedule = NonNullable<Book['manifest']['schedule']>;

/** The day of the plan that an open task has got to; undefined where it is done, or where nobody scans it. */
function openDay(
  book: Book,
  state: JobState,
  { operation, doors, starts, ends }: Schedule['tasks'][number],
): number | undefined {
  const pieces = piecesOf(book, doors).filter(piece => piece.route.includes(operation));
  const done = pieces.filter(piece => isDone(state, piece, operation)).length;
  if (done === pieces.length) return undefined;
  return starts.day + Math.floor(((ends.day - starts.day) * done) / pieces.length);
}

const piecesOf = (book: Book, doors: readonly string[]): readonly Piece[] =>
  doors.flatMap(door => [book.pieces.get(door) ?? [], book.partsOfDoor.get(door) ?? []].flat());

/** The date of the `count`-th working day from `today` on. */
function workingDay({ weekdays, daysOff }: Schedule, today: string, count: number): string {
  let day = Date.parse(`${today}T00:00:00Z`);
  let left = count;
  for (let looked = 0; looked < LOOKED_MAX; looked += 1) {
    const date = new Date(day).toISOString().slice(0, 10);
    if (weekdays.includes(new Date(day).getUTCDay() || 7) && !daysOff.includes(date)) left -= 1;
    if (left === 0) return date;
    day += DAY_MS;
  }
  return '';
}

const DAY_MS = 24 * 3600 * 1000;
/** A shop that works on one day a week for ten years. */
const LOOKED_MAX = 3660;
