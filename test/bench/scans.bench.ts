import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Manifest } from '../../src/render/packet.ts';
import { openDesk } from '../../src/station/desk.ts';
import type { FloorEvent } from '../../src/station/floor/event.ts';
import type { Scan } from '../../src/station/floor/scan.ts';
import { shelve } from '../../src/station/floor/shelf.ts';
import type { Ledger } from '../../src/station/ledger/ledger.ts';
import { openLedger } from '../../src/station/open-ledger.ts';
import { aScan } from '../support/day.ts';
import { aManifest } from '../support/manifest.ts';
import { startPostgres } from '../support/postgres.ts';
import type { Measurement } from './measurement.ts';

/** Durable scans over HTTP on loopback, at 1, 8 and 64 stations, and state queries as the ledger grows; both engines. */
export async function measure(): Promise<readonly Measurement[]> {
  const server = await startPostgres();
  try {
    const lines: Measurement[] = [];
    for (const [name, database] of [
      ['file', undefined],
      ['PostgreSQL', server.url],
    ] as const) {
      for (const stations of [1, 8, 64]) lines.push(...(await scansFrom(stations, name, database, 'flat out')));
      lines.push(...(await scansFrom(64, name, database, 'two a second each')));
      lines.push(...(await queries(name, database)));
    }
    return lines;
  } finally {
    await server.stop();
  }
}

const SCANS = 3000;
/** What follows the scans that are counted, to see what of their wait was the host's first minute. */
const LATER = 640;
/** Four kitchens of forty doors in the shop at once. */
const manifests = ['K7', 'K8', 'K9', 'K10'].map(number =>
  aManifest({ number, cabinets: Array.from({ length: 40 }, (_, at) => `B${at + 1}`) }),
);
const [manifest = aManifest()] = manifests;

type Pace = 'flat out' | 'two a second each';
type Host = { readonly script: string; readonly words: readonly string[] };
type Run = {
  readonly perSecond: number;
  readonly p50: number;
  readonly p99: number;
  /** Of the scans after those: the host's code is compiled by then, as it is all day but for its first minute. */
  readonly laterP99: number;
  readonly processor: number;
};

async function scansFrom(
  stations: number,
  name: string,
  database: string | undefined,
  pace: Pace,
): Promise<readonly Measurement[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-'));
  for (const each of manifests) {
    const place = join(folder, 'packets', each.job.number, 'A');
    await mkdir(place, { recursive: true });
    await writeFile(join(place, 'manifest.json'), JSON.stringify(each));
  }
  const words = [folder, '0', ...(database === undefined ? [] : [database])];
  const ours = await run({ script: '../faults/station-host.ts', words }, stations, pace);
  const bare = await run({ script: 'bare-host.ts', words: [folder] }, stations, pace);
  await rm(folder, { recursive: true, force: true });
  const what = `${name}, ${stations} station${stations === 1 ? '' : 's'} ${pace}`;
  const floor = (value: number) => ({ floor: { name: 'bare host, file and sync', value } });
  return [
    { what: `${what}: durable scans`, unit: '/s', ours: ours.perSecond, ...floor(bare.perSecond) },
    { what: `${what}: p50`, unit: 'ms', ours: ours.p50, ...floor(bare.p50) },
    {
      what: `${what}: p99`,
      unit: 'ms',
      ours: ours.p99,
      ...floor(bare.p99),
      ...(stations === 64 ? { target: '≤ 25', met: ours.p99 <= 25 } : {}),
    },
    ...(stations === 64
      ? [{ what: `${what}: p99 of ${LATER} scans later`, unit: 'ms', ours: ours.laterP99, ...floor(bare.laterP99) }]
      : []),
    { what: `${what}: host's processor`, unit: 'ms/scan', ours: ours.processor, ...floor(bare.processor) },
  ];
}

/** A host in a process of its own, so that the stations' work is not counted as the host's. */
async function run(started: Host, stations: number, pace: Pace): Promise<Run> {
  const { host, address } = await startHost(started);
  const agent = new Agent({ keepAlive: true, maxSockets: stations });
  const count = pace === 'flat out' ? SCANS : stations * 10;
  const scans = manifests.flatMap(scansOf);
  const waitsOf = async (queued: readonly Scan[]): Promise<readonly number[]> => {
    const hands = deal(queued, stations).map((queue, hand) =>
      work(agent, address, queue, pace === 'flat out' ? undefined : hand),
    );
    return (await Promise.all(hands)).flat().sort((a, b) => a - b);
  };
  await post(agent, address, scans[0] ?? aScan('warm', {}));
  const before = processorSeconds(host.pid);
  const start = performance.now();
  const waits = await waitsOf(scans.slice(0, count));
  const seconds = (performance.now() - start) / 1000;
  const processor = processorSeconds(host.pid) - before;
  const later = stations === 64 ? await waitsOf(scans.slice(count, count + LATER)) : [];
  host.kill('SIGKILL');
  agent.destroy();
  return {
    perSecond: waits.length / seconds,
    p50: waits[Math.floor(waits.length / 2)] ?? 0,
    p99: waits[Math.floor(waits.length * 0.99)] ?? 0,
    laterP99: later[Math.floor(later.length * 0.99)] ?? 0,
    processor: (processor * 1000) / waits.length,
  };
}

