/** Ways to go on with one of many beginnings, of which the best are kept. */
export type Ways = {
  /** What each is worth; least is best. */
  readonly value: Float64Array;
  readonly from: Int32Array;
  readonly lie: Int32Array;
  readonly where: Uint8Array;
  /** How many are noted. */
  count: number;
  /** One number: what is worth no less is none of the best. Whoever notes a way looks here first. */
  readonly limit: Float64Array;
  /** How many are kept. */
  readonly most: number;
  /** Room to put them in order. */
  readonly keys: Float64Array;
};

/** For the best of so many; twice as many have room, so that they are sifted seldom. */
export const waysFor = (most: number): Ways => ({
  value: new Float64Array(2 * most),
  from: new Int32Array(2 * most),
  lie: new Int32Array(2 * most),
  where: new Uint8Array(2 * most),
  count: 0,
  limit: new Float64Array(1).fill(Number.POSITIVE_INFINITY),
  most,
  keys: new Float64Array(most),
});

export function forget(ways: Ways): void {
  ways.count = 0;
  ways.limit[0] = Number.POSITIVE_INFINITY;
}

/** Keeps the best of those that are noted. C. A. R. Hoare, "Algorithm 65: Find", Communications of the ACM 4 (1961) 321. */
export function sift(ways: Ways): void {
  const { value, limit, most } = ways;
  if (ways.count <= most) return;
  const last = most - 1;
  for (let low = 0, high = ways.count - 1; low < high; ) {
    const pivot = value[last] ?? 0;
    let from = low;
    let to = high;
    while (from <= to) {
      while ((value[from] ?? 0) < pivot) from += 1;
      while ((value[to] ?? 0) > pivot) to -= 1;
      if (from > to) break;
      changePlaces(ways, from, to);
      from += 1;
      to -= 1;
    }
    if (to < last) low = from;
    if (last < from) high = to;
  }
  ways.count = most;
  limit[0] = value[last] ?? 0;
}

function changePlaces({ value, from, lie, where }: Ways, one: number, two: number): void {
  const [value1, from1, lie1, where1] = [value[one] ?? 0, from[one] ?? 0, lie[one] ?? 0, where[one] ?? 0];
  value[one] = value[two] ?? 0;
  from[one] = from[two] ?? 0;
  lie[one] = lie[two] ?? 0;
  where[one] = where[two] ?? 0;
  value[two] = value1;
  from[two] = from1;
  lie[two] = lie1;
  where[two] = where1;
}

/** So finely are values told apart, and so many ways, when they are put in order: both together are one whole number. */
const FINE = 2 ** 32;
const PLACES = 2 ** 20;

/** Puts the best in order: afterwards `placeOf` tells where the first of them stands, the second, and so on. */
export function putInOrder(ways: Ways): void {
  sift(ways);
  const { value, count, keys } = ways;
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let at = 0; at < count; at += 1) {
    least = Math.min(least, value[at] ?? 0);
    most = Math.max(most, value[at] ?? 0);
  }
  const scale = most > least ? (FINE - 1) / (most - least) : 0;
  for (let at = 0; at < count; at += 1) keys[at] = Math.floor(((value[at] ?? 0) - least) * scale) * PLACES + at;
  // Numbers are put in order without asking which of two is first, in a tenth of the time.
  keys.subarray(0, count).sort();
}

export const placeOf = ({ keys }: Ways, rank: number): number => (keys[rank] ?? 0) % PLACES;
