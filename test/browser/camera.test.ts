import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { type Filming, launchFilming } from '../support/camera.ts';
import { openFarScanPage } from '../support/far-page.ts';
import { filmOf } from '../support/film.ts';
import { printed, violations } from '../support/look.ts';
import { aManifest } from '../support/manifest.ts';
import { aStation, card, openScanPage, type TestStation, text } from '../support/station.ts';

let folder: string;
/** Has a camera that always sees the tag of B2.A.1L-RT. */
let filming: Filming;
let station: TestStation;
let context: BrowserContext;
let page: Page;
let complaints: string[];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'film-'));
  const printer = await launchBrowser();
  const prints = await aStation([aManifest()]);
  const film = await filmOf(await printed(printer, `${prints.address()}/tag/K7/B2.A.1L-RT`));
  await prints.remove();
  await printer.close();
  filming = await launchFilming(film, join(folder, 'tag.mjpeg'));
});
afterAll(async () => {
  await filming?.browser.close();
  await rm(folder, { recursive: true, force: true });
});

beforeEach(async () => {
  station = await aStation([aManifest()]);
  context = await filming.context({ permissions: ['camera'] });
  page = await context.newPage();
  complaints = [];
  page.on('pageerror', error => complaints.push(String(error)));
  page.on('console', line => line.type() === 'error' && complaints.push(line.text()));
  return async () => {
    await context.close();
    await station.remove();
    expect(complaints).toEqual([]);
  };
});

const scansKept = async (): Promise<number> =>
  (await (await fetch(`${station.address()}/export.csv`)).text()).trimEnd().split('\r\n').length - 1;

/** Whether the camera is let go of: no light beside it shines any more. */
const cameraIsOff = (): Promise<boolean> =>
  page.evaluate(() => (document.querySelector('video') as HTMLVideoElement).srcObject === null);

describe('the living camera', () => {
  it('marks the piece before it done, once, however long it is held there', async () => {
    const sent: string[] = [];
    page.on('request', request => request.method() === 'POST' && sent.push(request.url()));
    await openScanPage(page, station);
    await page.click('#camera-start');
    await expect.poll(() => card(page)).toMatch(/Done: Crosscut to rough length B2\.A\.1L-RT/);
    await page.waitForTimeout(6000);
    expect(sent).toHaveLength(1);
    expect(await scansKept()).toBe(1);
    expect(await text(page, '#camera-says')).toMatch(/Hold a tag/);
    expect(await violations(page)).toEqual([]);
  });

  it('reads away from the page, which stays free meanwhile', async () => {
    await openScanPage(page, station);
    await page.click('#camera-start');
    await expect.poll(() => card(page)).toMatch(/Done/);
    expect(page.workers().map(each => new URL(each.url()).pathname)).toEqual(['/files/tag-reader-worker.js']);
  });

  it.each([
    ['Escape', 'wherever the focus is', async () => page.focus('#code')],
    ['Enter', 'on its button, which has the focus', async () => undefined],
  ])('is left by %s %s, and takes the tag anew when it is started again', async (key, _where, focus) => {
    await openScanPage(page, station);
    await page.focus('#camera-start');
    await page.keyboard.press('Enter');
    await expect.poll(() => card(page)).toMatch(/Done/);
    await focus();
    await page.keyboard.press(key);
    await expect.poll(() => page.locator('#camera').isVisible()).toBe(false);
    expect(await cameraIsOff()).toBe(true);
    expect(await scansKept()).toBe(1);
    await page.click('#camera-start');
    await expect.poll(() => card(page)).toMatch(/Scanned before/);
  });

  it('is let go of when the page is hidden', async () => {
    await openScanPage(page, station);
    await page.click('#camera-start');
    await page.waitForSelector('#camera');
    const live = await page.evaluateHandle(async () => {
      const video = document.querySelector('video') as HTMLVideoElement;
      while (video.srcObject === null) await new Promise(passed => setTimeout(passed, 20));
      return (video.srcObject as MediaStream).getVideoTracks()[0];
    });
    expect(await live.evaluate(track => track?.readyState)).toBe('live');
    await page.evaluate(() => {
      Object.defineProperty(document, 'hidden', { value: true });
      document.dispatchEvent(new Event('visibilitychange'));
    });
    expect(await live.evaluate(track => track?.readyState)).toBe('ended');
    expect(await text(page, '#camera-says')).toBe('The camera has stopped.');
    expect(await page.locator('#camera').isVisible()).toBe(false);
  });

  it('offers a light where the camera has one', async () => {
    await page.addInitScript(() => {
      const { prototype } = MediaStreamTrack;
      prototype.getCapabilities = () => ({ torch: true }) as MediaTrackCapabilities;
      prototype.applyConstraints = async wanted => {
        document.title = JSON.stringify(wanted);
      };
    });
    await openScanPage(page, station);
    await page.click('#camera-start');
    await page.click('#camera-torch');
    await expect.poll(() => page.getAttribute('#camera-torch', 'aria-pressed')).toBe('true');
    expect(await page.title()).toBe('{"advanced":[{"torch":true}]}');
    expect(await violations(page)).toEqual([]);
    await page.click('#camera-torch');
    await expect.poll(() => page.title()).toBe('{"advanced":[{"torch":false}]}');
  });

  it('says so where the reader does not come from the host, and tries anew when it is started again', async () => {
    await context.route('**/zxing_reader.wasm', route => route.abort());
    await openScanPage(page, station);
    await page.click('#camera-start');
    await expect.poll(() => text(page, '#camera-says')).toMatch(/reader did not come/);
    expect(await cameraIsOff()).toBe(true);
    await context.unroute('**/zxing_reader.wasm');
    await page.click('#camera-start');
    await expect.poll(() => card(page)).toMatch(/Done: Crosscut/);
    complaints.length = 0;
  });
});

describe('where the living camera cannot be had, the page says why', () => {
  it('permission refused', async () => {
    await context.clearPermissions();
    await openScanPage(page, station);
    await page.click('#camera-start');
    await expect.poll(() => text(page, '#camera-says')).toMatch(/told to refuse the camera/);
    expect(await page.locator('#camera').isVisible()).toBe(false);
    expect(await page.locator('label[for=photo]').isVisible()).toBe(true);
    expect(await violations(page)).toEqual([]);
  });

  it('no camera', async () => {
    const blind = await launchBrowser(['--use-fake-ui-for-media-stream']);
    const other = await blind.newPage({ locale: 'es' });
    await openScanPage(other, station);
    await other.click('#camera-start');
    await expect.poll(() => text(other, '#camera-says')).toMatch(/No se encontró ninguna cámara/);
    await blind.close();
  });

  it('no secure page', async () => {
    const { page: far, close } = await openFarScanPage(aManifest());
    await far.click('#camera-start');
    await expect.poll(() => text(far, '#camera-says')).toMatch(/only on the host itself or under an https address/);
    await close();
  });
});
