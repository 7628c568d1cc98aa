import { describe, expect, it } from 'vitest';
import { bookOf } from '../../src/station/floor/book.ts';
import type { KeptEvent } from '../../src/station/floor/event.ts';
import { forecastOf } from '../../src/station/floor/forecast.ts';
import { replay } from '../../src/station/floor/job-state.ts';
import { aManifest } from '../support/manifest.ts';

const manifest = aManifest({ cabinets: ['B1'] });
const book = bookOf(manifest);

/** The state after all pieces had these operations. */
const having = (operations: readonly string[]) =>
  replay(
    operations.map(
      (operation, at): KeptEvent => ({
        key: operation,
        seq: at + 1,
        job: 'K7',
        revision: 'A',
        station: '',
        device: '',
        deviceTime: '',
        serverTime: '2026-03-03T12:00:00.000Z',
        what: {
          kind: 'done',
          operation,
          pieces: [...book.pieces.keys()].map(code => ({ code, remake: 0 })),
          skipped: [],
          reason: '',
          setup: null,
        },
      }),
    ),
  );

/** Eight in the morning of a day, by the host's clock. */
const morning = (date: string): Date => new Date(`${date}T08:00:00`);

// Twelve tasks, one a working day; the shop works Monday to Friday and not on Tuesday 17 March 2026. 4 March 2026 is a Wednesday.
describe('the forecast', () => {
  const all = manifest.operations.map(each => each.id).filter(id => id !== 'rest' && id !== 'cure');
  it.each([
    {
      done: 0,
      today: '2026-03-04',
      days: 12,
      finish: '2026-03-20',
      why: 'nothing done: Wed 4 is the first of 12 days, Tue 17 is off',
    },
    { done: 0, today: '2026-03-07', days: 12, finish: '2026-03-25', why: 'asked on a Saturday: work begins on Monday' },
    { done: 4, today: '2026-03-04', days: 8, finish: '2026-03-13', why: 'four days of the plan are behind' },
    {
      done: 11,
      today: '2026-03-17',
      days: 1,
      finish: '2026-03-18',
      why: 'the last day falls on the day off, and moves',
    },
  ])('with $done of 12 tasks done on $today is $finish: $why', ({ done, today, days, finish }) => {
    expect(forecastOf(book, having(all.slice(0, done)), morning(today))).toEqual({
      days,
      finish,
      planned: '2026-03-20',
    });
  });

  it('is none once everything is done, or where the packet has no plan', () => {
    expect(forecastOf(book, having(all), morning('2026-03-04'))).toBeUndefined();
    expect(forecastOf(bookOf({ ...manifest, schedule: null }), having([]), morning('2026-03-04'))).toBeUndefined();
  });

  it('counts what was done ahead of its turn', () => {
    expect(forecastOf(book, having(all.slice(1)), morning('2026-03-04'))).toMatchObject({ days: 1 });
  });

  it('counts from the hour at which it is asked', () => {
    const at = (time: string) => forecastOf(book, having(all.slice(0, 11)), new Date(`2026-03-04T${time}:00`))?.finish;
    expect([at('08:00'), at('08:01'), at('17:00')]).toEqual(['2026-03-04', '2026-03-05', '2026-03-05']);
  });

  it('waits for what is still in clamps', () => {
    const { schedule } = manifest;
    if (schedule === null) throw new Error('no schedule');
    // The last but one was done at noon of the day before, by the clock of London, and wants 48 hours.
    const tasks = schedule.tasks.map((task, at) => ({ ...task, wait: at === 10 ? 48 * 3600 : 0 }));
    const waiting = bookOf({ ...manifest, schedule: { ...schedule, tasks } });
    expect(forecastOf(waiting, having(all.slice(0, 11)), morning('2026-03-04'))?.finish).toBe('2026-03-06');
  });

  it('counts the share of a long task that is done', () => {
    const at = (day: number) => ({ day, date: null });
    const { schedule } = manifest;
    const [task] = schedule?.tasks.filter(each => each.id === 'groove') ?? [];
    if (schedule === null || task === undefined) throw new Error('no schedule');
    const slow = bookOf({
      ...manifest,
      schedule: {
        ...schedule,
        hours: { ...schedule.hours, weekdays: [1, 2, 3, 4, 5, 6, 7], daysOff: [] },
        ends: at(4),
        tasks: [{ ...task, work: 5 * task.work, after: [] }],
      },
    });
    const half = having(['groove']);
    half.pieces.set('B1.A.1L-SL', { marks: [], spoils: [], done: new Set() });
    half.pieces.set('B1.A.1L-SR', { marks: [], spoils: [], done: new Set() });
    expect(forecastOf(slow, having([]), morning('2026-03-04'))).toEqual({ days: 5, finish: '2026-03-08', planned: '' });
    expect(forecastOf(slow, half, morning('2026-03-04'))).toEqual({ days: 3, finish: '2026-03-06', planned: '' });
  });
});
