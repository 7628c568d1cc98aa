import { hostname } from 'node:os';
import type { Manifest } from '../../src/render/packet.ts';
import { launchBrowser } from './browser.ts';
import { aStation } from './station.ts';

/** The scan page as a device elsewhere in the shop asks for it, by this machine's name: no secure page to a browser. */
export async function openFarScanPage(manifest: Manifest) {
  const name = hostname().toLowerCase();
  const station = await aStation([manifest], { lan: true });
  const browser = await launchBrowser([`--host-resolver-rules=MAP ${name} 127.0.0.1`]);
  const page = await browser.newPage();
  await page.goto(`http://${name}:${new URL(station.address()).port}/station/saw`);
  await page.waitForSelector('#scan[data-ready=yes]');
  const close = async (): Promise<void> => {
    await browser.close();
    await station.remove();
  };
  return { page, close };
}
