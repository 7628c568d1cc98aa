import { randomBytes } from 'node:crypto';
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import type { Server } from 'node:http';
import { hostname, networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import type { Host } from '../host.ts';
import { openDesk } from './desk.ts';
import { type LedgerPlace, openLedger } from './open-ledger.ts';
import { openPacketFolders } from './packet-folders.ts';
import { shopApp } from './web/app.ts';
import type { Guard } from './web/guard.ts';
import { openPairing } from './web/pairing.ts';

export type StationOptions = LedgerPlace & {
  /** 0 for any that is free. */
  readonly port: number;
  /** Serve other devices of the shop's network too, each after it was paired. */
  readonly lan: boolean;
  readonly packets: readonly string[];
  /** Where the inbox files packets; undefined where only `packets` count. */
  readonly packetsRoot: string | undefined;
  readonly requestsPerSecond: number;
};

export type Station = { readonly address: string; readonly close: () => Promise<void> };

/** What a running station says to the person who started it. */
export type Tell = {
  readonly trouble: (trouble: unknown) => void;
  readonly pairingCode: (code: string, address: string) => void;
};

/** New packets, and what other hosts have kept, are looked for as often as this. */
const LOOK_MS = 1000;

/** Where a running station says how it is reached, for the commands that need the ledger it holds. */
export const ADDRESS_FILE = 'station.json';

/** Serves the pages until it is closed. Rejects where the ledger or the port is taken. */
export async function startStation(options: StationOptions, host: Host, tell: Tell): Promise<Station> {
  const ledger = await openLedger(options, tell.trouble);
  try {
    const packets = openPacketFolders(options.packets, options.packetsRoot, host);
    await packets.look();
    const desk = await openDesk(ledger, packets.shelf, host);
    let { port } = options;
    // Asked each time: a shop's router may give the host another address while it runs.
    const names = (): readonly string[] => namesOf(options.lan);
    const pairAddress = (): string => `http://${names().at(-1)}:${port}/pair`;
    const pairing = options.lan
      ? openPairing(await secretOf(options.data), host.now, code => tell.pairingCode(code, pairAddress()))
      : undefined;
    const guard: Guard = { names, pairing, pairAddress, perSecond: options.requestsPerSecond };
    const app = shopApp({ desk, ledger, packets, guard, host, tell: tell.trouble });
    const server = await listen(app.fetch, options.port, options.lan ? '0.0.0.0' : '127.0.0.1');
    const stopLooking = every(
      LOOK_MS,
      async () => {
        await packets.look();
        if (ledger.shared) await desk.catchUp();
      },
      tell.trouble,
    );
    port = portOf(server);
    const address = `http://127.0.0.1:${port}`;
    await writeAddress(options.data, address);
    pairing?.code();
    return {
      address,
      close: async () => {
        stopLooking();
        await stop(server);
        await ledger.close();
        await rm(join(options.data, ADDRESS_FILE), { force: true });
      },
    };
  } catch (refused) {
    await ledger.close();
    throw refused;
  }
}

/** Names that a browser may ask for this host by; the last is the one to give to other devices. */
function namesOf(lan: boolean): readonly string[] {
  const own = ['localhost', '127.0.0.1', '[::1]'];
  if (!lan) return own;
  const addresses = Object.values(networkInterfaces())
    .flatMap(each => each ?? [])
    .filter(each => !each.internal)
    .map(each => (each.family === 'IPv6' ? `[${each.address}]` : each.address));
  const name = hostname().toLowerCase();
  return [
    ...own,
    name,
    `${name}.local`,
    ...addresses.filter(each => each.startsWith('[')),
    ...addresses.filter(each => !each.startsWith('[')),
  ];
}

/** Signs what paired devices carry. Delete the file, and every device has to be paired anew. */
async function secretOf(data: string): Promise<Uint8Array> {
  const file = join(data, 'pairing.key');
  await mkdir(data, { recursive: true });
  try {
    await writeFile(file, randomBytes(32), { flag: 'wx', mode: 0o600 });
  } catch (refused) {
    if (!(refused instanceof Error && 'code' in refused && refused.code === 'EEXIST')) throw refused;
  }
  return readFile(file);
}

async function writeAddress(data: string, address: string): Promise<void> {
  await mkdir(data, { recursive: true });
  await writeFile(join(data, ADDRESS_FILE), JSON.stringify({ address, process: process.pid }));
}

const listen = (fetch: Parameters<typeof serve>[0]['fetch'], port: number, hostname: string): Promise<Server> =>
  new Promise((listening, failed) => {
    const server = serve({ fetch, port, hostname }, () => listening(server)) as Server;
    server.headersTimeout = 10_000;
    server.requestTimeout = 20_000;
    server.maxConnections = 500;
    server.once('error', failed);
  });

function portOf(server: Server): number {
  const address = server.address();
  return typeof address === 'object' && address !== null ? address.port : 0;
}

const stop = (server: Server): Promise<void> =>
  new Promise(stopped => {
    server.close(() => stopped());
    // Pages that follow keep their line open for ever.
    server.closeAllConnections();
  });

/** Does `task` again and again with a pause between; returns how to stop. */
function every(pauseMs: number, task: () => Promise<void>, trouble: (trouble: unknown) => void): () => void {
  let timer: NodeJS.Timeout | undefined;
  let stopped = false;
  const round = async (): Promise<void> => {
    await task().catch(trouble);
    if (!stopped) timer = setTimeout(round, pauseMs);
  };
  timer = setTimeout(round, pauseMs);
  return () => {
    stopped = true;
    clearTimeout(timer);
  };
}