/** How long one job's progress takes to ask for, and to read anew, as other jobs' events pile up in the ledger. */
async function queries(name: string, database: string | undefined): Promise<readonly Measurement[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-'));
  const ledger = await openLedger({ data: folder, database, shop: folder }, () => undefined);
  const shelf = shelve([manifest]);
  const lines: Measurement[] = [];
  let filled = 0;
  for (const events of [1000, 10_000, 100_000, 1_000_000]) {
    await fill(ledger, filled, events);
    filled = events;
    const desk = await openDesk(ledger, () => shelf, { now: () => new Date() });
    const cold = await median(1, () => desk.progress('K7'));
    const warm = await median(30, () => desk.progress('K7'));
    lines.push(
      { what: `${name}, ${events} events: progress, asked again`, unit: 'ms', ours: warm },
      { what: `${name}, ${events} events: progress, after a restart`, unit: 'ms', ours: cold },
    );
  }
  await ledger.close();
  await rm(folder, { recursive: true, force: true });
  const [first, last] = [lines[0]?.ours ?? 0, lines.at(-2)?.ours ?? 0];
  return [
    ...lines,
    {
      what: `${name}: 1,000,000 beside 1,000 events`,
      unit: '×',
      ours: last / first,
      target: '≤ 2',
      met: last <= 2 * first,
    },
  ];
}

/** The first thousand events are of the job that is asked for; all others of a thousand other jobs. */
async function fill(ledger: Ledger, from: number, to: number): Promise<void> {
  const pieces = manifest.parts.flatMap(part => part.route.map(operation => ({ code: part.code, operation })));
  for (let at = from; at < to; at += 500)
    await ledger.append(
      Array.from({ length: 500 }, (_, more): FloorEvent => {
        const number = at + more;
        const { code, operation } = pieces[number % pieces.length] ?? { code: '', operation: '' };
        return {
          key: `event ${number}`,
          job: number < 1000 ? 'K7' : `J${number % 1000}`,
          revision: 'A',
          station: 'saw',
          device: 'd',
          deviceTime: '2026-03-04T08:00:00.000Z',
          serverTime: '2026-03-04T08:00:00.000Z',
          what: { kind: 'done', operation, pieces: [{ code, remake: 0 }], skipped: [], reason: '', setup: null },
        };
      }),
    );
}

async function median(times: number, ask: () => Promise<unknown>): Promise<number> {
  const waits: number[] = [];
  for (let at = 0; at < times; at += 1) {
    const start = performance.now();
    await ask();
    waits.push(performance.now() - start);
  }
  return waits.sort((a, b) => a - b)[Math.floor(times / 2)] ?? 0;
}

function scansOf({ job, parts, operations }: Manifest): readonly Scan[] {
  const scanned = operations.filter(each => each.minutes.pieces > 0);
  return scanned.flatMap(operation =>
    parts
      .filter(part => part.route.includes(operation.id))
      .map(part =>
        aScan(`${job.number} ${part.code} ${operation.id}`, {
          code: part.barcode,
          station: operation.station,
          operation: operation.id,
          agreed: ['order'],
          reason: 'bench',
        }),
      ),
  );
}

const deal = (scans: readonly Scan[], hands: number): readonly (readonly Scan[])[] =>
  Array.from({ length: hands }, (_, hand) => scans.filter((_each, at) => at % hands === hand));

/** One after the other; where `hand` is given, at most two a second, and not all hands at the same moment. */
async function work(
  agent: Agent,
  address: string,
  queue: readonly Scan[],
  hand: number | undefined,
): Promise<readonly number[]> {
  const waits: number[] = [];
  const begin = performance.now() + (hand ?? 0) * 8;
  for (const [at, scan] of queue.entries()) {
    if (hand !== undefined) await new Promise(due => setTimeout(due, begin + at * 500 - performance.now()));
    const start = performance.now();
    await post(agent, address, scan);
    waits.push(performance.now() - start);
  }
  return waits;
}

const post = (agent: Agent, address: string, scan: Scan): Promise<void> =>
  new Promise((answered, failed) => {
    const body = JSON.stringify(scan);
    const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) };
    const sent = request(`${address}/scans`, { method: 'POST', agent, headers }, answer => {
      answer.resume();
      answer.on('end', () => (answer.statusCode === 200 ? answered() : failed(new Error(`${answer.statusCode}`))));
    });
    sent.on('error', failed);
    sent.end(body);
  });

function startHost({ script, words }: Host): Promise<{ host: ChildProcess; address: string }> {
  const file = join(import.meta.dirname, script);
  const host = spawn(process.execPath, ['--import', 'tsx', file, ...words], { stdio: ['ignore', 'pipe', 'inherit'] });
  return new Promise(started => {
    host.stdout.once('data', line => started({ host, address: String(line).trim() }));
  });
}

/** What a process has used of the processor so far; 0 where the machine does not tell. */
function processorSeconds(pid: number | undefined): number {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
    return (Number(fields[11]) + Number(fields[12])) / 100;
  } catch {
    return 0;
  }
}
