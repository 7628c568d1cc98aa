import { describe, expect, it } from 'vitest';
import { type Action, type Drop, EMPTY, type Event, pauseOf, type State, step } from '../../src/inbox/step.ts';

/**
 * A day of the inbox as lines. `see a=1 b=2` is what lies in the folder, each file with its stamp; `…×20` says so twenty
 * times; the others are how reading, building and filing ended. Behind the arrow stands what the inbox then starts.
 */
function day(lines: string, builders = 2): void {
  let state: State = EMPTY(builders);
  const told: string[] = [];
  const drawn = lines
    .split('\n')
    .map(each => each.trim())
    .filter(each => each !== '');
  for (const line of drawn) {
    const [what = ''] = line.split('→');
    const [, said = '', times = '1'] = /^(.*?)(?:×(\d+))?\s*$/.exec(what.trim()) ?? [];
    const actions: Action[] = [];
    for (let time = 0; time < Number(times); time++) {
      const [next, more] = step(state, eventOf(said.trim()));
      state = next;
      actions.push(...more);
    }
    told.push(`${what.trim()} → ${actions.map(printed).join(', ')}`.trim());
  }
  expect(told).toEqual(drawn.map(line => line.replace(/\s*→\s*/, ' → ').trim()));
}

function eventOf(said: string): Event {
  const [verb = '', name = '', job = ''] = said.split(' ');
  switch (verb) {
    case 'see':
      return {
        kind: 'listed',
        files: said
          .split(' ')
          .slice(1)
          .map(each => ({ name: each.split('=')[0] ?? '', stamp: each.split('=')[1] ?? '' })),
      };
    case 'read':
      return { kind: 'read', name, job, line: job };
    case 'half':
    case 'filed':
    case 'failed':
      return { kind: verb, name };
    default:
      throw new Error(`no event: ${said}`);
  }
}

const printed = (action: Action): string =>
  action.kind === 'read'
    ? `read ${action.name}${action.patient ? '' : ' as it is'}`
    : `build ${action.name} for ${action.job}`;

describe('a day of the inbox', () => {
  it('waits longer for plain text, which does not show whether it is whole', () => {
    day(`
      see a.csv=1 b.xlsx=1    →
      see a.csv=1 b.xlsx=1    →
      see a.csv=1 b.xlsx=1    → read b.xlsx
      see a.csv=1 b.xlsx=1    →
      see a.csv=1 b.xlsx=1    → read a.csv
    `);
  });

  it('reads what has been quiet for two polls, builds it, and forgets it once it is filed', () => {
    day(`
      see a=1     →
      see a=1     →
      see a=1     → read a
      read a J1   → build a for J1
      see a=1     →
      filed a     →
      see         →
    `);
  });

  it('waits while a file grows', () => {
    day(`
      see a=1 →
      see a=1 →
      see a=2 →
      see a=2 →
      see a=2 → read a
    `);
  });

  it('asks again, less and less often, whether a copy has ended; and at last takes it for what it is', () => {
    day(
      `
      see a=1 ×3  → read a
      half a      →
      see a=1 ×6  →
      see a=1     → read a
      half a      →
      see a=1 ×8  →
      see a=1     → read a
      half a      →
      see a=2 ×3  → read a
      half a      →
      see a=2 ×6  →
      see a=2     → read a
      half a      →
      see a=2 ×8  →
      see a=2     → read a
      half a      →
      see a=2 ×8  →
      see a=2     → read a
      half a      →
      see a=2 ×8  →
      see a=2     → read a
      half a      →
      see a=2 ×8  →
      see a=2     → read a
      half a      →
      see a=2 ×9  → read a as it is
      read a      → build a for
    `,
    );
  });

  it('takes two workbooks of one job in turn, and others beside them', () => {
    day(`
      see a=1 b=1 c=1 ×3 → read a, read b, read c
      read b J1   →
      read a J1   → build a for J1
      read c J2   → build c for J2
      filed c     →
      filed a     → build b for J1
      filed b     →
    `);
  });

  it('builds no more at once than there are builders', () => {
    day(
      `
      see a=1 b=1 c=1 ×3 → read a, read b, read c
      read a J1   → build a for J1
      read b J2   →
      read c J3   →
      filed a     → build b for J2
      filed b     → build c for J3
    `,
      1,
    );
  });

  it('reads no more than four at once, however many are dropped', () => {
    const many = Array.from({ length: 12 }, (_, index) => `f${index}=1`).join(' ');
    const first = many.split(' ').slice(0, 4);
    day(
      `
      see ${many} ×3 → ${first.map(each => `read ${each.split('=')[0]}`).join(', ')}
      read f0 J0     → build f0 for J0, read f4
    `,
    );
  });

  it('leaves what the machine refuses, and tries it again after a while, or when it changes', () => {
    day(`
      see a=1 ×3  → read a
      failed a    →
      see a=1 ×14 →
      see a=1     →
      see a=1 ×2  → read a
      read a J1   → build a for J1
      failed a    →
      see a=2     →
      see a=2 ×2  → read a
    `);
  });

  it('forgets what somebody takes away again, but not what it is working on', () => {
    day(`
      see a=1     →
      see         →
      see a=1 ×3  → read a
      see         →
      read a J1   → build a for J1
      see         →
      failed a    →
      see         →
      see a=1     →
      see a=1 ×2  → read a
    `);
  });
});

describe('the pause before the next look', () => {
  const drop = (name: string, phase: Drop['phase'], quiet = 0): Drop => ({
    name,
    stamp: '1',
    phase,
    quiet,
    job: '',
    line: '',
  });

  it.each<[string, readonly Drop[], number]>([
    ['nothing lies there', [], 1],
    ['all that does is in work', [drop('a.xlsx', 'building'), drop('b.xlsx', 'stuck')], 1],
    ['a workbook was just dropped', [drop('a.xlsx', 'settling')], 1 / 8],
    ['and looked at again', [drop('a.xlsx', 'settling', 1), drop('b.xlsx', 'building')], 1 / 8],
    ['it turned out to be half a copy', [drop('a.xlsx', 'settling', 3)], 1 / 2],
    ['text was dropped', [drop('a.csv', 'settling')], 1 / 2],
    ['text beside a workbook', [drop('a.xlsx', 'settling'), drop('b.CSV', 'settling', 3)], 1 / 2],
  ])('%s', (_, drops, polls) => {
    expect(pauseOf(drops)).toBe(polls);
  });
});
