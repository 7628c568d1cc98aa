import { dirname, join } from 'node:path';
import { machine } from '../machine.ts';
import { startStation, type Tell } from '../station/server.ts';
import type { ExitCode } from './exit-code.ts';
import { tellLine } from './telling.ts';

/** Where a shop keeps what its stations know; every command about scans takes these. */
export type FloorOptions = {
  readonly data: string;
  readonly database?: string;
  readonly shop: string;
  readonly packets?: string;
  readonly packet?: readonly string[];
};

export type StationCommandOptions = FloorOptions & { readonly port: number; readonly lan?: boolean };

/** More than a shop scans; less than what a broken page may ask for. */
const REQUESTS_PER_SECOND = 100;

/** `stilebook station`: serves the pages until it is told to stop. */
export async function station(options: StationCommandOptions): Promise<ExitCode> {
  const running = await startStation(
    {
      ...floorOf(options),
      port: options.port,
      lan: options.lan === true,
      requestsPerSecond: REQUESTS_PER_SECOND,
    },
    machine,
    TELL,
  );
  tellLine(`Stations: ${running.address}`);
  await asked();
  await running.close();
  return 0;
}

/** The inbox files packets beside the data folder unless they are said to be elsewhere. */
export const floorOf = (options: FloorOptions) => ({
  data: options.data,
  database: options.database,
  shop: options.shop,
  packets: options.packet ?? [],
  packetsRoot: options.packets ?? join(dirname(join(options.data, '.')), 'packets'),
});

/** Ctrl-C, or whoever started us. */
const asked = (): Promise<void> =>
  new Promise(stop => {
    process.once('SIGINT', () => stop());
    process.once('SIGTERM', () => stop());
  });

const TELL: Tell = {
  trouble: trouble => {
    process.stderr.write(`stilebook: ${trouble instanceof Error ? trouble.message : String(trouble)}\n`);
  },
  pairingCode: (code, address) => tellLine(`Pair a device: open ${address} on it and enter ${code}`),
};
