import { floorTo, type Length, nm, roundTo } from './length.ts';

/** How a shop wants its lengths written. */
export type LengthFormat = {
  readonly units: 'inch' | 'decimal-inch' | 'mm' | 'both';
  /** Inch fractions are printed to this. Millimetres are always printed to 0.1. */
  readonly increment: Length;
};

const MINUS = '−';
const TENTH = nm(100_000);
const SIXTY_FOURTH = nm(396_875);
const THOUSANDTH = nm(25_400);

/**
 * Writes a length for a person: `14 3/8`, or `14 3/8+` where the true value lies a little over what is printed and
 * `14 3/8−` where a little under; `365.1` for millimetres; `14 3/8 (365.1)` for both.
 */
export function printLength(length: Length, format: LengthFormat): string {
  switch (format.units) {
    case 'inch':
      return printInches(length, format.increment);
    case 'decimal-inch':
      return printDecimal(length, THOUSANDTH, 3);
    case 'mm':
      return printDecimal(length, TENTH, 1);
    case 'both':
      return `${printInches(length, format.increment)} (${printDecimal(length, TENTH, 1)})`;
  }
}

/**
 * Writes what is set on a machine, where a mark for "a little over" is no setting: 1/64 where the shop's tape stops at
 * 1/32; beside what the tape shows, millimetres where the length is a whole tenth of them, as makers of hinges and bits
 * measure (`27/32+ (21.5 mm)`), or what a caliper shows (`7/32+ (0.224)`).
 */
export function printSetting(length: Length, format: LengthFormat): string {
  const { units, increment } = format;
  const tape = printLength(length, format);
  const isInch = units === 'inch' || units === 'both';
  if (printedValue(length, format) === length) return tape;
  if (isInch && printedValue(length, format) === 0 && length % SIXTY_FOURTH !== 0) return printCaliper(length, format);
  if (isInch && length % SIXTY_FOURTH === 0) return printLength(length, { units, increment: SIXTY_FOURTH });
  if (units === 'both' && length % TENTH === 0) return tape;
  if (units !== 'mm' && length % TENTH === 0) return `${tape} (${printDecimal(length, TENTH, 1)} mm)`;
  return isInch
    ? `${printLength(length, { units: 'inch', increment })} (${printCaliper(length, format)})`
    : printCaliper(length, format);
}

/** Writes what a caliper shows: thousandths of an inch, or hundredths of a millimetre, none left off. */
export const printCaliper = (length: Length, { units }: LengthFormat): string =>
  units === 'mm' ? (Math.round(length / 10_000) / 100).toFixed(2) : (Math.round(length / THOUSANDTH) / 1000).toFixed(3);

/** A length's printed value as a length: what the tape shows. The difference to the true one is what printing took. */
export const printedValue = (length: Length, format: LengthFormat): Length => roundTo(stepOf(format), length);

/** The longest length that prints without a mark and is no longer than this. */
export const printedBelow = (length: Length, format: LengthFormat): Length => floorTo(stepOf(format), length);

const stepOf = ({ units, increment }: LengthFormat): Length =>
  units === 'mm' ? TENTH : units === 'decimal-inch' ? THOUSANDTH : increment;

function printInches(length: Length, increment: Length): string {
  const printed = roundTo(increment, length);
  const mark = printed < length ? '+' : printed > length ? MINUS : '';
  const sign = printed < 0 ? MINUS : '';
  const size = Math.abs(printed);
  const whole = Math.floor(size / 25_400_000);
  const fraction = reduce(size - whole * 25_400_000, 25_400_000);
  if (fraction === undefined) return `${sign}${whole}${mark}`;
  return `${sign}${whole === 0 ? '' : `${whole} `}${fraction}${mark}`;
}

function reduce(numerator: number, denominator: number): string | undefined {
  if (numerator === 0) return undefined;
  let [a, b] = [numerator, denominator];
  while (b !== 0) [a, b] = [b, a % b];
  return `${numerator / a}/${denominator / a}`;
}

/** Rounded to `step` (a power of ten of the unit), without trailing zeros: 365.1, 58. */
function printDecimal(length: Length, step: Length, digits: number): string {
  const steps = Math.abs(Math.round(length / step));
  const scale = 10 ** digits;
  const whole = Math.floor(steps / scale);
  const tail = (steps % scale).toString().padStart(digits, '0').replace(/0+$/, '');
  return `${length < 0 && steps !== 0 ? MINUS : ''}${whole}${tail === '' ? '' : `.${tail}`}`;
}
