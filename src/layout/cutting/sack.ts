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

/** What there is to fill it with: sizes as places on the points, the smallest first. */
export type Items = {
  readonly sizes: readonly number[];
  readonly values: Float64Array;
};

/** Each item any number of times. */
export function fillSack({ count, table }: Points, { sizes, values }: Items): Sack {
  const sack = {
    values: new Float64Array(count),
    items: new Int32Array(count),
    ends: new Int32Array(count),
    sizes,
  };
  // What is worth no more than something that is no larger is never taken.
  const useful: number[] = [];
  for (let item = 0, most = TINY; item < sizes.length; item += 1) {
    if ((values[item] ?? 0) <= most) continue;
    most = values[item] ?? 0;
    useful.push(item);
  }
  const own = Int32Array.from(useful, item => sizes[item] ?? 0);
  const worth = Float64Array.from(useful, item => values[item] ?? 0);
  for (let at = 1; at < count; at += 1) {
    let best = sack.values[at - 1] ?? 0;
    let item = sack.items[at - 1] ?? 0;
    let end = sack.ends[at - 1] ?? 0;
    for (let each = 0; each < useful.length; each += 1) {
      const size = own[each] ?? 0;
      if (size > at) break;
      const rest = table === undefined ? at - size : (table[at * count + size] ?? 0);
      const value = (worth[each] ?? 0) + (sack.values[rest] ?? 0);
      if (value <= best + TINY) continue;
      best = value;
      item = useful[each] ?? 0;
      end = at;
    }
    sack.values[at] = best;
    sack.items[at] = item;
    sack.ends[at] = end;
  }
  return sack;
}

/** Tells what full sacks of such sizes are worth and nothing else: it is asked for every strip of every pricing. */
export function worthOfSack({ count, table }: Points, sizes: readonly number[]): (values: Float64Array) => number {
  const own = new Int32Array(sizes.length);
  const worth = new Float64Array(sizes.length);
  const upTo = new Float64Array(count);
  return values => {
    let useful = 0;
    for (let item = 0, most = TINY; item < sizes.length; item += 1) {
      const value = values[item] ?? 0;
      if (value <= most) continue;
      most = value;
      worth[useful] = value;
      own[useful] = sizes[item] ?? 0;
      useful += 1;
    }
    for (let at = 1; at < count; at += 1) {
      let best = upTo[at - 1] ?? 0;
      for (let each = 0; each < useful; each += 1) {
        const size = own[each] ?? 0;
        if (size > at) break;
        const rest = table === undefined ? at - size : (table[at * count + size] ?? 0);
        const value = (worth[each] ?? 0) + (upTo[rest] ?? 0);
        if (value > best) best = value;
      }
      upTo[at] = best;
    }
    return upTo[count - 1] ?? 0;
  };
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

/** Values that differ by less are the same. */
export const TINY = 1e-9;
