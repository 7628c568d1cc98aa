import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calendarOf, worksAtAll } from '../../../src/layout/days/calendar.ts';
import { dateOf, dayNumber, weekdayOf } from '../../../src/layout/days/dates.ts';
import { shopDefaults } from '../../../src/trade/shop-defaults.ts';
import { law, RUNS } from '../../support/runs.ts';

const { work } = shopDefaults('inch', 'letter');
const HOUR = 3600;
const DAY = 8 * HOUR;

describe('dates', () => {
  it('every day from 1896 to 2105 is the one that the language’s own calendar says', () => {
    const wrong: string[] = [];
    for (let day = dayNumber('1896-01-01') ?? 0; day < 49_500; day += 1) {
      const date = new Date(day * 86_400_000);
      const written = date.toISOString().slice(0, 10);
      const same = dateOf(day) === written && dayNumber(written) === day && weekdayOf(day) % 7 === date.getUTCDay();
      if (!same) wrong.push(written);
    }
    expect(wrong).toEqual([]);
  });

  it.each(['', '2026-1-5', 'Monday', '2026/01/05'])('%j is no date', text => {
    expect(dayNumber(text)).toBeUndefined();
  });
});

// A week of five days of eight hours from Monday, 5 January 2026; the clock starts with the work, at 8 say.
describe('waits run by the clock', () => {
  const calendar = calendarOf({ ...work, startDate: '2026-01-05', daysOff: ['2026-01-14'] });
  const { clock } = calendar;

  it.each([
    { end: 3 * HOUR, wait: 2 * HOUR, over: 5 * HOUR, why: 'within the day' },
    { end: 7 * HOUR, wait: 2 * HOUR, over: DAY, why: 'over in the evening: on with the work next morning' },
    { end: DAY, wait: 0, over: DAY, why: 'no wait: at once' },
    { end: DAY, wait: 16 * HOUR, over: DAY, why: 'just the night' },
    { end: DAY, wait: 17 * HOUR, over: DAY + HOUR, why: 'the night and an hour' },
    { end: 2 * HOUR, wait: 24 * HOUR, over: DAY + 2 * HOUR, why: 'the same time next day' },
    { end: 2 * HOUR, wait: 48 * HOUR, over: 2 * DAY + 2 * HOUR, why: 'two days on' },
    { end: 5 * DAY, wait: 48 * HOUR, over: 5 * DAY, why: 'the weekend takes two days out of the wait' },
    { end: 5 * DAY, wait: 65 * HOUR, over: 5 * DAY + HOUR, why: 'an hour more than the weekend' },
    { end: 7 * DAY, wait: 24 * HOUR, over: 7 * DAY, why: 'over on the day off: on with the work on Thursday morning' },
    { end: 6 * DAY + 2 * HOUR, wait: 48 * HOUR, over: 7 * DAY + 2 * HOUR, why: 'from Tuesday over the day off' },
  ])('$why', ({ end, wait, over }) => {
    expect(clock.after(end, wait)).toBe(over);
    expect(clock.before(over, wait)).toBeGreaterThanOrEqual(end);
  });

  it.each([
    { wait: 16 * HOUR, least: 0, why: 'a night' },
    { wait: 64 * HOUR, least: 0, why: 'a weekend' },
    { wait: 70 * HOUR, least: 6 * HOUR, why: 'a weekend and six hours' },
  ])('$why takes $least s of working time at least', ({ wait, least }) => {
    expect(clock.least(wait)).toBe(least);
  });

  it('names days and dates; a day ends on its own evening', () => {
    expect(calendar.startOf(DAY)).toEqual({ day: 1, date: '2026-01-06', second: 0 });
    expect(calendar.endOf(DAY)).toEqual({ day: 0, date: '2026-01-05', second: DAY });
    expect(calendar.endOf(0)).toEqual({ day: 0, date: '2026-01-05', second: 0 });
    expect(calendar.dateOfDay(5)).toBe('2026-01-12');
    expect(calendar.dateOfDay(7)).toBe('2026-01-15');
  });

  it('begins on the first working day after a start on a Saturday', () => {
    expect(calendarOf({ ...work, startDate: '2026-01-10' }).dateOfDay(0)).toBe('2026-01-12');
  });

  it('has weekends and no dates where the shop names no start', () => {
    const open = calendarOf({ ...work, startDate: undefined });
    expect(open.startOf(0)).toEqual({ day: 0, date: undefined, second: 0 });
    expect(open.clock.after(5 * DAY, 48 * HOUR)).toBe(5 * DAY);
  });
});

