import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { barcodeFor } from '../../src/codes/barcode.ts';
import { posterBarcode } from '../../src/codes/poster.ts';
import { launchBrowser } from '../support/browser.ts';
import { openFarScanPage } from '../support/far-page.ts';
import { photograph } from '../support/film.ts';
import { printed, violations } from '../support/look.ts';
import { aManifest } from '../support/manifest.ts';
import { readSymbols } from '../support/read-symbols.ts';
import { aStation, card, openScanPage, scan, type TestStation, text } from '../support/station.ts';

const tag = (code: string) => barcodeFor('K7', code);

let browser: Browser;
let context: BrowserContext;
let station: TestStation;
let page: Page;
const strangers: string[] = [];
const complaints: string[] = [];

beforeAll(async () => {
  browser = await launchBrowser();
  context = await browser.newContext({ viewport: { width: 1024, height: 768 } });
  context.on('request', request => {
    if (!request.url().startsWith(station.address()) && !request.url().startsWith('blob:'))
      strangers.push(request.url());
  });
});
afterAll(async () => {
  await browser?.close();
});

/**
 * Every test has its own host, ledger and device: what a page keeps, it keeps for the port of its host, and cookies are
 * taken away. To open a browser's windows anew for each would take as long as the tests.
 */
beforeEach(async () => {
  strangers.length = 0;
  complaints.length = 0;
  station = await aStation([aManifest()]);
  page = await context.newPage();
  page.on('pageerror', error => complaints.push(String(error)));
  page.on('dialog', dialog => {
    complaints.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  return async () => {
    for (const each of context.pages()) await each.close();
    await context.clearCookies();
    await station.remove();
    expect(strangers, 'nothing is asked of anybody outside').toEqual([]);
    expect(complaints).toEqual([]);
  };
});

const progress = async () =>
  (await (await fetch(`${station.address()}/api/progress/K7`)).json()) as {
    readonly operations: readonly { readonly id: string; readonly done: number }[];
    readonly recent: readonly { readonly pieces: readonly string[]; readonly operation: string }[];
  };
const doneAt = async (operation: string) => (await progress()).operations.find(each => each.id === operation)?.done;

describe('a scanner', () => {
  it('is read as fast or slow as it types, and with whatever it ends', async () => {
    await openScanPage(page, station);
    for (const [code, delay, end] of [
      ['B1.A.1L-SL', 1, 'Enter'],
      ['B1.A.1L-SR', 30, 'Enter'], // Over the air.
      ['B2.A.1L-SL', 1, 'Tab'],
      ['B2.A.1L-SR', 8, ''], // Set to end with nothing.
    ] as const) {
      await scan(page, tag(code), { delay, end });
      await expect.poll(() => card(page)).toContain(`Done: Crosscut to rough length ${code} 30 × 2 × 3/4`);
      expect(await page.inputValue('#code')).toBe('');
    }
  });

  it('is read whatever has the focus, and presses nothing', async () => {
    await openScanPage(page, station);
    await scan(page, tag('B1.A.1L-SL'));
    await expect.poll(() => card(page)).toMatch(/Done/);
    for (const [focused, code] of [
      ['#undo', 'B1.A.1L-SR'],
      ['#spoil', 'B2.A.1L-SL'],
      ['a[href="/progress"]', 'B2.A.1L-SR'],
      ['summary', 'B3.A.1L-SL'],
    ] as const) {
      await page.focus(focused);
      await scan(page, tag(code));
      await expect.poll(() => card(page)).toContain(`Done: Crosscut to rough length ${code}`);
      expect(page.url()).toMatch(/station\/saw$/);
      expect(await page.getAttribute('#spoil', 'aria-pressed')).toBe('false');
    }
    expect(await doneAt('crosscut-rough')).toBe(5);
  });

  it('is read where nothing has the focus', async () => {
    await openScanPage(page, station);
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await scan(page, tag('B1.A.1L-SL'));
    await expect.poll(() => card(page)).toMatch(/Done/);
  });

  it('is read although the computer stops to think in the middle of it', async () => {
    await openScanPage(page, station);
    for (const [focused, code] of [
      ['#code', 'B1.A.1L-SL'],
      ['#spoil', 'B1.A.1L-SR'],
    ] as const) {
      await page.focus(focused);
      await page.keyboard.type(tag(code).slice(0, 6));
      await page.waitForTimeout(300);
      await scan(page, tag(code).slice(6));
      await expect.poll(() => card(page)).toContain(`Done: Crosscut to rough length ${code}`);
    }
  });

  it('presses nothing where its Enter comes late', async () => {
    await openScanPage(page, station);
    await page.focus('a[href="/progress"]');
    await scan(page, tag('B1.A.1L-SL'), { end: '' });
    await expect.poll(() => card(page)).toMatch(/Done/);
    await page.focus('a[href="/progress"]');
    await page.keyboard.press('Enter');
    await page.waitForTimeout(200);
    expect(page.url()).toMatch(/station\/saw$/);
    await page.waitForTimeout(1500);
    await page.keyboard.press('Enter');
    await page.waitForURL(/progress$/);
  });

  it('is read over what somebody began to type', async () => {
    await openScanPage(page, station);
    await page.focus('#code');
    await page.keyboard.type('B1.', { delay: 200 });
    await page.waitForTimeout(300);
    await scan(page, tag('B1.A.1L-SL'));
    await expect.poll(() => card(page)).toMatch(/Done: Crosscut to rough length B1\.A\.1L-SL/);
  });

  it('is read although its keyboard is another than the computer’s', async () => {
    await openScanPage(page, station);
    // A US scanner on a French computer: the place of Q gives an a, the digits give signs.
    const french: { readonly [place: string]: string } = {
      Q: 'a',
      W: 'z',
      A: 'q',
      Z: 'w',
      M: ',',
      1: '&',
      2: 'é',
      3: '"',
    };
    const session = await page.context().newCDPSession(page);
    for (const character of tag('B1.A.1L-SL')) {
      const key = french[character] ?? character.toLowerCase();
      const code = /\d/.test(character) ? `Digit${character}` : `Key${character}`;
      await session.send('Input.dispatchKeyEvent', { type: 'keyDown', key, code, text: key });
      await session.send('Input.dispatchKeyEvent', { type: 'keyUp', key, code });
    }
    await page.keyboard.press('Enter');
    await expect.poll(() => card(page)).toMatch(/Done: Crosscut to rough length B1\.A\.1L-SL/);
  });

  it('is read on a tablet that gives no keys, only text', async () => {
    await openScanPage(page, station);
    await page.focus('#code');
    await page.keyboard.insertText(tag('B1.A.1L-SL'));
    await expect.poll(() => card(page)).toMatch(/Done/);
  });

  it('loses none of sixteen tags in a row, and keeps their order', async () => {
    await openScanPage(page, station);
    const codes = ['B1', 'B2', 'B3', 'B4'].flatMap(each =>
      ['SL', 'SR', 'RT', 'RB'].map(role => `${each}.A.1L-${role}`),
    );
    for (const code of codes) await scan(page, tag(code));
    await expect.poll(() => doneAt('crosscut-rough')).toBe(16);
    expect((await progress()).recent.flatMap(each => each.pieces).reverse()).toEqual(codes);
  });
});

describe('a code by hand', () => {
  it('is taken at a hand’s pace, in small letters', async () => {
    await openScanPage(page, station);
    await page.focus('#code');
    await scan(page, 'b1.a.1l-sl', { delay: 130 });
    await expect.poll(() => card(page)).toMatch(/Done: Crosscut to rough length B1\.A\.1L-SL/);
  });

  it('is told to be mistyped where the check character says so', async () => {
    await openScanPage(page, station);
    const right = tag('B1.A.1L-SL');
    await page.fill('#code', `${right.slice(0, 10)}${right[10] === 'A' ? 'B' : 'A'}`);
    await page.click('button[type=submit]');
    await expect.poll(() => card(page)).toMatch(/Misread or mistyped/);
    expect(await page.getAttribute('#answer', 'data-tone')).toBe('stop');
  });

  it('comes from a photograph where nothing else is at hand', async () => {
    const picture = await printed(browser, `${station.address()}/tag/K7/B2.A.1L-RT`);
    await openScanPage(page, station);
    await page.setInputFiles('#photo', { name: 'tag.png', mimeType: 'image/png', buffer: picture });
    await expect.poll(() => card(page)).toMatch(/Done: Crosscut to rough length B2\.A\.1L-RT/);
    const other = await printed(browser, `${station.address()}/tag/K7/B3.A.1L-RT`);
    const both = await photograph(other, picture);
    await page.setInputFiles('#photo', { name: 'bench.png', mimeType: 'image/png', buffer: both });
    await expect.poll(() => card(page)).toMatch(/Done: Crosscut to rough length B3\.A\.1L-RT/);
    const blank = await page.locator('h1').screenshot();
    await page.setInputFiles('#photo', { name: 'wall.png', mimeType: 'image/png', buffer: blank });
    await expect.poll(() => card(page)).toMatch(/No tag was found/);
  });
});

describe('the page', () => {
  it('takes back the last scan, by button and by poster', async () => {
    await openScanPage(page, station);
    await scan(page, tag('B1.A.1L-SL'));
    await expect.poll(() => doneAt('crosscut-rough')).toBe(1);
    await scan(page, tag('B1.A.1L-SR'));
    await expect.poll(() => doneAt('crosscut-rough')).toBe(2);
    await page.click('#undo');
    await expect.poll(() => card(page)).toMatch(/Taken back B1\.A\.1L-SR/);
    await scan(page, posterBarcode({ kind: 'action', action: 'undo' }));
    await expect.poll(() => card(page)).toMatch(/Taken back B1\.A\.1L-SL/);
    expect(await doneAt('crosscut-rough')).toBe(0);
    expect(await page.isDisabled('#undo')).toBe(true);
  });

  it('asks before it counts out of order, keeps the question through a reload, and takes a reason', async () => {
    await openScanPage(page, station, 'router');
    await scan(page, tag('B1.A.1L-SL'));
    await expect.poll(() => card(page)).toMatch(/Steps before this one are not scanned/);
    expect(await page.getAttribute('#answer', 'data-tone')).toBe('ask');
    await page.reload();
    await page.waitForSelector('#questions .card');
    expect(await doneAt('groove')).toBe(0);
    await page.click('#questions >> text=A scan was forgotten');
    await expect.poll(() => card(page)).toMatch(/Done: Groove the inside edge B1\.A\.1L-SL/);
    expect(await card(page)).toMatch(/Earlier steps taken as done: 4/);
    expect(await card(page)).toMatch(/Lay it Tag up, inside edge to the bit/);
    expect(await card(page)).toMatch(/Push block: the fence is closer/);
    expect(await doneAt('cut-length')).toBe(1);
    const events = await (await fetch(`${station.address()}/export.csv`)).text();
    expect(events).toContain('"A scan was forgotten"');
  });

  it('goes on scanning while a question waits, and answers it by poster', async () => {
    await openScanPage(page, station, 'router');
    await scan(page, tag('B1.A.1L-SL'));
    await scan(page, tag('B1.A.1L-P1'));
    await expect.poll(() => page.locator('#questions .card').count()).toBe(1);
    await scan(page, posterBarcode({ kind: 'action', action: 'yes' }));
    await expect.poll(() => doneAt('rabbet-panel')).toBe(1);
    await scan(page, posterBarcode({ kind: 'action', action: 'no' }));
    await expect.poll(() => page.locator('#questions').isVisible()).toBe(false);
    expect(await doneAt('groove')).toBe(0);
  });

  it('goes to the station whose poster is scanned', async () => {
    await page.goto(station.address());
    await page.waitForLoadState('networkidle');
    await scan(page, posterBarcode({ kind: 'station', station: 'router' }));
    await page.waitForURL(/station\/router$/);
    await page.waitForSelector('#scan[data-ready=yes]');
    await scan(page, posterBarcode({ kind: 'station', station: 'saw' }));
    await page.waitForURL(/station\/saw$/);
  });

  it('goes on at its station when the device is opened anew, and lets whoever comes from there pick another', async () => {
    await openScanPage(page, station, 'router');
    await page.click('.head a');
    await page.waitForSelector('a.station[aria-current=true]');
    expect(await text(page, 'a.station[aria-current=true] strong')).toBe('Router table');
    expect(await violations(page)).toEqual([]);
    const opened = await page.context().newPage();
    await opened.goto(station.address());
    await opened.waitForURL(/station\/router$/);
    await opened.close();
  });

  it('sounds good where all is well and bad where it is not, unless somebody wants quiet', async () => {
    await page.addInitScript(() => {
      const heard: number[] = [];
      Object.assign(window, { heard });
      const start = OscillatorNode.prototype.start;
      OscillatorNode.prototype.start = function (when) {
        heard.push(this.frequency.value);
        start.call(this, when);
      };
    });
    const heard = () => page.evaluate(() => (window as unknown as { heard: number[] }).heard.splice(0));
    await openScanPage(page, station);
    await scan(page, tag('B1.A.1L-SL'));
    await expect.poll(heard).toEqual([880, 1320]);
    await scan(page, tag('B1.A.1L'));
    await expect.poll(heard).toEqual([196, 196]);
    await page.click('summary');
    await page.uncheck('#sound');
    await scan(page, tag('B1.A.1L-SR'));
    await expect.poll(() => card(page)).toMatch(/Done: Crosscut to rough length B1\.A\.1L-SR/);
    expect(await heard()).toEqual([]);
  });

  it('marks all pieces of a set-up card after asking', async () => {
    await openScanPage(page, station);
    await scan(page, tag('crosscut-rough-1'));
    await expect.poll(() => card(page)).toMatch(/All pieces of this set-up\? Crosscut to rough length Pieces: 16/);
    expect(await doneAt('crosscut-rough')).toBe(0);
    await page.click('#answer >> text=Yes, all done: 16');
    await expect.poll(() => doneAt('crosscut-rough')).toBe(16);
  });

  it('makes a spoiled piece anew, with a tag that a scanner reads', async () => {
    await openScanPage(page, station, 'saw');
    await page.click('#spoil');
    await scan(page, tag('B3.A.1L-P1'));
    await expect.poll(() => card(page)).toMatch(/Is this piece spoiled\?/);
    await page.click('#answer >> text=Cut wrong');
    await expect.poll(() => card(page)).toMatch(/make it again B3\.A\.1L-P1\+1/);
    expect(await card(page)).toMatch(/Offcut OFF-2 is large enough/);
    const address = await page.getAttribute('#answer a.button', 'href');
    const [symbol] = await readSymbols(await printed(browser, `${station.address()}${address}`));
    expect(symbol).toBe(tag('B3.A.1L-P1+1'));
    await scan(page, tag('B3.A.1L-P1'));
    await expect.poll(() => card(page)).toMatch(/This piece was spoiled/);
    await scan(page, symbol ?? '');
    await expect.poll(() => card(page)).toMatch(/Done: Cut panels to size B3\.A\.1L-P1\+1/);
  });

  it('shows progress live, on a page of its own', async () => {
    const watcher = await page.context().newPage();
    await watcher.goto(`${station.address()}/progress/K7`);
    await watcher.waitForLoadState('load');
    expect(await text(watcher, '.sums')).toContain('0 / 112');
    await openScanPage(page, station);
    await scan(page, tag('B1.A.1L-SL'));
    await expect.poll(() => text(watcher, '.sums')).toContain('1 / 112');
    expect(await text(watcher, '#live')).toMatch(/Last scans[\s\S]*B1\.A\.1L-SL/);
    await watcher.close();
  });

  it('learns of a new revision by itself, and asks about a piece that changed', async () => {
    await openScanPage(page, station);
    await scan(page, tag('B1.A.1L-SL'));
    await expect.poll(() => card(page)).toMatch(/Done/);
    await station.put(aManifest({ revision: 'B', height: '31 1/2' }));
    await expect
      .poll(async () => (await fetch(`${station.address()}/progress`)).text(), { timeout: 5000 })
      .toContain('Revision B');
    await scan(page, tag('B1.A.1L-SR'));
    await expect
      .poll(() => card(page))
      .toMatch(/This piece changed in revision B B1\.A\.1L-SR 31 1\/2 × 2 × 3\/4.*In revision A it was 30 × 2 × 3\/4/);
    await page.click('#answer >> text=The piece has the new size');
    await expect.poll(() => card(page)).toMatch(/Done: Crosscut to rough length B1\.A\.1L-SR/);
  });

  it('shows hostile names as the letters that they are', async () => {
    const hostile = '<img src=x onerror=alert(1)>"\'{{7*7}}';
    await station.put(aManifest({ number: 'H1', name: hostile, cabinets: [hostile] }));
    await expect
      .poll(async () => (await fetch(`${station.address()}/progress`)).text(), { timeout: 5000 })
      .toContain('H1');
    for (const path of ['/', '/progress/H1', `/tag/H1/${encodeURIComponent(`${hostile}.A.1L-SL`)}`]) {
      await page.goto(`${station.address()}${path}`);
      expect(await page.locator('img').count()).toBe(0);
      expect(await page.content()).not.toContain('<img');
    }
    await openScanPage(page, station);
    await scan(page, barcodeFor('H1', `${hostile}.A.1L-SL`));
    await expect.poll(() => card(page)).toContain(hostile);
    expect(await page.locator('img').count()).toBe(0);
  });

  it('speaks the browser’s language', async () => {
    const abroad = await browser.newContext({ locale: 'es-MX' });
    const spanish = await abroad.newPage();
    await openScanPage(spanish, station);
    expect(await text(spanish, 'label[for=code]')).toBe('Lea una etiqueta o escriba su código');
    await scan(spanish, tag('B1.A.1L-SL'));
    await expect.poll(() => card(spanish)).toMatch(/Hecho: /);
    await abroad.close();
  });

  it('works under a name of the shop’s network, where browsers withhold half of what they can', async () => {
    const { page: far, close } = await openFarScanPage(aManifest());
    expect(await far.evaluate(() => window.isSecureContext)).toBe(false);
    await scan(far, tag('B1.A.1L-SL'));
    await expect.poll(() => card(far)).toMatch(/Done/);
    await close();
  });
});

describe('without an answer from the host', () => {
  it('keeps scans on the device, says so, and sends them in their order when the host is back', async () => {
    await openScanPage(page, station);
    await station.stop();
    const codes = ['B4.A.1L-SL', 'B1.A.1L-SL', 'B3.A.1L-SL'];
    for (const code of codes) await scan(page, tag(code));
    await expect.poll(() => text(page, '#queue')).toContain('Kept on this device: 3');
    expect(await card(page)).toMatch(/Kept on this device/);
    expect(await page.getAttribute('#link', 'data-state')).toBe('lost');
    await station.start();
    await expect.poll(() => page.locator('#queue').isVisible(), { timeout: 15_000 }).toBe(false);
    expect((await progress()).recent.flatMap(each => each.pieces).reverse()).toEqual(codes);
    await expect.poll(() => page.getAttribute('#link', 'data-state')).toBe('ok');
  });

  it('keeps them through a reload of the page', async () => {
    await openScanPage(page, station);
    await page.route('**/scans', route => route.abort());
    await scan(page, tag('B1.A.1L-SL'));
    await expect.poll(() => text(page, '#queue')).toContain('1');
    await page.unroute('**/scans');
    await page.reload();
    await expect.poll(() => doneAt('crosscut-rough')).toBe(1);
  });

  it('sends again what was kept but not answered, and it counts once', async () => {
    await openScanPage(page, station);
    let lost = 0;
    await page.route('**/scans', async route => {
      if (lost > 1) return route.continue();
      lost += 1;
      await route.fetch();
      return route.abort();
    });
    await scan(page, tag('B1.A.1L-SL'));
    await expect.poll(() => card(page), { timeout: 10_000 }).toMatch(/Done: Crosscut to rough length/);
    expect(lost).toBe(2);
    const events = (await (await fetch(`${station.address()}/export.csv`)).text()).trimEnd().split('\r\n');
    expect(events).toHaveLength(2);
  });

  it('lets two tabs of one device queue side by side; both are sent', async () => {
    const other = await page.context().newPage();
    await openScanPage(page, station, 'saw');
    await openScanPage(other, station, 'saw');
    await station.stop();
    await page.bringToFront();
    await scan(page, tag('B1.A.1L-SL'));
    await expect.poll(() => text(page, '#queue')).toContain('1');
    await other.bringToFront();
    await scan(other, tag('B2.A.1L-SL'));
    await expect.poll(() => text(other, '#queue')).toContain('1');
    await station.start();
    await expect.poll(() => doneAt('crosscut-rough'), { timeout: 15_000 }).toBe(2);
    await expect.poll(() => card(other), { timeout: 15_000 }).toMatch(/Done: Crosscut to rough length B2/);
    await other.close();
  });
});

/** Screens that somebody looked at; and a rule engine looks at every one of them. */
describe('accessibility', () => {
  it('has no violation on any page, in any tone', async () => {
    const shown: string[] = [];
    const look = async (name: string) => {
      shown.push(...(await violations(page)).map(each => `${name}: ${each}`));
    };
    await page.goto(station.address());
    await look('home');
    await openScanPage(page, station);
    await look('scan, idle');
    for (const [name, code] of [
      ['go', 'B1.A.1L-SL'],
      ['note', 'B1.A.1L-SL'],
      ['stop', 'B1.A.1L'],
      ['ask', 'crosscut-rough-1'],
    ] as const) {
      await scan(page, tag(code));
      await expect.poll(() => page.getAttribute('#answer', 'data-tone')).toBe(name);
      await look(`scan, ${name}`);
    }
    await page.click('#spoil');
    await look('scan, spoiling');
    await page.goto(`${station.address()}/station/router`);
    await page.waitForSelector('#scan[data-ready=yes]');
    await scan(page, tag('B1.A.1L-SL'));
    await scan(page, tag('B1.A.1L-SR'));
    // The last scan's is shown large; beside it wait the one before and the batch's, which nobody answered.
    await expect.poll(() => page.locator('#questions .card').count()).toBe(2);
    await look('scan, three questions');
    for (const path of ['/progress', '/progress/K7', '/tag/K7/B1.A.1L-SL+1', '/pair', '/nowhere']) {
      await page.goto(`${station.address()}${path}`);
      await look(path);
    }
    expect(shown).toEqual([]);
  });
});
