import type { Hono } from 'hono';
import { beforeEach, describe, expect, it } from 'vitest';
import { shelve } from '../../src/station/floor/shelf.ts';
import type { Ledger } from '../../src/station/ledger/ledger.ts';
import { openSqlite } from '../../src/station/ledger/sqlite.ts';
import { shopApp } from '../../src/station/web/app.ts';
import { openPairing } from '../../src/station/web/pairing.ts';
import { aDesk, aScan } from '../support/day.ts';
import { aManifest } from '../support/manifest.ts';

const LOOPBACK = '127.0.0.1';
const TABLET = '192.0.2.17';

let now: Date;
let app: Hono;
let ledger: Ledger;
let shown: string[];
let troubles: unknown[];

beforeEach(async () => {
  now = new Date('2026-03-04T08:00:00.000Z');
  shown = [];
  troubles = [];
  ledger = { ...(await openSqlite(':memory:', 'test')) };
  app = await anApp(1000);
});

async function anApp(perSecond: number): Promise<Hono> {
  const manifests = [aManifest()];
  const { desk } = await aDesk(manifests, ledger);
  const shelf = shelve(manifests);
  return shopApp({
    desk,
    ledger,
    packets: { shelf: () => shelf, problems: () => [], look: async () => undefined },
    guard: {
      names: () => ['localhost', '127.0.0.1', 'shop.local'],
      pairing: openPairing(
        new Uint8Array(32).fill(7),
        () => now,
        code => shown.push(code),
      ),
      pairAddress: () => 'http://shop.local:8080/pair',
      perSecond,
    },
    host: { now: () => now },
    tell: trouble => troubles.push(trouble),
  });
}

type Ask = { readonly from?: string; readonly host?: string; readonly headers?: Record<string, string> };

const ask = (
  path: string,
  { from = LOOPBACK, host = 'localhost:8080', headers = {} }: Ask = {},
  init: RequestInit = {},
) =>
  app.fetch(new Request(`http://${host}${path}`, { ...init, headers: { host, ...headers } }), {
    incoming: { socket: { remoteAddress: from, remotePort: 1, remoteFamily: 'IPv4' } },
  });

const post = (body: string, asked: Ask = {}) => {
  const headers = { 'content-type': 'application/json', 'content-length': lengthOf(body), ...asked.headers };
  return ask('/scans', { ...asked, headers }, { method: 'POST', body });
};

const lengthOf = (body: string): string => String(new TextEncoder().encode(body).length);

const aBody = (but: object = {}) => JSON.stringify({ ...aScan(JSON.stringify(but), { code: 'B1.A.1L-SL' }), ...but });

