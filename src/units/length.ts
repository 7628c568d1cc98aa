import assert from 'node:assert';

declare const nanometres: unique symbol;

/**
 * A length: a whole number of nanometres.
 *
 * In nanometres 1/64 in (396 875), 0.001 in (25 400) and 0.001 mm (1 000) are all whole, so sums and comparisons
 * never round. Only `share`, `floorTo`, `ceilTo` and the printers round, and the first three show what they took.
 *
 * Two edges. Areas do not fit: 2^53 nm² is a square of 95 mm, so there is no product of two lengths; see `area.ts`.
 * Half of an odd 64th is not whole (198 437.5 nm), so centres are worked out where they are printed.
 */
export type Length = number & { readonly [nanometres]: true };

/** The only way a number becomes a length. Throws on a fraction of a nanometre: that is a bug, never bad input. */
export function nm(count: number): Length {
  // Asked before it is said: written out for each of the hundreds of lengths of a door, the words took a tenth of it.
  if (!Number.isSafeInteger(count)) assert.fail(`${count} is not a whole number of nanometres`);
  // A minus zero would print as "-0" and is unequal to zero in tests.
  return (count + 0) as Length;
}

export const ZERO = nm(0);
export const INCH = nm(25_400_000);
export const MILLIMETRE = nm(1_000_000);

/** Two lengths or three: a list of any size would be made and thrown away for each sum, some hundred times a door. */
export const plus = (first: Length, second: Length, third: Length = ZERO): Length => nm(first + second + third);
export const minus = (from: Length, first: Length, second: Length = ZERO): Length => nm(from - first - second);
/** `count` is a whole number: 2 stiles, −2 overlays. */
export const times = (count: number, length: Length): Length => nm(count * length);

export const longest = (first: Length, ...others: readonly Length[]): Length => nm(Math.max(first, ...others));
export const shortest = (first: Length, ...others: readonly Length[]): Length => nm(Math.min(first, ...others));

/** Whole millimetres, for facts of the trade that are written so. */
export const mm = (count: number): Length => nm(Math.round(count * 1000) * 1000);

/** The largest multiple of `increment` that is not over `length`. */
export const floorTo = (increment: Length, length: Length): Length => nm(Math.floor(length / increment) * increment);

/** The smallest multiple of `increment` that is not under `length`. */
export const ceilTo = (increment: Length, length: Length): Length => nm(Math.ceil(length / increment) * increment);

/** The multiple of `increment` nearest to `length`; a tie goes up. */
export const roundTo = (increment: Length, length: Length): Length => nm(Math.round(length / increment) * increment);

/** What `share` returns: `count · each + rest` is the total again, to the nanometre. */
export type Share = { readonly each: Length; readonly rest: Length };

/**
 * Equal shares on the shop's increment, and the rest that rounding down took.
 * The only division in the program.
 */
export function share(total: Length, count: number, increment: Length): Share {
  if (!Number.isSafeInteger(count) || count <= 0) assert.fail(`${count} is not a number of shares`);
  const each = nm(Math.floor(total / count / increment) * increment);
  return { each, rest: minus(total, times(count, each)) };
}

/** How often `each` goes into `total`, as a ratio for drawings and charts; never a length again. */
export const ratio = (total: Length, each: Length): number => total / each;