describe('whatever the hours', () => {
  const hours = fc.record({
    weekdays: fc.subarray([1, 2, 3, 4, 5, 6, 7], { minLength: 1 }),
    hoursPerDay: fc.integer({ min: 1, max: 24 }),
    daysOff: fc.subarray(['2026-01-05', '2026-01-06', '2026-01-14', '2026-01-15', '2026-01-16', '2026-02-02']),
  });
  const aTime = fc.integer({ min: 0, max: 600 });

  // The same week walked through hour by hour, with the language's own dates.
  it('a wait is over when so many hours have gone by', () => {
    law(
      [hours, aTime, fc.integer({ min: 1, max: 100 })],
      (shop, endHour, waitHours) => {
        const { clock } = calendarOf({ ...work, ...shop, startDate: '2026-01-03' });
        expect(clock.after(endHour * HOUR, waitHours * HOUR)).toBe(walk(shop, endHour, waitHours) * HOUR);
      },
      Math.ceil(RUNS / 4),
    );
  });

  it('before looks back to where after looks on from', () => {
    law([hours, aTime, fc.integer({ min: 0, max: 100 })], (shop, start, wait) => {
      const { clock } = calendarOf({ ...work, ...shop, startDate: '2026-01-03' });
      const end = clock.before(start * HOUR, wait * HOUR);
      if (end >= 0) expect(clock.after(end, wait * HOUR)).toBeLessThanOrEqual(start * HOUR);
      if (end >= -1) expect(clock.after(end + 1, wait * HOUR)).toBeGreaterThan(start * HOUR);
    });
  });

  it('no wait takes less than the least', () => {
    law([hours, aTime, fc.integer({ min: 0, max: 100 })], (shop, end, wait) => {
      const { clock } = calendarOf({ ...work, ...shop, startDate: '2026-01-03' });
      expect(clock.after(end * HOUR, wait * HOUR) - end * HOUR).toBeGreaterThanOrEqual(clock.least(wait * HOUR));
    });
  });
});

it.each([
  [{ weekdays: [], hoursPerDay: 8 }, false],
  [{ weekdays: [1], hoursPerDay: 0 }, false],
  [{ weekdays: [8], hoursPerDay: 8 }, false],
  [{ weekdays: [7], hoursPerDay: 1 }, true],
])('%j works at all: %s', (shop, works) => {
  expect(worksAtAll({ ...work, ...shop })).toBe(works);
});

/** The working hour in which a wait is over, counted from the first working hour of the shop. */
function walk(
  shop: { readonly weekdays: readonly number[]; readonly hoursPerDay: number; readonly daysOff: readonly string[] },
  endHour: number,
  waitHours: number,
): number {
  let worked = 0;
  let waited = endHour === 0 ? 0 : -1;
  for (let clock = Date.parse('2026-01-03'); ; clock += HOUR * 1000) {
    const date = new Date(clock);
    const isOn =
      shop.weekdays.includes(date.getUTCDay() || 7) && !shop.daysOff.includes(date.toISOString().slice(0, 10));
    const works = isOn && date.getUTCHours() < shop.hoursPerDay;
    if (worked === 0 && !works) continue;
    if (waited >= waitHours && works) return worked;
    if (waited >= 0) waited += 1;
    if (works) worked += 1;
    if (worked === endHour && waited < 0) waited = 0;
  }
}
