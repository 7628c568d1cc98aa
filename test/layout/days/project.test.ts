import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundOf } from '../../../src/layout/days/project/bound.ts';
import { dispatch } from '../../../src/layout/days/project/dispatch.ts';
import { networkOf } from '../../../src/layout/days/project/network.ts';
import { emptyProfile } from '../../../src/layout/days/project/profile.ts';
import { type Activity, PLAIN_CLOCK, type Project } from '../../../src/layout/days/project/project.ts';
import { byRule, RULES } from '../../../src/layout/days/project/rules.ts';
import { shortPlan } from '../../../src/layout/days/project/search.ts';
import { byStart, justify, serial } from '../../../src/layout/days/project/serial.ts';
import { law, RUNS } from '../../support/runs.ts';
import { judgeProject } from './judge-project.ts';

/** Written as in a table: what it takes, what it comes after, how much of the one resource it needs. */
const activity = (duration: number, after: readonly number[] = [], amount = 1, changes: Partial<Activity> = {}) => ({
  duration,
  wait: 0,
  hold: 0,
  after,
  needs: amount === 0 ? [] : [{ resource: 0, amount, held: false }],
  ...changes,
});
const project = (capacity: number, ...activities: readonly Activity[]): Project => ({
  activities,
  capacities: [capacity],
  clock: PLAIN_CLOCK,
});
/** These laws are slow to try: a judge looks at every unit of time. */
const FEWER = Math.ceil(RUNS / 4);
const effort = { plans: 300, seed: 1 };
const shortest = (of: Project, plans = 300) => shortPlan(of, { plans, seed: 1 });

// Worked by hand.
describe('the shortest plan', () => {
  it.each([
    { what: 'nothing', of: project(1), length: 0, by: 'path' },
    {
      what: 'one after the other',
      of: project(9, activity(3), activity(4, [0]), activity(2, [1])),
      length: 9,
      by: 'path',
    },
    { what: 'side by side', of: project(2, activity(3), activity(4)), length: 4, by: 'path' },
    { what: 'one pair of hands', of: project(1, activity(3), activity(4), activity(2)), length: 9, by: 0 },
    { what: 'two pairs of hands', of: project(2, activity(3), activity(4), activity(3)), length: 6, bound: 5, by: 0 },
    {
      what: 'a wait that work fills',
      of: project(1, activity(2, [], 1, { wait: 5 }), activity(1, [0]), activity(4)),
      length: 8,
      by: 'path',
    },
    { what: 'a last wait', of: project(1, activity(2, [], 1, { wait: 5 })), length: 7, by: 'path' },
    { what: 'what needs nothing', of: project(1, activity(5, [], 0), activity(5)), length: 5, by: 'path' },
  ])('$what: $length', ({ of, length, bound: least = length, by }) => {
    const { plan, bound } = shortest(of);
    expect(judgeProject(of, plan)).toEqual([]);
    expect([plan.makespan, bound]).toEqual([length, { makespan: least, by }]);
  });

  it('holds a clamp until the wait is over, but nobody stands beside it', () => {
    // One clamp, one person. Two glue-ups of 1 that stay clamped for 4 more: the second starts at 5. Work of 3 goes between.
    const glueUp: Activity = {
      duration: 1,
      wait: 4,
      hold: 4,
      after: [],
      needs: [
        { resource: 0, amount: 1, held: false },
        { resource: 1, amount: 1, held: true },
      ],
    };
    const shop: Project = { activities: [glueUp, glueUp, activity(3)], capacities: [1, 1], clock: PLAIN_CLOCK };
    const { plan } = shortest(shop);
    expect(judgeProject(shop, plan)).toEqual([]);
    expect(plan.makespan).toBe(10);
    expect([...plan.starts].slice(0, 2).sort()).toEqual([0, 5]);
  });

  it('finds what no priority rule finds: a list that crossing and justification mend', () => {
    const { plan: ruled } = shortPlan(PUZZLE, { plans: 1, seed: 1 });
    expect(shortest(PUZZLE, 2000).plan.makespan).toBeLessThan(ruled.makespan);
  });

  it('is the same for the same seed', () => {
    expect(shortest(PUZZLE, 500)).toEqual(shortest(PUZZLE, 500));
  });

  it('is judged by one who sees what is wrong', () => {
    const of = project(2, activity(3, [], 1, { wait: 1 }), activity(4, [0], 2), activity(2));
    const good = { starts: Int32Array.of(0, 4, 0), makespan: 8 };
    expect(judgeProject(of, good)).toEqual([]);
    expect(judgeProject(of, { ...good, makespan: 7 })).toEqual(['the last is over at 8, not at 7']);
    expect(judgeProject(of, { ...good, starts: Int32Array.of(0, 3, 0) })).toContain('1 starts at 3, 0 is over at 4');
    expect(judgeProject(of, { ...good, starts: Int32Array.of(0, 4, 7) })).toContain(
      'at 7 3 of resource 0 are used, there are 2',
    );
    expect(judgeProject(of, { ...good, starts: Int32Array.of(0, 4, -1) })).toContain('2 starts at -1');
  });

  it('refuses activities that wait for each other', () => {
    expect(() => shortest(project(1, activity(1, [1]), activity(1, [0])))).toThrow('circle');
  });
});

