import { getConnInfo } from '@hono/node-server/conninfo';
import type { Context, MiddlewareHandler } from 'hono';
import { getCookie } from 'hono/cookie';
import type { Pairing } from './pairing.ts';

/** Who may ask what. */
export type Guard = {
  /** Names under which this host is asked for; a page of a stranger's name that points here is turned away. */
  readonly names: () => readonly string[];
  /** Undefined where only this machine is served. */
  readonly pairing: Pairing | undefined;
  /** What to open on a device that is to be paired. */
  readonly pairAddress: () => string;
  /** Requests that one address may make in a second, on average. */
  readonly perSecond: number;
};

export const DEVICE_COOKIE = 'stilebook_device';

/** What stands on every answer. No script, style, picture or address but our own. */
export const headers: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of ON_EVERY_ANSWER) c.res.headers.set(name, value);
  if (!c.res.headers.has('cache-control')) c.res.headers.set('cache-control', 'no-store');
};

const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "connect-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
];

/** What a page could ask a browser for: the camera reads tags, and nothing else is needed. */
const WITHHELD = [
  'bluetooth',
  'display-capture',
  'geolocation',
  'hid',
  'microphone',
  'midi',
  'payment',
  'serial',
  'usb',
] as const;

const ON_EVERY_ANSWER: readonly (readonly [name: string, value: string])[] = [
  ['content-security-policy', POLICY.join('; ')],
  ['x-content-type-options', 'nosniff'],
  ['x-frame-options', 'DENY'],
  ['referrer-policy', 'no-referrer'],
  ['cross-origin-opener-policy', 'same-origin'],
  ['cross-origin-resource-policy', 'same-origin'],
  ['permissions-policy', ['camera=(self)', ...WITHHELD.map(each => `${each}=()`)].join(', ')],
];

/** Asked by a name that is not ours, somebody's page elsewhere has been made to point here. */
export const knownName =
  ({ names }: Guard): MiddlewareHandler =>
  async (c, next) => {
    const name = hostName(c.req.header('host'));
    if (!names().includes(name)) return c.text('This host is not known by that name.', 421);
    return next();
  };

/** What changes something has to come from one of our own pages. */
export const ownPagesOnly: MiddlewareHandler = async (c, next) => {
  if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
  const site = c.req.header('sec-fetch-site');
  const origin = c.req.header('origin');
  const foreign =
    (site !== undefined && site !== 'same-origin' && site !== 'none') ||
    (origin !== undefined && hostOf(origin) !== c.req.header('host'));
  return foreign ? c.text('Only pages of this host may send.', 403) : next();
};

/** A body has to say how long it is, and the server reads no further than that. */
export const shortOnly =
  (bytes: number): MiddlewareHandler =>
  async (c, next) => {
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
    const length = c.req.header('content-length');
    if (length === undefined) return c.text('How long?', 411);
    return Number(length) <= bytes ? next() : c.text('Too long.', 413);
  };

/** A bucket for each address: it fills evenly and holds three seconds' worth, so that a queue may come in a burst. */
export function rateLimit({ perSecond }: Guard, now: () => Date): MiddlewareHandler {
  const buckets = new Map<string, { left: number; at: number }>();
  return async (c, next) => {
    const at = now().getTime();
    const address = addressOf(c);
    const bucket = buckets.get(address) ?? { left: perSecond * 3, at };
    const left = Math.min(perSecond * 3, bucket.left + ((at - bucket.at) / 1000) * perSecond);
    if (buckets.size > ADDRESSES_MAX) buckets.clear();
    buckets.set(address, { left: Math.max(0, left - 1), at });
    return left < 1 ? c.text('Too many requests.', 429, { 'retry-after': '1' }) : next();
  };
}

const ADDRESSES_MAX = 10_000;

/** This machine is trusted; any other has to be paired, and may only see the page for that until it is. */
export const pairedOnly =
  ({ pairing }: Guard): MiddlewareHandler =>
  async (c, next) => {
    if (isFromHere(c) || OPEN.test(c.req.path)) return next();
    if (pairing?.isPaired(getCookie(c, DEVICE_COOKIE)) === true) return next();
    return c.req.header('accept')?.includes('text/html') === true && c.req.method === 'GET'
      ? c.redirect('/pair')
      : c.text('This device is not paired.', 401);
  };

/** What only this machine may ask for: everything that was ever scanned. */
export const thisMachineOnly: MiddlewareHandler = async (c, next) =>
  isFromHere(c) ? next() : c.text('Only on the host itself.', 403);

/** What a device needs in order to be paired. */
const OPEN = /^\/(pair|files\/(station\.css|icon\.svg))$/;

const addressOf = (c: Context): string => getConnInfo(c).remote.address ?? '';

/** Asked by this machine for itself, not for somebody else as what makes https of it would. */
export const isFromHere = (c: Context): boolean =>
  isLoopback(addressOf(c)) && c.req.header('x-forwarded-for') === undefined && c.req.header('forwarded') === undefined;

const isLoopback = (address: string): boolean => /^(::1|(::ffff:)?127\.\d+\.\d+\.\d+)$/.test(address);

const hostName = (host: string | undefined): string => (host ?? '').replace(/:\d+$/, '').toLowerCase();

function hostOf(origin: string): string {
  try {
    return new URL(origin).host;
  } catch {
    return '';
  }
}