/** A device that has typed the code. */
async function paired(): Promise<Record<string, string>> {
  await ask('/', {});
  const answer = await typeCode(shown.at(-1) ?? '');
  return { cookie: (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '' };
}

const typeCode = (code: string) => {
  now = new Date(now.getTime() + 2000);
  const body = new URLSearchParams({ code }).toString();
  const headers = { 'content-type': 'application/x-www-form-urlencoded', 'content-length': lengthOf(body) };
  return ask('/pair', { from: TABLET, headers }, { method: 'POST', body });
};

describe('the pages on a shop’s network', () => {
  it('are for paired devices: any other sees only where to pair', async () => {
    const page = await ask('/', { from: TABLET, headers: { accept: 'text/html' } });
    expect([page.status, page.headers.get('location')]).toEqual([302, '/pair']);
    expect((await ask('/progress/K7', { from: TABLET })).status).toBe(401);
    expect((await post(aBody(), { from: TABLET })).status).toBe(401);
    expect((await ask('/live', { from: TABLET })).status).toBe(401);
    expect((await ask('/pair', { from: TABLET })).status).toBe(200);
    expect((await ask('/files/scan-page.js', { from: TABLET })).status).toBe(401);
    expect(await ledger.after(0, 10)).toEqual([]);
  });

  it('let a device in for good once it has typed the code of the host’s screen', async () => {
    const headers = await paired();
    expect((await ask('/', { from: TABLET, headers })).status).toBe(200);
    expect((await post(aBody(), { from: TABLET, headers })).status).toBe(200);
    now = new Date('2026-12-01T08:00:00.000Z');
    expect((await ask('/', { from: TABLET, headers })).status).toBe(200);
  });

  it('give a cookie that scripts and strangers’ pages cannot use', async () => {
    await ask('/');
    const answer = await typeCode(shown.at(-1) ?? '');
    expect(answer.headers.get('set-cookie')).toMatch(/HttpOnly/);
    expect(answer.headers.get('set-cookie')).toMatch(/SameSite=Strict/);
  });

  it('take a code once, and show another', async () => {
    await ask('/');
    const [code = ''] = shown;
    expect((await typeCode(code)).status).toBe(303);
    expect((await typeCode(code)).status).toBe(403);
    expect(shown.length).toBe(2);
    expect(shown[1]).not.toBe(code);
  });

  it('change the code after five wrong ones, and hear one try a second', async () => {
    await ask('/');
    const [code = ''] = shown;
    for (let tries = 0; tries < 5; tries += 1) expect((await typeCode('AAAAAA')).status).toBe(403);
    expect(shown.length).toBe(2);
    expect((await typeCode(code)).status).toBe(403);
    const fresh = shown.at(-1) ?? '';
    now = new Date(now.getTime() - 1500);
    expect((await typeCode(fresh)).status, 'half a second after the last').toBe(403);
    expect((await typeCode(fresh)).status).toBe(303);
  });

  it.each([
    ['nothing of ours', 'stilebook_device=hello'],
    ['a device without its signature', 'stilebook_device=ad246f3b4a3dd8b290e432dc'],
    ['another signature', `stilebook_device=ad246f3b4a3dd8b290e432dc.${'0'.repeat(64)}`],
    ['an empty device', `stilebook_device=.${'0'.repeat(64)}`],
  ])('do not take a cookie with %s', async (_, cookie) => {
    expect((await ask('/progress/K7', { from: TABLET, headers: { cookie } })).status).toBe(401);
  });

  it.each(['x-forwarded-for', 'forwarded'])(
    'do not take for the host what comes through it, as %s says',
    async name => {
      await ask('/');
      const headers = { [name]: `for=${TABLET}` };
      expect((await ask('/progress/K7', { headers })).status).toBe(401);
      expect((await ask('/ledger.jsonl', { headers: { ...headers, ...(await paired()) } })).status).toBe(403);
      expect((await ask('/progress/K7', { headers: { ...headers, ...(await paired()) } })).status).toBe(200);
    },
  );

  it('give the whole ledger to the host itself only', async () => {
    const headers = await paired();
    expect((await ask('/ledger.jsonl', { from: TABLET, headers })).status).toBe(403);
    expect((await ask('/ledger.jsonl')).status).toBe(200);
  });

  it('show the pairing code on the host’s own screen only', async () => {
    const headers = await paired();
    expect(await (await ask('/', { from: TABLET, headers })).text()).not.toContain(shown.at(-1));
    const own = await (await ask('/')).text();
    expect(own).toContain(shown.at(-1));
    expect(own).toContain('http://shop.local:8080/pair');
  });
});

describe('a request', () => {
  it('by a name that is not the host’s is turned away: somebody’s page points here', async () => {
    expect((await ask('/', { host: 'evil.example' })).status).toBe(421);
    expect((await ask('/', { host: 'SHOP.local:8080' })).status).toBe(200);
  });

  it.each([
    [{ origin: 'http://evil.example' }, 403],
    [{ origin: 'null' }, 403],
    [{ origin: 'http://localhost:9999' }, 403],
    [{ 'sec-fetch-site': 'cross-site' }, 403],
    [{ 'sec-fetch-site': 'same-site' }, 403],
    [{ origin: 'http://localhost:8080', 'sec-fetch-site': 'same-origin' }, 200],
    [{}, 200],
  ] as const)('that scans from %o is answered %i', async (headers, status) => {
    expect((await post(aBody(), { headers })).status).toBe(status);
    expect((await ledger.after(0, 10)).length).toBe(status === 200 ? 1 : 0);
  });

  it.each([
    ['no JSON', '{"key":'],
    ['nothing', ''],
    ['a list', '[]'],
    ['a short key', aBody({ key: 'abc' })],
    ['a key of other letters', aBody({ key: 'Z'.repeat(32) })],
    ['a field too many', aBody({ admin: true })],
    ['an unknown act', aBody({ act: 'delete' })],
    ['a time that is none', aBody({ at: 'yesterday' })],
    ['an endless code', aBody({ code: 'A'.repeat(81) })],
    ['a line break in a reason', aBody({ reason: 'a\nb' })],
    ['an escape of the terminal', aBody({ device: '\u001b[2J' })],
    ['a zero byte', aBody({ station: 'saw\u0000' })],
    ['a lone surrogate', aBody({ reason: '\ud800' })],
  ])('with %s is refused, and nothing is kept', async (_, body) => {
    expect((await post(body)).status).toBe(400);
    expect(await ledger.after(0, 10)).toEqual([]);
  });

  it('of more than eight kilobytes is not read', async () => {
    expect((await post(JSON.stringify({ reason: 'x'.repeat(9000) }))).status).toBe(413);
  });

  it('that does not say how long it is is not read', async () => {
    const body = aBody();
    const answer = await app.fetch(
      new Request('http://localhost:8080/scans', { method: 'POST', body, headers: { host: 'localhost:8080' } }),
      { incoming: { socket: { remoteAddress: LOOPBACK } } },
    );
    expect(answer.status).toBe(411);
  });

  it('too many in a second from one address wait; others do not', async () => {
    app = await anApp(2);
    const statuses = [];
    for (let at = 0; at < 8; at += 1) statuses.push((await ask('/progress')).status);
    expect(statuses).toEqual([200, 200, 200, 200, 200, 200, 429, 429]);
    expect((await ask('/pair', { from: TABLET })).status).toBe(200);
    now = new Date(now.getTime() + 1000);
    expect([(await ask('/progress')).status, (await ask('/progress')).status, (await ask('/progress')).status]).toEqual(
      [200, 200, 429],
    );
  });

  it.each([
    '/files/../../package.json',
    '/files/..%2f..%2fpackage.json',
    '/files/words.en.json',
    '/files/scan.hbs',
    '/files/%00',
    '/files/zxing/../../package.json',
    '/nowhere',
    '/station/nowhere',
    '/progress/nowhere',
    '/tag/K7/nowhere',
    '/tag/nowhere/B1.A.1L-SL',
    '/constructor',
  ])('for %s finds nothing', async path => {
    expect((await ask(path)).status).toBe(404);
  });

  it.each(['/', '/progress/K7', '/pair', '/nowhere', '/files/scan-page.js', '/export.csv', '/api/progress/K7'])(
    'for %s is answered with all the headers that keep a page to itself',
    async path => {
      const { headers } = await ask(path);
      expect(headers.get('content-security-policy')).toMatch(
        /default-src 'none'.*script-src 'self' 'wasm-unsafe-eval'/,
      );
      expect(headers.get('content-security-policy')).not.toMatch(/unsafe-inline|https?:|\*/);
      const allowed = headers.get('permissions-policy')?.split(', ') ?? [];
      expect(allowed.filter(each => !each.endsWith('=()'))).toEqual(['camera=(self)']);
      expect(allowed).toContain('microphone=()');
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
    },
  );

  it('while the ledger cannot be written is told so, and the same scan is kept later', async () => {
    const append = ledger.append;
    Object.assign(ledger, { append: async () => Promise.reject(new Error('database or disk is full')) });
    expect((await post(aBody())).status).toBe(503);
    expect(troubles).toHaveLength(1);
    Object.assign(ledger, { append });
    expect((await post(aBody())).status).toBe(200);
    expect(await (await ask('/api/progress/K7')).json()).toMatchObject({ steps: { done: 1 } });
  });
});
