import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openDesk } from '../../src/station/desk.ts';
import type { KeptEvent } from '../../src/station/floor/event.ts';
import { type JobState, replay } from '../../src/station/floor/job-state.ts';
import { progressOf } from '../../src/station/floor/progress.ts';
import type { Scan } from '../../src/station/floor/scan.ts';
import { shelve } from '../../src/station/floor/shelf.ts';
import { openSqlite } from '../../src/station/ledger/sqlite.ts';
import { stateIn } from '../../src/station/states.ts';
import { aScan } from '../support/day.ts';
import { aManifest } from '../support/manifest.ts';
import { RUNS } from '../support/runs.ts';

const manifest = aManifest({ cabinets: ['B1', 'B2'] });
const shelf = shelve([manifest]);
const book = shelf.jobs.get('K7')?.book;
if (book === undefined) throw new Error('the job is not on the shelf');
const codes = [...book.pieces.keys()];
const setups = manifest.operations.flatMap(operation => operation.setups.map(setup => setup.barcode));
const stations = ['saw', 'jointer', 'router', 'bench', 'clamps', 'sander', 'site'];

/** Something that somebody at a station does; an undo takes back the same station's scan of so many steps before. */
const anAct = fc.record({
  station: fc.nat(stations.length - 1),
  act: fc.oneof(
    { weight: 8, arbitrary: fc.constant('done' as const) },
    { weight: 1, arbitrary: fc.constant('spoiled' as const) },
    { weight: 2, arbitrary: fc.constant('undo' as const) },
  ),
  code: fc.oneof(
    { weight: 8, arbitrary: fc.constantFrom(...codes) },
    { weight: 1, arbitrary: fc.constantFrom(...setups) },
  ),
  back: fc.integer({ min: 1, max: 3 }),
  sent: fc.integer({ min: 1, max: 3 }),
});

type Act = { station: number; act: Scan['act']; code: string; back: number; sent: number };

const scansOf = (acts: readonly Act[]): readonly Scan[] => {
  const scans: Scan[] = [];
  for (const [at, { station, act, code, back }] of acts.entries()) {
    const own = scans.filter(scan => scan.station === stations[station]);
    scans.push(
      aScan(`scan ${at}`, {
        act,
        code: act === 'undo' ? (own.at(-back)?.key ?? 'nothing') : code,
        station: stations[station] ?? '',
        device: `device ${station}`,
        at: new Date(Date.UTC(2026, 2, 4, 8, at)).toISOString(),
        agreed: ['order', 'changed', 'batch', 'spoil'],
        reason: 'because',
      }),
    );
  }
  return scans;
};

async function deskOn(ledger: Awaited<ReturnType<typeof openSqlite>>) {
  let minute = 0;
  const now = () => {
    minute += 1;
    return new Date(Date.UTC(2026, 2, 4, 8, minute));
  };
  return openDesk(ledger, () => shelf, { now });
}

const plain = (state: JobState) => ({
  pieces: [...state.pieces.keys()]
    .map(code => [code, state.pieces.get(code)])
    .sort(([a], [b]) => (String(a) < String(b) ? -1 : 1)),
  seq: state.seq,
  recent: state.recent,
});

const NOW = new Date('2026-03-04T08:00:00.000Z');
const runs = Math.ceil(RUNS / 10);

