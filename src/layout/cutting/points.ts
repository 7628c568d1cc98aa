/**
 * The places in one direction of a stretch at which a cut can be worth making: sums of sizes, ascending, the last being
 * the whole. Where there are too many, a grid that sizes are rounded to.
 */
export type Points = {
  readonly count: number;
  /** Size of a piece on the points; see `Rounding`. */
  readonly index: (size: number) => number;
  /** The last point that is left when a part that ends at point `two` is taken off one that ends at `one`. */
  readonly less: (one: number, two: number) => number;
  /** The same for all pairs, row by row for `one`; undefined where it is their difference. */
  readonly table: Int32Array | undefined;
};

/**
 * Rounded up, what fits on the points fits on the wood; rounded down, what fits on the wood fits on the points: the one
 * finds plans, the other proves that there are none.
 */
export type Rounding = 'up' | 'down';

/** Sums are kept as they are up to so many: more of them make a table of differences that is too large. */
const SUMS_MAX = 1200;

/** All sums of sizes up to the whole, from 0 on, the whole itself last; undefined where they are too many. */
export function sumsOf(sizes: Iterable<number>, whole: number, most = SUMS_MAX): readonly number[] | undefined {
  const reached = new Set<number>([0]);
  const waiting = [0];
  const each = [...sizes];
  for (let at = 0; at < waiting.length; at += 1) {
    for (const size of each) {
      const sum = (waiting[at] ?? 0) + size;
      if (sum > whole || reached.has(sum)) continue;
      reached.add(sum);
      waiting.push(sum);
      if (reached.size >= most) return undefined;
    }
  }
  reached.add(whole);
  return [...reached].sort((one, two) => one - two);
}

export function exactPoints(sums: readonly number[]): Points {
  const places = new Map(sums.map((sum, index) => [sum, index]));
  const { length } = sums;
  const table = new Int32Array(length * length);
  for (let one = 0; one < length; one += 1) {
    let at = one;
    for (let two = 0; two <= one; two += 1) {
      const rest = (sums[one] ?? 0) - (sums[two] ?? 0);
      while ((sums[at] ?? 0) > rest) at -= 1;
      table[one * length + two] = at;
    }
  }
  return {
    count: length,
    index: size => places.get(size) ?? length,
    less: (one, two) => table[one * length + two] ?? 0,
    table,
  };
}

export function gridPoints(whole: number, count: number, rounding: Rounding): Points {
  const step = whole / (count - 1);
  return {
    count,
    index: size => (rounding === 'up' ? Math.ceil(size / step - 1e-9) : Math.floor(size / step + 1e-9)),
    less: (one, two) => one - two,
    table: undefined,
  };
}

/** Three loops over places make so many of them enough. */
const PLACES_MAX = 160;

/** All sums of sizes where they are few, or else a grid. */
export function fewPlaces(sizes: Iterable<number>, whole: number, rounding: Rounding): Points {
  const sums = sumsOf(sizes, whole, PLACES_MAX);
  return sums === undefined ? gridPoints(whole, PLACES_MAX, rounding) : exactPoints(sums);
}
