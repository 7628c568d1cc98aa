import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { machine } from '../../src/machine.ts';
import type { Manifest } from '../../src/render/packet.ts';
import { type Station, type StationOptions, startStation } from '../../src/station/server.ts';

/** A station with a folder of its own, that can be stopped and started again as a shop's host is. */
export type TestStation = {
  readonly folder: string;
  readonly address: () => string;
  readonly put: (manifest: Manifest) => Promise<void>;
  readonly stop: () => Promise<void>;
  readonly start: () => Promise<void>;
  readonly remove: () => Promise<void>;
  readonly troubles: readonly unknown[];
  readonly codes: readonly string[];
};

export async function aStation(
  manifests: readonly Manifest[],
  but: Partial<StationOptions> = {},
): Promise<TestStation> {
  const folder = await mkdtemp(join(tmpdir(), 'station-'));
  const troubles: unknown[] = [];
  const codes: string[] = [];
  let port = 0;
  let running: Station | undefined;
  const put = async (manifest: Manifest): Promise<void> => {
    const place = join(folder, 'packets', manifest.job.number, manifest.job.revision);
    await mkdir(place, { recursive: true });
    await writeFile(join(place, 'manifest.json'), JSON.stringify(manifest));
  };
  const start = async (): Promise<void> => {
    const options = {
      data: join(folder, 'data'),
      database: undefined,
      shop: 'test',
      lan: false,
      packets: [],
      packetsRoot: join(folder, 'packets'),
      requestsPerSecond: 1000,
      ...but,
    };
    const tell = { trouble: (each: unknown) => troubles.push(each), pairingCode: (code: string) => codes.push(code) };
    running = await startStation({ ...options, port }, machine, tell);
    port = Number(new URL(running.address).port);
  };
  const stop = async (): Promise<void> => {
    await running?.close();
    running = undefined;
  };
  for (const manifest of manifests) await put(manifest);
  await start();
  return {
    folder,
    address: () => `http://127.0.0.1:${port}`,
    put,
    start,
    stop,
    troubles,
    codes,
    remove: async () => {
      await stop();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/** A scanner: a fast keyboard that ends with a key of its own, wherever the focus is. */
export async function scan(page: Page, code: string, how: { delay?: number; end?: 'Enter' | 'Tab' | '' } = {}) {
  await page.keyboard.type(code, { delay: how.delay ?? 1 });
  if (how.end !== '') await page.keyboard.press(how.end ?? 'Enter');
}

export async function openScanPage(page: Page, station: TestStation, at = 'saw'): Promise<void> {
  await page.goto(`${station.address()}/station/${at}`);
  await page.waitForSelector('#scan[data-ready=yes]');
}

/** What can be read at a place of the page, in one line. */
export const text = async (page: Page, place: string): Promise<string> =>
  (await page.locator(place).allInnerTexts()).join(' ').replaceAll(/\s+/g, ' ');

/** What the large card says. */
export const card = (page: Page): Promise<string> => text(page, '#answer');
