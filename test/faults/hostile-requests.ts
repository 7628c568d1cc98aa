import { connect } from 'node:net';
import fc from 'fast-check';
import { aScan } from '../support/day.ts';
import { aManifest } from '../support/manifest.ts';
import { aStation } from '../support/station.ts';

/** What a station did with what nobody should send. `lost`: it broke, or kept what it should not. */
export type Hostile = { readonly tried: number; readonly refused: number; readonly lost: readonly string[] };

/** Sends so many hostile requests, drawn from `seed`, and looks whether the station still works as before. */
export async function sendHostile(count: number, seed: number): Promise<Hostile> {
  const station = await aStation([aManifest({ cabinets: ['B1'] })], { requestsPerSecond: 1_000_000 });
  const lost: string[] = [];
  let refused = 0;
  for (const request of fc.sample(aRequest, { numRuns: count, seed })) {
    const status = await send(station.address(), request);
    if (status >= 500) lost.push(`${status}: ${JSON.stringify(request).slice(0, 300)}`);
    if (status >= 400 || status === 0) refused += 1;
  }
  lost.push(...station.troubles.map(trouble => `trouble: ${String(trouble)}`));
  const table = await (await fetch(`${station.address()}/export.csv`)).text();
  const kept = table.trimEnd().split('\r\n').length - 1;
  if (kept > 0) lost.push(`kept ${kept} events that nobody should have sent`);
  const good = await post(station.address(), JSON.stringify(aScan('good', { code: 'B1.A.1L-SL' })), {});
  if (good !== 200) lost.push(`a good scan after it all was answered ${good}`);
  await station.remove();
  return { tried: count, refused, lost };
}

type Request =
  | { readonly kind: 'bytes'; readonly bytes: Uint8Array }
  | { readonly kind: 'path'; readonly path: string; readonly method: string }
  | { readonly kind: 'body'; readonly body: string; readonly headers: { readonly [name: string]: string } };

const GOOD = aScan('hostile', { code: 'B1.A.1L-SL' });

/** Garbage of the kinds that reach a server: no HTTP at all, odd addresses, and bodies that are nearly right. */
const aRequest: fc.Arbitrary<Request> = fc.oneof(
  fc.record({ kind: fc.constant('bytes' as const), bytes: fc.oneof(fc.uint8Array({ maxLength: 400 }), brokenHttp()) }),
  fc.record({
    kind: fc.constant('path' as const),
    path: anAddress(),
    method: fc.constantFrom('GET', 'PUT', 'DELETE', 'PATCH', 'OPTIONS'),
  }),
  fc.record({
    kind: fc.constant('body' as const),
    body: fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), fc.json(), nearlyAScan()),
    headers: fc.constantFrom(
      {},
      { 'content-type': 'text/plain' },
      { origin: 'http://elsewhere.example' },
      { 'content-encoding': 'gzip' },
    ),
  }),
);

function brokenHttp(): fc.Arbitrary<Uint8Array> {
  const lines = fc.constantFrom(
    'POST /scans HTTP/1.1\r\nHost: localhost\r\nContent-Length: 99999999999999\r\n\r\n{',
    'POST /scans HTTP/1.1\r\nHost: localhost\r\nContent-Length: -1\r\n\r\n{}',
    'POST /scans HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: chunked\r\n\r\nFFFFFFFF\r\n{',
    'POST /scans HTTP/1.1\r\nHost: localhost\r\nContent-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n',
    'GET / HTTP/1.1\r\n\r\n',
    'GET / HTTP/9.9\r\nHost: localhost\r\n\r\n',
    `GET /${'a'.repeat(20_000)} HTTP/1.1\r\nHost: localhost\r\n\r\n`,
    `GET / HTTP/1.1\r\nHost: localhost\r\n${'X: y\r\n'.repeat(3000)}\r\n`,
    'GET http://elsewhere.example/ HTTP/1.1\r\nHost: elsewhere.example\r\n\r\n',
  );
  return lines.map(text => new TextEncoder().encode(text));
}

function anAddress(): fc.Arbitrary<string> {
  const place = fc.constantFrom(
    '/station/',
    '/progress/',
    '/tag/K7/',
    '/tag/',
    '/files/',
    '/files/zxing/',
    '/live?job=',
    '/',
    '/api/progress/',
  );
  const rest = fc.oneof(
    fc.string({ unit: 'grapheme', maxLength: 40 }).map(encodeURIComponent),
    fc.constantFrom(
      '..%2f..%2f',
      '%00',
      '%',
      '%ff%fe',
      '__proto__',
      'constructor',
      '%2e%2e/%2e%2e/etc/passwd',
      '{{7*7}}',
      '+'.repeat(3000),
    ),
  );
  return fc.tuple(place, rest).map(([before, after]) => before + after);
}

/** A good scan with one field that is not. */
function nearlyAScan(): fc.Arbitrary<string> {
  return fc
    .tuple(
      fc.constantFrom(...Object.keys(GOOD)),
      fc.oneof(
        fc.constant(undefined),
        fc.double(),
        fc.object(),
        fc.constantFrom('', '\u0000', '\ud800', 'a'.repeat(500), [], null),
      ),
    )
    .filter(([field, value]) => !isStillGood(field, value))
    .map(([field, value]) => JSON.stringify({ ...GOOD, [field]: value }));
}

/** What may be empty or null may be so in a good scan too. */
function isStillGood(field: string, value: unknown): boolean {
  return (
    (value === '' && ['code', 'station', 'operation', 'job', 'device', 'reason'].includes(field)) ||
    (value === null && ['operation', 'job'].includes(field)) ||
    (Array.isArray(value) && value.length === 0 && field === 'agreed')
  );
}

async function send(address: string, request: Request): Promise<number> {
  switch (request.kind) {
    case 'bytes':
      return sendBytes(Number(new URL(address).port), request.bytes);
    case 'body':
      return post(address, request.body, request.headers);
    case 'path': {
      const answer = await fetch(`${address}${request.path}`, { method: request.method, redirect: 'manual' }).catch(
        () => undefined,
      );
      await answer?.body?.cancel();
      return answer?.status ?? 0;
    }
  }
}

const post = async (address: string, body: string, headers: { readonly [name: string]: string }): Promise<number> => {
  const all = { 'content-type': 'application/json', ...headers };
  const answer = await fetch(`${address}/scans`, { method: 'POST', headers: all, body }).catch(() => undefined);
  await answer?.body?.cancel();
  return answer?.status ?? 0;
};

/** The status of the answer; 0 where the line was closed, or nothing came in a tenth of a second. */
const sendBytes = (port: number, bytes: Uint8Array): Promise<number> =>
  new Promise(done => {
    const line = connect(port, '127.0.0.1', () => line.write(bytes));
    const finish = (status: number): void => {
      line.destroy();
      done(status);
    };
    line.setTimeout(100, () => finish(0));
    line.on('data', piece => finish(Number(/^HTTP\/1\.1 (\d{3})/.exec(String(piece))?.[1] ?? 0)));
    line.on('error', () => finish(0));
    line.on('close', () => finish(0));
  });