describe('scans from many stations', () => {
  it('sent again and again, in any order of arrival, are the same as each sent once', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anAct, { maxLength: 25 }), fc.infiniteStream(fc.nat(1000)), async (acts, dice) => {
        const roll = (sides: number) => (dice.next().value ?? 0) % sides;
        const ledger = await openSqlite(':memory:', 'test');
        const desk = await deskOn(ledger);
        // Each station sends its own scans in order, some of them again later; the stations are shuffled together.
        const queues = stations.map(station => scansOf(acts).filter(scan => scan.station === station));
        const arrived: Scan[] = [];
        while (queues.some(queue => queue.length > 0)) {
          const queue = queues[roll(queues.length)] ?? [];
          const scan = queue.shift();
          if (scan === undefined) continue;
          arrived.push(scan);
          if (roll(3) === 0) arrived.push(scan);
          if (roll(4) === 0) arrived.push(arrived[roll(arrived.length)] ?? scan);
        }
        const rest = [...arrived];
        while (rest.length > 0) {
          const together = rest.splice(0, 1 + roll(4));
          await Promise.all(together.map(scan => desk.scan(scan)));
        }
        const once = await openSqlite(':memory:', 'test');
        const other = await deskOn(once);
        const firsts = [...new Map(arrived.map(scan => [scan.key, scan])).values()];
        const inOrder = arrived.filter((scan, at) => arrived.indexOf(scan) === at);
        expect(inOrder.map(scan => scan.key)).toEqual(firsts.map(scan => scan.key));
        for (const scan of inOrder) await other.scan(scan);
        const [many, single] = [await stateIn(ledger, 'K7'), await stateIn(once, 'K7')];
        expect(withoutTimes(many)).toEqual(withoutTimes(single));
        await Promise.all([ledger.close(), once.close()]);
      }),
      { numRuns: runs },
    );
  });

  it('are in the desk’s head as they are in the ledger', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anAct, { maxLength: 25 }), async acts => {
        const ledger = await openSqlite(':memory:', 'test');
        const desk = await deskOn(ledger);
        for (const scan of scansOf(acts)) await desk.scan(scan);
        const fromLedger = progressOf(book, await stateIn(ledger, 'K7'), NOW);
        // The desk's clock goes on while it is asked, and the forecast with it.
        expect({ ...(await desk.progress('K7')), forecast: undefined }).toEqual({ ...fromLedger, forecast: undefined });
        await ledger.close();
      }),
      { numRuns: runs },
    );
  });

  it('never count more than there is, and undoing everything leaves nothing', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anAct, { maxLength: 25 }), async acts => {
        const ledger = await openSqlite(':memory:', 'test');
        const desk = await deskOn(ledger);
        for (const scan of scansOf(acts)) await desk.scan(scan);
        const progress = await desk.progress('K7');
        for (const { done, total } of progress?.operations ?? []) expect(done).toBeLessThanOrEqual(total);
        const events = await ledger.after(0, 1000);
        for (const [at, event] of [...events].reverse().entries())
          await desk.scan(aScan(`undo ${at}`, { act: 'undo', code: event.key, at: '2026-03-05T08:00:00.000Z' }));
        expect(await desk.progress('K7')).toMatchObject({ steps: { done: 0 }, remakes: [] });
        await ledger.close();
      }),
      { numRuns: runs },
    );
  });

  it('of different pieces may come in any order: each piece ends the same', () => {
    fc.assert(
      fc.property(fc.array(someEvents, { maxLength: 5 }), fc.infiniteStream(fc.nat(1000)), (perPiece, dice) => {
        const rows = perPiece.map((events, piece) => events.map((event, at) => eventOf(piece, at, event)));
        const oneAfterTheOther = replay(numbered(rows.flat()));
        const shuffled = replay(numbered(interleaved(rows, sides => (dice.next().value ?? 0) % sides)));
        expect(plain(shuffled).pieces).toEqual(plain(oneAfterTheOther).pieces);
      }),
    );
  });
});

/** What happens to one piece, in raw events, sensible or not. */
const someEvents = fc.array(
  fc.record({
    kind: fc.constantFrom('done' as const, 'spoiled' as const, 'undone' as const),
    operation: fc.constantFrom('groove', 'cope', 'cut-length'),
    remake: fc.nat(2),
    back: fc.nat(4),
  }),
  { maxLength: 8 },
);

type Raw = { kind: 'done' | 'spoiled' | 'undone'; operation: string; remake: number; back: number };

function eventOf(piece: number, at: number, { kind, operation, remake, back }: Raw): Omit<KeptEvent, 'seq'> {
  const pieces = [{ code: `piece ${piece}`, remake }];
  const what =
    kind === 'done'
      ? { kind, operation, pieces, skipped: [], reason: '', setup: null }
      : kind === 'spoiled'
        ? { kind, pieces, reason: '' }
        : { kind, of: `${piece} ${at - back}`, pieces };
  const who = { job: 'K7', revision: 'A', station: 'saw', device: 'd', deviceTime: '', serverTime: '' };
  return { key: `${piece} ${at}`, ...who, what };
}

const numbered = (events: readonly Omit<KeptEvent, 'seq'>[]): readonly KeptEvent[] =>
  events.map((event, at) => ({ ...event, seq: at + 1 }));

function interleaved<T>(rows: readonly (readonly T[])[], roll: (sides: number) => number): readonly T[] {
  const left = rows.map(row => [...row]).filter(row => row.length > 0);
  const all: T[] = [];
  while (left.length > 0) {
    const at = roll(left.length);
    all.push(...(left[at]?.splice(0, 1) ?? []));
    if (left[at]?.length === 0) left.splice(at, 1);
  }
  return all;
}

const withoutTimes = (state: JobState) =>
  JSON.parse(JSON.stringify(plain(state), (name, value) => (['serverTime', 'seq'].includes(name) ? undefined : value)));
