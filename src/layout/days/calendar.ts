import assert from 'node:assert';
import type { Shop } from '../../trade/shop.ts';
import type { Moment } from '../shop-plan.ts';
import { dateOf, dayNumber, weekdayOf } from './dates.ts';
import type { Clock } from './project/project.ts';

/**
 * A shop's working time as one line: second 0 is the start of work on the first day, and where a day ends the next one
 * begins. Work runs along this line and stops for the night; a wait runs by the clock, over nights, weekends and days
 * off, and so takes little of the line or nothing.
 */
export type Calendar = {
  readonly clock: Clock;
  readonly secondsADay: number;
  readonly startOf: (time: number) => Moment;
  /** The end of a day's work is still that day. */
  readonly endOf: (time: number) => Moment;
  /** The moment by the clock at which a wait is over; in the night it is counted from the morning before. */
  readonly waited: (from: Moment, wait: number) => Moment;
  readonly dateOfDay: (day: number) => string | undefined;
};

/** When a shop works. */
export type Hours = Pick<Shop['work'], 'hoursPerDay' | 'weekdays' | 'daysOff' | 'startDate'>;

/** Throws where nobody ever works; `worksAtAll` says whether that is so. */
export function calendarOf(work: Hours, from: string | undefined = work.startDate): Calendar {
  assert(worksAtAll(work), 'a calendar without working time');
  const first = from === undefined ? undefined : dayNumber(from);
  const secondsADay = Math.round(work.hoursPerDay * 3600);
  const dayAt = workingDays(work, first ?? MONDAY);
  const off = work.daysOff.flatMap(date => dayNumber(date) ?? []);
  // Breaks repeat from week to week once the last day off is over.
  const usualFrom = off.reduce((latest, day) => Math.max(latest, day), first ?? MONDAY) + DAYS_A_WEEK;
  const moment = (day: number, second: number): Moment => ({ day, date: dateOfDay(day), second });
  const dateOfDay = (day: number): string | undefined => (first === undefined ? undefined : dateOf(dayAt(day)));
  return {
    clock: clockOf(secondsADay, dayAt, usualFrom),
    secondsADay,
    dateOfDay,
    startOf: time => moment(Math.floor(time / secondsADay), time % secondsADay),
    endOf: time => moment(eveningOf(time, secondsADay), time - eveningOf(time, secondsADay) * secondsADay),
    waited: (from, wait) => {
      const over = dayAt(from.day) * SECONDS_BY_THE_CLOCK + from.second + wait;
      let { day } = from;
      while (dayAt(day + 1) * SECONDS_BY_THE_CLOCK <= over) day += 1;
      return moment(day, over - dayAt(day) * SECONDS_BY_THE_CLOCK);
    },
  };
}

export const worksAtAll = (work: Pick<Hours, 'weekdays' | 'hoursPerDay'>): boolean =>
  work.weekdays.some(day => day >= 1 && day <= 7) && work.hoursPerDay > 0;

/** The day number of each working day, counted from the first at or after `from`. */
function workingDays(work: Hours, from: number): (day: number) => number {
  const off = new Set(work.daysOff.map(dayNumber));
  const days: number[] = [];
  let next = from;
  return day => {
    while (days.length <= day) {
      if (work.weekdays.includes(weekdayOf(next)) && !off.has(next)) days.push(next);
      next += 1;
    }
    return days[day] ?? next;
  };
}

function clockOf(secondsADay: number, dayAt: (day: number) => number, usualFrom: number): Clock {
  /** Seconds by the clock from the start of work on the first day to that on another. */
  const dawn = (day: number): number => (dayAt(day) - dayAt(0)) * SECONDS_BY_THE_CLOCK;
  const passed = (from: number, second: number, wait: number): number => {
    const over = dawn(from) + second + wait;
    let day = from;
    while (dawn(day) + secondsADay <= over) day += 1;
    return day * secondsADay + Math.max(0, over - dawn(day));
  };
  const after = (end: number, wait: number): number => {
    const day = eveningOf(end, secondsADay);
    return wait === 0 ? end : passed(day, end - day * secondsADay, wait);
  };
  const afterIdle = (start: number, wait: number): number =>
    wait === 0 ? start : passed(Math.floor(start / secondsADay), start % secondsADay, wait);
  const before = (start: number, wait: number): number => {
    if (wait === 0) return start;
    let day = Math.floor(start / secondsADay);
    const begun = dawn(day) + start - day * secondsADay - wait;
    while (day >= 0 && dawn(day) > begun) day -= 1;
    return day < 0 ? begun : day * secondsADay + Math.min(secondsADay, begun - dawn(day));
  };
  return {
    after,
    afterIdle,
    before,
    least: leastOf(secondsADay, day => dayAt(day) > usualFrom + DAYS_A_WEEK, after, before),
  };
}

/** The day whose work ends at `end`, or is going on then. */
const eveningOf = (end: number, secondsADay: number): number => Math.max(0, Math.ceil(end / secondsADay) - 1);

/** A wait takes least of the working time where it begins with a break or ends with one. */
function leastOf(
  secondsADay: number,
  isUsual: (day: number) => boolean,
  after: Clock['after'],
  before: Clock['before'],
): Clock['least'] {
  const known = new Map<number, number>([[0, 0]]);
  return wait => {
    const remembered = known.get(wait);
    if (remembered !== undefined) return remembered;
    let least = Number.POSITIVE_INFINITY;
    for (let day = 1; !isUsual(day); day += 1) {
      const time = day * secondsADay;
      const begun = before(time, wait);
      least = Math.min(least, after(time, wait) - time, begun < 0 ? least : time - begun);
    }
    known.set(wait, least);
    return least;
  };
}

const SECONDS_BY_THE_CLOCK = 86_400;
/** Where no date is given, the first day is taken for a Monday: 5 January 1970. */
const MONDAY = 4;
const DAYS_A_WEEK = 7;
