import type { Points } from './points.ts';

/**
 * A knapsack filled place by place: the best value up to each place, the item that ends there or before, and where it
 * ends; 0 where none does.
 */
export type Sack = {
  readonly values: Float64Array;
  readonly items: Int32Array;
  readonly ends: Int32Array;
  readonly sizes: readonly number[];
};

/** What there is to fill it with: sizes as places on the points. */
export type Items = {
  readonly sizes: readonly number[];
  readonly values: Float64Array;
  readonly limits: readonly number[] | undefined;
};

/** Each item any number of times, or up to its limit where it has one. */
export function fillSack(points: Points, { sizes, values, limits }: Items): Sack {
  const { count, table } = points;
  const sack = {
    values: new Float64Array(count),
    items: new Int32Array(count),
    ends: new Int32Array(count),
    sizes,
  };
  const useful: number[] = [];
  for (let item = 0; item < sizes.length; item += 1) if ((values[item] ?? 0) > TINY) useful.push(item);
  const own = Int32Array.from(useful, item => sizes[item] ?? 0);
  const worth = Float64Array.from(useful, item => values[item] ?? 0);
  for (let at = 1; at < count; at += 1) {
    let best = sack.values[at - 1] ?? 0;
    let item = sack.items[at - 1] ?? 0;
    let end = sack.ends[at - 1] ?? 0;
    for (let each = 0; each < useful.length; each += 1) {
      const size = own[each] ?? 0;
      if (size > at) continue;
      const rest = table === undefined ? at - size : (table[at * count + size] ?? 0);
      const value = (worth[each] ?? 0) + (sack.values[rest] ?? 0);
      if (value <= best + TINY) continue;
      const index = useful[each] ?? 0;
      if (limits !== undefined && timesTaken(points, sack, rest, index) >= (limits[index] ?? 0)) continue;
      best = value;
      item = index;
      end = at;
    }
    sack.values[at] = best;
    sack.items[at] = item;
    sack.ends[at] = end;
  }
  return sack;
}

/** The items in the best filling up to a place. */
export function takenFrom(points: Points, sack: Sack, from: number): readonly number[] {
  const taken: number[] = [];
  for (let end = sack.ends[from] ?? 0; end > 0; ) {
    const item = sack.items[end] ?? 0;
    taken.push(item);
    end = sack.ends[points.less(end, sack.sizes[item] ?? end)] ?? 0;
  }
  return taken;
}

function timesTaken(points: Points, sack: Sack, from: number, item: number): number {
  let times = 0;
  for (const each of takenFrom(points, sack, from)) if (each === item) times += 1;
  return times;
}

/** Values that differ by less are the same. */
export const TINY = 1e-9;
