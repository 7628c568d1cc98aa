import type { Demand } from './demand.ts';

/** What is cut from bars: their clear length, and the lengths of the pieces by kind, in whole units. */
export type Bars = { readonly whole: number; readonly sizes: readonly number[] };

/** How many pieces of each kind come out of one bar. */
export type Cuts = ReadonlyMap<number, number>;

/** What a bar can be worth at most, and ways to cut one that are worth more than one; `looks` is what finding them took. */
export type BestCuts = { readonly most: number; readonly cuts: readonly Cuts[]; readonly looks: number };

/** The best way, and so many others without the kinds of those before: one program with ten new columns, not ten programs. */
const WAYS_MAX = 10;
/** What is worth a bar and so little more saves nothing. */
const GAIN = 1e-7;
/** Places that are looked at in the time of one look of the search. */
const PLACES_A_LOOK = 10;

/** The best ways to cut a bar at these prices, with no more of a kind than its limit. The first is the best of all. */
export function bestCuts(bars: Bars, prices: ArrayLike<number>, limits: Demand): BestCuts {
  const used = new Set<number>();
  const cuts: Cuts[] = [];
  let most = 0;
  let looks = 0;
  for (let way = 0; way < WAYS_MAX; way += 1) {
    const items = itemsOf(bars, prices, limits, used);
    const { value, counts } = fill(bars.whole, items);
    looks += (items.length * bars.whole) / PLACES_A_LOOK;
    if (way === 0) most = value;
    if (value <= 1 + GAIN) break;
    cuts.push(counts);
    for (const kind of counts.keys()) used.add(kind);
  }
  return { most, cuts, looks };
}

type Item = { readonly kind: number; readonly copies: number; readonly size: number; readonly value: number };

/** Copies of a kind as parcels of 1, 2, 4, … and the rest: every number of them up to the limit is a choice of parcels. */
function itemsOf(
  { whole, sizes }: Bars,
  prices: ArrayLike<number>,
  limits: Demand,
  used: ReadonlySet<number>,
): readonly Item[] {
  const items: Item[] = [];
  for (const [kind, size] of sizes.entries()) {
    const price = prices[kind] ?? 0;
    if (price <= TINY || size > whole || used.has(kind)) continue;
    let left = Math.min(limits[kind] ?? 0, Math.floor(whole / size));
    for (let parcel = 1; left > 0; parcel *= 2) {
      const copies = Math.min(parcel, left);
      items.push({ kind, copies, size: size * copies, value: price * copies });
      left -= copies;
    }
  }
  return items;
}

/** The choice of items that is worth most and fits, place by place (a knapsack; R. Bellman, Dynamic Programming, 1957). */
function fill(whole: number, items: readonly Item[]): { readonly value: number; readonly counts: Cuts } {
  const places = whole + 1;
  const values = new Float64Array(places);
  const isTaken = new Uint8Array(items.length * places);
  for (const [index, { size, value }] of items.entries()) {
    const row = index * places;
    for (let at = whole; at >= size; at -= 1) {
      const taken = (values[at - size] ?? 0) + value;
      if (taken <= (values[at] ?? 0) + TINY) continue;
      values[at] = taken;
      isTaken[row + at] = 1;
    }
  }
  const counts = new Map<number, number>();
  let at = whole;
  for (let index = items.length - 1; index >= 0; index -= 1) {
    const item = items[index];
    if (item === undefined || isTaken[index * places + at] === 0) continue;
    counts.set(item.kind, (counts.get(item.kind) ?? 0) + item.copies);
    at -= item.size;
  }
  return { value: values[whole] ?? 0, counts };
}

/** Values that differ by less are the same. */
const TINY = 1e-12;
