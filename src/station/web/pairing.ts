import { createHmac, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';

/** Lets devices of the shop in: each is paired once, by a code that only the host's screen shows. */
export type Pairing = {
  /** What the host's screen shows now. */
  readonly code: () => string;
  /** A token for the device that typed the code; undefined where it is not the code. */
  readonly pair: (typed: string) => string | undefined;
  readonly isPaired: (token: string | undefined) => boolean;
};

/** Letters and figures that are not taken for one another on a screen across the shop. */
const LETTERS = 'ABCDEFGHJKMNPQRTUVWXY346789';
const CODE_LENGTH = 6;
/** 27^6 codes, five tries at each, one try a second: a lifetime of guessing. */
const TRIES_MAX = 5;
const PAUSE_MS = 1000;
const CODE_LASTS_MS = 10 * 60_000;

/** `key` is the host's secret; devices stay paired as long as it stays. `shown` is told of every new code. */
export function openPairing(key: Uint8Array, now: () => Date, shown: (code: string) => void): Pairing {
  let current = { code: '', since: 0, tries: 0 };
  let lastTry = 0;
  const renew = (): void => {
    current = { code: newCode(), since: now().getTime(), tries: 0 };
    shown(current.code);
  };
  const fresh = (): string => {
    if (current.code === '' || now().getTime() - current.since > CODE_LASTS_MS) renew();
    return current.code;
  };
  return {
    code: fresh,
    pair: typed => {
      const early = now().getTime() - lastTry < PAUSE_MS;
      lastTry = now().getTime();
      const right = !early && same(tidy(typed), fresh());
      if (!right) current = { ...current, tries: current.tries + 1 };
      if (right || current.tries >= TRIES_MAX) renew();
      return right ? tokenFor(randomBytes(12).toString('hex'), key) : undefined;
    },
    isPaired: token => {
      const [device = ''] = token?.split('.') ?? [];
      return device !== '' && token !== undefined && same(token, tokenFor(device, key));
    },
  };
}

const newCode = (): string => Array.from({ length: CODE_LENGTH }, () => LETTERS[randomInt(LETTERS.length)]).join('');

const tidy = (typed: string): string => typed.replaceAll(/[\s-]+/g, '').toUpperCase();

const tokenFor = (device: string, key: Uint8Array): string =>
  `${device}.${createHmac('sha256', key).update(device).digest('hex')}`;

/** Compares without telling by its time how much was right. */
function same(a: string, b: string): boolean {
  const [left, right] = [Buffer.from(a), Buffer.from(b)];
  return left.length === right.length && timingSafeEqual(left, right);
}
