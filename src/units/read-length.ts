import assert from 'node:assert';
import { type Length, nm } from './length.ts';

/** What a bare number means in the workbook at hand. */
export type Units = 'inch' | 'mm';

/** No door, board or sheet is longer; 100 m leaves room for a job's running total and none for a slipped key. */
const LENGTH_MAX = 100_000_000_000;

const NANOMETRES_IN: { readonly [unit: string]: number } = {
  in: 25_400_000,
  ft: 304_800_000,
  mm: 1_000_000,
  cm: 10_000_000,
  m: 1_000_000_000,
};

/**
 * Reads a length as people write it: `14 3/8`, `14-3/8"`, `14.375`, `14⅜`, `1' 2 3/8"`, `365 mm`, `36.5 cm`, and a bare
 * number in `units`. Returns undefined for what is no length: words, `1/3` (no whole number of nanometres), `11 in 3/8`.
 * Reading never passes through a float: `35.7 mm` is 357 tenths.
 */
export function readLength(text: string, units: Units): Length | undefined {
  const plain = plainText(text);
  const parts = FEET_AND_INCHES.exec(plain);
  if (parts?.[2] !== undefined) {
    const feet = readQuantity(parts[2], 'ft');
    const inches = parts[3] === undefined ? 0 : readQuantity(parts[3], 'in');
    return feet === undefined || inches === undefined ? undefined : signed(parts[1], feet + inches);
  }
  const single = ONE_QUANTITY.exec(plain);
  if (single?.[2] === undefined) return undefined;
  const unit = UNIT_WORDS.get(single[3] ?? '') ?? (single[3] ? undefined : units === 'inch' ? 'in' : 'mm');
  const size = unit === undefined ? undefined : readQuantity(single[2], unit);
  return size === undefined ? undefined : signed(single[1], size);
}

/** A length that the program itself writes down, such as a default of the trade. Throws where it is none. */
export function lengthOf(text: string): Length {
  const length = readLength(text, 'inch');
  assert(length !== undefined, `"${text}" is not a length`);
  return length;
}

const FEET_AND_INCHES = /^(-?)([\d. /]+?) ?(?:'|ft|feet|foot)(?: ?-? ?([\d. /]+?) ?(?:"|in|inch|inches)?)?$/;
const ONE_QUANTITY = /^(-?)([\d. /]+?) ?("|in|inch|inches|mm|cm|m)?\.?$/;

const UNIT_WORDS: ReadonlyMap<string, string> = new Map([
  ['"', 'in'],
  ['in', 'in'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['mm', 'mm'],
  ['cm', 'cm'],
  ['m', 'm'],
]);

const FRACTION_SIGNS: ReadonlyMap<string, string> = new Map([
  ['½', '1/2'],
  ['¼', '1/4'],
  ['¾', '3/4'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
]);

/** One way of writing for what people, spreadsheets and phones write in several. */
const plainText = (text: string): string =>
  text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, sign => ` ${FRACTION_SIGNS.get(sign) ?? ''}`)
    .replace(/[\s\u00a0\u2007\u2009\u202f]+/g, ' ')
    .replace(/[⁄∕]/g, '/')
    .replace(/[’′‘]/g, "'")
    .replace(/[”″“]|''/g, '"')
    .replace(/[−–—]/g, '-')
    .replace(/ ?\/ ?/g, '/')
    // A hyphen between a whole number and its fraction: 14-3/8.
    .replace(/(\d)-(?=\d+\/\d)/g, '$1 ')
    .trim()
    .toLowerCase();

/** `14`, `14.375`, `.5`, `3/8` or `14 3/8` of a unit, in nanometres; undefined where that is no whole number of them. */
function readQuantity(text: string, unit: string): number | undefined {
  const per = NANOMETRES_IN[unit] ?? 0;
  const decimal = /^(\d*)(?:\.(\d*))?$/.exec(text);
  if (decimal !== null && /\d/.test(text)) {
    const tail = decimal[2] ?? '';
    if (tail.length > 15) return undefined;
    return whole(BigInt(`${decimal[1] ?? ''}${tail}`) * BigInt(per), 10n ** BigInt(tail.length));
  }
  // A whole number must be set off from its fraction: 11/64 is no 1 1/64.
  const mixed = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(text);
  if (mixed === null || Number(mixed[3]) === 0) return undefined;
  const denominator = BigInt(mixed[3] ?? '');
  const numerator = BigInt(mixed[2] ?? '');
  // 14 9/8 is a slip of the pen, not a length.
  if (mixed[1] !== undefined && numerator >= denominator) return undefined;
  return whole((BigInt(mixed[1] ?? 0) * denominator + numerator) * BigInt(per), denominator);
}

/**
 * The quotient as a whole number of nanometres. A decimal or metric value may carry the noise of a spreadsheet's own
 * arithmetic (23.249999999999996), so what is within half a nanometre of a whole one, at 6 digits after the point
 * or more, is that one; a fraction such as 1/3 is not a length.
 */
function whole(numerator: bigint, denominator: bigint): number | undefined {
  const twice = (2n * numerator + denominator) / (2n * denominator);
  const exact = numerator % denominator === 0n;
  const noise = denominator >= 1_000_000n;
  if ((!exact && !noise) || twice > BigInt(LENGTH_MAX)) return undefined;
  return Number(twice);
}

const signed = (sign: string | undefined, size: number): Length | undefined =>
  size > LENGTH_MAX ? undefined : nm(sign === '-' ? -size : size);
