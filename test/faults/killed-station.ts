import { type ChildProcess, spawn } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Manifest } from '../../src/render/packet.ts';
import type { Scan } from '../../src/station/floor/scan.ts';
import { allEvents } from '../../src/station/ledger/ledger.ts';
import { openLedger } from '../../src/station/open-ledger.ts';
import { aScan } from '../support/day.ts';
import { aManifest } from '../support/manifest.ts';

/** What became of scans whose host was killed under them. `lost`: acknowledged and not there, or there twice. */
export type Killed = {
  readonly scans: number;
  readonly kills: number;
  readonly resent: number;
  readonly lost: readonly string[];
};

/** Steps of the parts of one door of the small manifest: four sticks of the frame and a panel. */
const STEPS_OF_PARTS = 24;

/** Stations that pull the trigger at the same time. */
const CLIENTS = 16;

/**
 * A burst of `scans` scans from many stations; in the middle of it, at a moment that `chance` (0 to 1) chooses, the
 * host is killed as by a pulled plug, started again, and the stations go on, sending again what was not answered.
 */
export async function killInBurst(scans: number, chance: () => number, database?: string): Promise<Killed> {
  const folder = await mkdtemp(join(tmpdir(), 'killed-'));
  const manifest = aManifest({
    cabinets: Array.from({ length: Math.ceil(scans / STEPS_OF_PARTS) }, (_, at) => `B${at + 1}`),
  });
  await mkdir(join(folder, 'packets', 'K7', 'A'), { recursive: true });
  await writeFile(join(folder, 'packets', 'K7', 'A', 'manifest.json'), JSON.stringify(manifest));
  let host = await startHost(folder, 0, database);
  const acknowledged = new Set<string>();
  let resent = 0;
  const burst = burstOf(manifest, scans).map(async queue => {
    for (const scan of queue) {
      let tries = 0;
      while (!(await send(host.address, scan))) {
        tries += 1;
        await pause(20);
      }
      if (tries > 0) resent += 1;
      acknowledged.add(scan.key);
    }
  });
  const killAt = Math.floor(scans * (0.1 + 0.8 * chance()));
  while (acknowledged.size < killAt) await pause(1);
  await kill(host.process);
  host = await startHost(folder, Number(new URL(host.address).port), database);
  await Promise.all(burst);
  await kill(host.process);
  const lost = await lostOf(folder, database, acknowledged);
  await rm(folder, { recursive: true, force: true });
  return { scans: acknowledged.size, kills: 2, resent, lost };
}

/** Every step of every piece, each piece's own in order, dealt out to the stations. */
function burstOf(manifest: Manifest, scans: number): readonly (readonly Scan[])[] {
  const waits = new Set(manifest.operations.filter(each => each.minutes.pieces === 0).map(each => each.id));
  const stationOf = new Map(manifest.operations.map(each => [each.id, each.station]));
  const queues: Scan[][] = Array.from({ length: CLIENTS }, () => []);
  let dealt = 0;
  for (const [at, part] of manifest.parts.entries())
    for (const operation of part.route) {
      if (waits.has(operation) || dealt >= scans) continue;
      dealt += 1;
      queues[at % CLIENTS]?.push(
        aScan(`${part.code} ${operation}`, {
          code: part.barcode,
          station: stationOf.get(operation) ?? '',
          operation,
          device: `d${at % CLIENTS}`,
          // Strips need not rest in a test.
          agreed: ['order'],
          reason: 'a burst',
        }),
      );
    }
  return queues;
}

type HostProcess = { readonly address: string; readonly process: ChildProcess };

function startHost(folder: string, port: number, database: string | undefined): Promise<HostProcess> {
  const script = join(import.meta.dirname, 'station-host.ts');
  const words = [folder, String(port), ...(database === undefined ? [] : [database])];
  const process_ = spawn(process.execPath, ['--import', 'tsx', script, ...words], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let told = '';
  process_.stderr.on('data', piece => {
    told += String(piece);
  });
  return new Promise((started, failed) => {
    process_.stdout.once('data', line => started({ address: String(line).trim(), process: process_ }));
    process_.once('exit', code => failed(new Error(`the host ended with ${code}: ${told}`)));
  });
}

const kill = (host: ChildProcess): Promise<void> =>
  new Promise(ended => {
    host.removeAllListeners('exit');
    host.once('exit', () => ended());
    host.kill('SIGKILL');
  });

/** Whether the host has acknowledged it; a refusal would be a fault of this run. */
async function send(address: string, scan: Scan): Promise<boolean> {
  const answer = await fetch(`${address}/scans`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(scan),
    signal: AbortSignal.timeout(10_000),
  }).catch(() => undefined);
  if (answer === undefined || answer.status >= 500) return false;
  const card = (await answer.json().catch(() => undefined)) as { tone: string; title: string } | undefined;
  if (card === undefined) return false;
  if (card.tone !== 'go') throw new Error(`${scan.code} at ${scan.operation}: ${card.title}`);
  return true;
}

async function lostOf(folder: string, database: string | undefined, acknowledged: ReadonlySet<string>) {
  const place = { data: join(folder, 'data'), database, shop: folder };
  const ledger = await openLedger(place, () => undefined);
  const found = new Map<string, number>();
  for await (const page of allEvents(ledger))
    for (const event of page) found.set(event.key, (found.get(event.key) ?? 0) + 1);
  await ledger.close();
  return [
    ...[...acknowledged].filter(key => !found.has(key)).map(key => `${key} was acknowledged and is not there`),
    ...[...found].filter(([, times]) => times > 1).map(([key, times]) => `${key} is there ${times} times`),
  ];
}

const pause = (milliseconds: number): Promise<void> => new Promise(done => setTimeout(done, milliseconds));
