import { describe, expect, it } from 'vitest';
import { forecast, type PlannedDays, type Progressed } from '../../../src/layout/days/forecast.ts';
import type { Planned } from '../../../src/layout/days/limits.ts';
import { duration, hours } from '../../../src/units/duration.ts';

const HOUR = 3600;

/** A task of so many hours, and so many of waiting after it. */
const task = (id: string, work: number, after: readonly string[] = [], changes: Partial<Planned> = {}): Planned => ({
  id,
  people: work > 0 ? 1 : 0,
  helperAlone: false,
  takes: { clamps: 0, sprayPlaces: 0, rackSlots: 0 },
  work: hours(work),
  wait: duration(0),
  after,
  ...changes,
});

// One person, eight hours a day from Monday, 5 January 2026. Saw 4 h, groove 4 h, glue up 2 h with 2 h in clamps, cure
// 24 h, sand 6 h. Planned from Monday morning: saw and groove on Monday, glued by 10:00 (second hour) on Tuesday, out of
// the clamps at the fourth hour, cured at the fourth hour of Wednesday, sanded for the rest of Wednesday and two hours.
const DAYS: PlannedDays = {
  hours: { hoursPerDay: 8, weekdays: [1, 2, 3, 4, 5], daysOff: [] },
  limits: { people: 1, clamps: 4, sprayPlaces: 4, rackSlots: 20 },
  tasks: [
    task('saw', 4),
    task('groove', 4, ['saw']),
    task('glue-up', 2, ['groove'], { wait: hours(2), takes: { clamps: 4, sprayPlaces: 0, rackSlots: 0 } }),
    task('cure', 0, ['glue-up'], { wait: hours(24) }),
    task('sand', 6, ['cure']),
  ],
};

const done = (hoursAgo: number): Progressed => ({ left: 0, doneAgo: hoursAgo * HOUR });
const begun = (left: number): Progressed => ({ left, doneAgo: 0 });

const ends = (progress: { readonly [id: string]: Progressed }, date: string, hour: number) => {
  const { date: on, second } = forecast(DAYS, new Map(Object.entries(progress)), { date, second: hour * HOUR });
  return [on, second / HOUR];
};

describe('when the rest is done', () => {
  it.each([
    {
      why: 'nothing begun, on the first morning: as planned',
      progress: {},
      now: ['2026-01-05', 0],
      ends: ['2026-01-08', 2],
    },
    { why: 'nothing begun, a day later: a day later', progress: {}, now: ['2026-01-06', 0], ends: ['2026-01-09', 2] },
    { why: 'nothing begun on Sunday: on Monday', progress: {}, now: ['2026-01-04', 3], ends: ['2026-01-08', 2] },
    {
      why: 'before the work begins: from its beginning',
      progress: {},
      now: ['2026-01-05', -2],
      ends: ['2026-01-08', 2],
    },
    { why: 'sawn on Monday: as planned', progress: { saw: done(0) }, now: ['2026-01-05', 4], ends: ['2026-01-08', 2] },
    { why: 'sawn an hour late', progress: { saw: done(0) }, now: ['2026-01-05', 5], ends: ['2026-01-08', 3] },
    {
      why: 'half sawn at noon: two hours late',
      progress: { saw: begun(0.5) },
      now: ['2026-01-05', 4],
      ends: ['2026-01-08', 4],
    },
    // Glued at the second hour, 22 h ago, 20 h out of the clamps: 4 h of the cure are left at the start of Wednesday.
    {
      why: 'glued yesterday: only the rest of the cure is waited for',
      progress: { saw: done(30), groove: done(24), 'glue-up': done(22) },
      now: ['2026-01-07', 0],
      ends: ['2026-01-08', 2],
    },
    {
      why: 'asked in the evening, the night counts for the cure',
      progress: { saw: done(20), groove: done(14), 'glue-up': done(7) },
      now: ['2026-01-06', 9],
      ends: ['2026-01-08', 2],
    },
    {
      why: 'glued an hour ago: an hour more in the clamps, and the cure',
      progress: { saw: done(9), groove: done(4), 'glue-up': done(1) },
      now: ['2026-01-06', 3],
      ends: ['2026-01-08', 2],
    },
    {
      why: 'sanding in the middle',
      progress: { saw: done(60), groove: done(50), 'glue-up': done(48), sand: begun(0.5) },
      now: ['2026-01-08', 1],
      ends: ['2026-01-08', 4],
    },
    {
      why: 'sanded out of order, before anybody scanned the cure: only what is left counts',
      progress: { sand: done(1) },
      now: ['2026-01-05', 0],
      // Saw, groove, glue up, clamps and cure, which nobody works at but which must be over.
      ends: ['2026-01-07', 4],
    },
    {
      why: 'all is done: now',
      progress: { saw: done(60), groove: done(50), 'glue-up': done(48), sand: done(0) },
      now: ['2026-01-08', 3],
      ends: ['2026-01-08', 3],
    },
  ] as const)('$why', ({ progress, now, ends: expected }) => {
    expect(ends(progress, now[0], now[1])).toEqual(expected);
  });

  it('waits for the clamps that hold what was glued an hour ago', () => {
    const twice: PlannedDays = {
      ...DAYS,
      tasks: [task('first', 1, [], DAYS.tasks[2]), task('second', 1, [], DAYS.tasks[2])].map((each, at) => ({
        ...each,
        id: `glue-up/${at}`,
        after: [],
      })),
    };
    const { second } = forecast(twice, new Map([['glue-up/0', done(1)]]), { date: '2026-01-05', second: 3 * HOUR });
    // An hour in clamps, two hours of gluing up, two in clamps.
    expect(second / HOUR).toBe(3 + 1 + 2 + 2);
  });
});
