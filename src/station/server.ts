import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Host } from '../host.ts';
import { type Desk, openDesk } from './desk.ts';
import type { Ledger } from './ledger/ledger.ts';
import { type LedgerPlace, openLedger } from './open-ledger.ts';
import { openPacketFolders, type PacketFolders } from './packet-folders.ts';
import { pairingKey } from './pairing-key.ts';
import { shopApp } from './web/app.ts';
import type { Guard } from './web/guard.ts';
import { listen, namesOf, portOf, stop } from './web/network.ts';
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
    const { guard, portIs } = await guardOf(options, host, tell);
    const app = shopApp({ desk, ledger, packets, guard, host, tell: tell.trouble });
    const server = await listen(app.fetch, options.port, options.lan);
    const stopLooking = every(LOOK_MS, () => lookAround(packets, ledger, desk), tell.trouble);
    portIs(portOf(server));
    const address = `http://127.0.0.1:${portOf(server)}`;
    await writeAddress(options.data, address, host);
    // The first code is shown as soon as a device can use it.
    guard.pairing?.code();
    const close = async (): Promise<void> => {
      stopLooking();
      await stop(server);
      await ledger.close();
      await rm(join(options.data, ADDRESS_FILE), { force: true });
    };
    return { address, close };
  } catch (refused) {
    await ledger.close();
    throw refused;
  }
}

/** Takes in new packets, and what other hosts on the same ledger have kept. */
async function lookAround(packets: PacketFolders, ledger: Ledger, desk: Desk): Promise<void> {
  await packets.look();
  if (ledger.shared) await desk.catchUp();
}

/** `portIs` is told the port once it is known, since it may be any that is free. */
async function guardOf(
  { lan, data, requestsPerSecond, ...options }: StationOptions,
  host: Host,
  tell: Tell,
): Promise<{ readonly guard: Guard; readonly portIs: (port: number) => void }> {
  let { port } = options;
  // Asked each time: a shop's router may give the host another address while it runs.
  const names = (): readonly string[] => namesOf(lan);
  const pairAddress = (): string => `http://${names().at(-1)}:${port}/pair`;
  const pairing = lan
    ? openPairing(await pairingKey(data, host), host.now, code => tell.pairingCode(code, pairAddress()))
    : undefined;
  return {
    guard: { names, pairing, pairAddress, perSecond: requestsPerSecond },
    portIs: known => {
      port = known;
    },
  };
}

async function writeAddress(data: string, address: string, host: Host): Promise<void> {
  await mkdir(data, { recursive: true });
  const where = JSON.stringify({ address, process: process.pid });
  await host.writeFile(join(data, ADDRESS_FILE), new TextEncoder().encode(where));
}

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
