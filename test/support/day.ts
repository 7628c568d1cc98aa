import { createHash } from 'node:crypto';
import { expect } from 'vitest';
import type { Manifest } from '../../src/render/packet.ts';
import { type Desk, openDesk } from '../../src/station/desk.ts';
import type { Answer } from '../../src/station/floor/answer.ts';
import { QUESTIONS, type Question, type Scan } from '../../src/station/floor/scan.ts';
import { shelve } from '../../src/station/floor/shelf.ts';
import type { Ledger } from '../../src/station/ledger/ledger.ts';
import { openSqlite } from '../../src/station/ledger/sqlite.ts';

/** A station's desk with a clock that a test moves. */
export type TestDesk = {
  readonly desk: Desk;
  readonly ledger: Ledger;
  readonly setTime: (time: Date) => void;
  readonly setManifests: (manifests: readonly Manifest[]) => void;
};

export async function aDesk(manifests: readonly Manifest[], ledger?: Ledger): Promise<TestDesk> {
  const kept = ledger ?? (await openSqlite(':memory:', 'test'));
  let shelf = shelve(manifests);
  let now = new Date('2026-03-04T08:00:00.000Z');
  const desk = await openDesk(kept, () => shelf, { now: () => now });
  return {
    desk,
    ledger: kept,
    setTime: time => {
      now = time;
    },
    setManifests: list => {
      shelf = shelve(list);
    },
  };
}

/**
 * A day on the floor, a line a scan: `08:05 saw scans B1.A.1L-SL → done Crosscut…`. Verbs: scans, spoils, undoes
 * (names the line of what is undone, as `#3`), agrees (to the questions after it, for a code: `agrees order B1…`).
 * A line that begins with `+` is a manifest from `later` that appears on the shelf.
 */
export async function day(
  manifests: readonly Manifest[],
  lines: string,
  later: { readonly [name: string]: Manifest },
  ledger: Ledger,
): Promise<TestDesk> {
  const test = await aDesk(manifests, ledger);
  const shelf = [...manifests];
  const keys: string[] = [];
  for (const line of lines.split('\n').map(each => each.trim())) {
    if (line === '') continue;
    if (line.startsWith('+')) {
      const manifest = later[line.slice(1).trim()];
      if (manifest === undefined) throw new Error(`no manifest ${line}`);
      shelf.push(manifest);
      test.setManifests(shelf);
      continue;
    }
    const [said = '', expected = ''] = line.split('→').map(each => each.trim());
    const scan = scanOf(said, keys);
    keys.push(scan.key);
    test.setTime(new Date(scan.at));
    expect(`${said} → ${summary(await test.desk.scan(scan))}`).toBe(`${said} → ${expected}`);
  }
  return test;
}

function scanOf(said: string, keys: readonly string[]): Scan {
  const [time = '', station = '', verb = '', ...rest] = said.split(/\s+/);
  const agreed = rest.filter((word): word is Question => (QUESTIONS as readonly string[]).includes(word));
  const running = rest.find(word => word.startsWith('@'))?.slice(1) ?? null;
  const job = rest.find(word => word.startsWith('job='))?.slice(4) ?? null;
  const device = rest.find(word => word.startsWith('by='))?.slice(3) ?? 'd1';
  const code = rest.find(word => !agreed.some(each => each === word) && !/^(@|job=|by=)/.test(word)) ?? '';
  return aScan(`${keys.length} ${said}`, {
    act: verb === 'undoes' ? 'undo' : verb === 'spoils' ? 'spoiled' : 'done',
    code: verb === 'undoes' ? (keys[Number(code.slice(1)) - 1] ?? '') : code,
    station,
    operation: running,
    device,
    job,
    at: new Date(`2026-03-04T${time.length === 5 ? `${time}:00` : time}.000Z`).toISOString(),
    agreed,
    reason: agreed.length > 0 ? 'because' : '',
  });
}

export const aScan = (seed: string, but: Partial<Scan>): Scan => ({
  key: createHash('sha256').update(seed).digest('hex').slice(0, 32),
  act: 'done',
  code: '',
  station: 'saw',
  operation: null,
  job: null,
  device: 'd1',
  at: '2026-03-04T08:00:00.000Z',
  agreed: [],
  reason: '',
  ...but,
});

/** An answer in a few words. */
export function summary(answer: Answer): string {
  switch (answer.kind) {
    case 'done': {
      const next = answer.next === undefined ? '' : `, next ${answer.next.operation} at ${answer.next.station}`;
      const complete = answer.complete === 'no' ? '' : `, ${answer.complete} complete`;
      return `done ${answer.step.operation} ${answer.run.done}/${answer.run.total}${next}${complete}`;
    }
    case 'batch-done':
      return `batch done ${answer.step.operation}: ${answer.pieces.length}, ${answer.run.done}/${answer.run.total}`;
    case 'ask-batch':
      return `ask batch ${answer.step.operation}: ${answer.ready.length} ready, ${answer.before} before, ${answer.notReady.length} not`;
    case 'batch-twice':
      return `batch twice: ${answer.pieces} done, ${answer.notReady.length} not ready`;
    case 'ask-order': {
      const missing = answer.missing.map(each => `${each.code}: ${each.operations.join(', ')}`).join('; ');
      const early =
        answer.early === undefined ? '' : `early by ${answer.early.minutes} min of ${answer.early.operation}`;
      return `ask order ${[missing, early].filter(each => each !== '').join(' | ')}`;
    }
    case 'ask-changed':
      return `ask changed ${answer.was.join(' x ')} in ${answer.wasRevision} now ${answer.piece.size.join(' x ')} in ${answer.revision}, ${answer.marks} done`;
    case 'ask-spoil':
      return `ask spoil ${answer.piece.code}`;
    case 'spoiled':
      return `spoiled, make ${answer.remakes.join(' ')} from ${answer.from.map(each => (each.kind === 'offcut' ? each.code : each.stock)).join(', ')}`;
    case 'undone':
      return `undone ${answer.step?.operation ?? ''} ${answer.pieces.join(' ')}`;
    case 'twice':
      return `twice ${answer.step.operation}`;
    case 'elsewhere':
      return `elsewhere, next ${answer.next?.operation ?? 'nothing'}`;
    case 'setup-elsewhere':
      return `set-up of ${answer.step.station}`;
    case 'old-tag':
      return `old tag, now ${answer.code}`;
    case 'which-job':
      return `which job: ${answer.jobs.join(', ')}`;
    case 'wrong-job':
      return `wrong job ${answer.job}, not ${answer.chosen}`;
    case 'offcut':
      return `offcut ${answer.code} of ${answer.stock}`;
    case 'gone':
      return `gone from ${answer.revision}`;
    case 'remade-since':
      return `remade since: ${answer.codes.join(' ')}`;
    default:
      return answer.kind;
  }
}