/** Up to `most` activities; each comes after some of those before it; two resources, the second held through waits. */
const someProject = (most: number): fc.Arbitrary<Project> =>
  fc
    .array(
      fc.record({
        duration: fc.integer({ min: 0, max: 5 }),
        wait: fc.oneof(
          { weight: 2, arbitrary: fc.constant(0) },
          { weight: 1, arbitrary: fc.integer({ min: 1, max: 4 }) },
        ),
        after: fc.uniqueArray(fc.integer({ min: 1, max: 6 }), { maxLength: 2 }),
        hands: fc.integer({ min: 0, max: 2 }),
        clamps: fc.integer({ min: 0, max: 3 }),
      }),
      { minLength: 1, maxLength: most },
    )
    .map(rows => ({
      capacities: [2, 3],
      clock: PLAIN_CLOCK,
      activities: rows.map(({ duration, wait, after, hands, clamps }, at) => ({
        duration,
        wait,
        // Clamps may come off while the glue still cures.
        hold: Math.min(wait, 2),
        after: after.flatMap(back => (at - back >= 0 ? [at - back] : [])),
        needs: [
          ...(hands > 0 ? [{ resource: 0, amount: hands, held: false }] : []),
          ...(clamps > 0 ? [{ resource: 1, amount: clamps, held: true }] : []),
        ],
      })),
    }));

describe('whatever the project', () => {
  it('every scheme keeps to the rules, and none beats the bound', () => {
    law(
      [someProject(12)],
      of => {
        const network = networkOf(of);
        const profile = emptyProfile(of);
        const bound = boundOf(network);
        for (const rule of RULES) {
          const plans = [dispatch(network, rule(network)), serial(network, profile, byRule(network, rule))];
          for (const plan of [...plans, ...plans.map(each => justify(network, profile, each))]) {
            expect(judgeProject(of, plan)).toEqual([]);
            expect(plan.makespan).toBeGreaterThanOrEqual(bound.makespan);
          }
        }
      },
      FEWER,
    );
  });

  it('the serial scheme makes no plan longer that it is given as a list, and justification none', () => {
    law([someProject(12)], of => {
      const network = networkOf(of);
      const profile = emptyProfile(of);
      const plan = dispatch(
        network,
        Float64Array.from(network.order, () => 0),
      );
      const again = serial(network, profile, byStart(network, plan.starts));
      expect(again.makespan).toBeLessThanOrEqual(plan.makespan);
      expect(justify(network, profile, again).makespan).toBeLessThanOrEqual(again.makespan);
    });
  });

  it('a small one is planned as short as the best of all lists', () => {
    law(
      [someProject(6)],
      of => {
        expect(shortPlan(of, effort).plan.makespan).toBe(bestOfAll(of));
      },
      Math.ceil(FEWER / 2),
    );
  });

  it('more of a resource never makes a small one longer', () => {
    law(
      [someProject(6), fc.integer({ min: 0, max: 1 })],
      (of, resource) => {
        const more = { ...of, capacities: of.capacities.map((each, at) => each + (at === resource ? 1 : 0)) };
        expect(shortPlan(more, effort).plan.makespan).toBeLessThanOrEqual(shortPlan(of, effort).plan.makespan);
      },
      FEWER,
    );
  });

  it('within its effort', () => {
    law(
      [someProject(12), fc.integer({ min: 1, max: 60 })],
      (of, plans) => {
        // A last list is justified to its end: three plans.
        expect(shortPlan(of, { plans, seed: 3 }).plans).toBeLessThanOrEqual(plans + 6);
      },
      FEWER,
    );
  });
});

/**
 * The shortest of all orders, each activity put at the first unit of time that the judge lets it start at. Some optimal
 * plan is among them (active schedules: Kolisch, European Journal of Operational Research 90, 1996).
 */
function bestOfAll(of: Project): number {
  let best = Number.POSITIVE_INFINITY;
  const place = (placed: ReadonlyMap<number, number>): void => {
    if (placed.size === of.activities.length) {
      best = Math.min(best, overAt(of, placed));
      return;
    }
    for (const at of of.activities.keys()) {
      if (placed.has(at) || of.activities[at]?.after.some(before => !placed.has(before))) continue;
      for (let time = 0; ; time += 1) {
        const tried = new Map([...placed, [at, time]]);
        if (!isAllowed(of, tried)) continue;
        place(tried);
        break;
      }
    }
  };
  place(new Map());
  return best;
}

const overAt = (of: Project, placed: ReadonlyMap<number, number>): number =>
  Math.max(
    0,
    ...[...placed].map(([at, start]) => start + (of.activities[at]?.duration ?? 0) + (of.activities[at]?.wait ?? 0)),
  );

/** The judge's word on those that are placed, as a project of their own. */
function isAllowed(of: Project, placed: ReadonlyMap<number, number>): boolean {
  const chosen = [...placed.keys()];
  const activities = chosen.flatMap(at => {
    const each = of.activities[at];
    return each === undefined ? [] : [{ ...each, after: each.after.map(before => chosen.indexOf(before)) }];
  });
  const plan = { starts: Int32Array.from(placed.values()), makespan: overAt(of, placed) };
  return judgeProject({ ...of, activities }, plan).length === 0;
}

/** Fourteen activities that fill two pairs of hands without a gap, if the order is right. Invented. */
const PUZZLE = project(
  4,
  ...[7, 5, 3, 8, 2, 6, 4, 9, 1, 5, 7, 3].map((duration, at) =>
    activity(duration, at > 5 ? [at - 6] : [], (at % 3) + 1),
  ),
);
