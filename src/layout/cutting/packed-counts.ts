import type { Demand } from './demand.ts';

/**
 * How many of each kind of piece a way has, packed into the words of an integer array: each kind has a field as wide as
 * twice its number needs, so that two ways add up in one go, and a guard bit above that tells of too many.
 */
export type Counting = {
  readonly words: number;
  /** By word: what makes a field that has too many reach its guard bit, and the guard bits. */
  readonly slack: Int32Array;
  readonly guards: Int32Array;
  /** By bit of each word: the kind whose guard it is. */
  readonly kindAt: Int32Array;
  /** By kind: the word and the lowest bit of its field, how many of it a bin may have, and its price. */
  readonly wordAt: Int32Array;
  readonly fieldAt: Int32Array;
  readonly mosts: Int32Array;
  readonly prices: Float64Array;
  readonly kinds: readonly number[];
};

const WORD = 30;

/** Fields for the kinds that have a price, each as wide as so many of them need as are asked for and a bin of this area holds. */
export function countingOf(
  some: readonly number[],
  areas: readonly number[],
  area: number,
  demand: Demand,
  prices: ArrayLike<number>,
): Counting {
  const kinds = some.filter(kind => (prices[kind] ?? 0) > 0);
  const slack: number[] = [];
  const guards: number[] = [];
  const kindAt = new Int32Array(kinds.length * WORD);
  const wordAt = new Int32Array(areas.length);
  const fieldAt = new Int32Array(areas.length);
  const mosts = new Int32Array(areas.length);
  let shift = WORD;
  for (const kind of kinds) {
    const most = Math.max(1, Math.min(demand[kind] ?? 0, Math.floor(area / (areas[kind] ?? area))));
    const bits = 33 - Math.clz32(most);
    if (shift + bits > WORD) {
      slack.push(0);
      guards.push(0);
      shift = 0;
    }
    const word = slack.length - 1;
    const guard = 1 << (bits - 1);
    slack[word] = (slack[word] ?? 0) + ((guard - 1 - most) << shift);
    guards[word] = (guards[word] ?? 0) | (guard << shift);
    kindAt[word * WORD + shift + bits - 1] = kind;
    wordAt[kind] = word;
    fieldAt[kind] = shift;
    mosts[kind] = most;
    shift += bits;
  }
  return {
    words: slack.length,
    slack: Int32Array.from(slack),
    guards: Int32Array.from(guards),
    kindAt,
    wordAt,
    fieldAt,
    mosts,
    prices: Float64Array.from(areas, (_, kind) => prices[kind] ?? 0),
    kinds,
  };
}

/** Copies what one rectangle has to another, maybe of another array. */
export function copyCounts(from: Int32Array, source: number, to: Int32Array, target: number, words: number): void {
  for (let word = 0; word < words; word += 1) to[target * words + word] = from[source * words + word] ?? 0;
}

/**
 * Puts into `merged` what two rectangles have together, as much of it as is asked for, and tells what the rest was worth.
 * Given up where that is as much as `spare`: what is in `merged` then is no use.
 */
export function tooMany(
  { words, slack, guards, kindAt, fieldAt, mosts, prices }: Counting,
  counts: Int32Array,
  near: number,
  far: number,
  merged: Int32Array,
  spare: number,
): number {
  let lost = 0;
  for (let word = 0; word < words; word += 1) {
    let sum = (counts[near * words + word] ?? 0) + (counts[far * words + word] ?? 0);
    let over = (sum + (slack[word] ?? 0)) & (guards[word] ?? 0);
    while (over !== 0) {
      const guard = 31 - Math.clz32(over);
      over &= ~(1 << guard);
      const kind = kindAt[word * WORD + guard] ?? 0;
      const shift = fieldAt[kind] ?? 0;
      const surplus = ((sum >>> shift) & ((2 << (guard - shift)) - 1)) - (mosts[kind] ?? 0);
      sum -= surplus << shift;
      lost += surplus * (prices[kind] ?? 0);
      if (lost >= spare) return lost;
    }
    merged[word] = sum;
  }
  return lost;
}

/** The kinds of the pieces in a count, each as often as it is there. */
export const kindsOf = ({ kinds, wordAt, fieldAt, mosts }: Counting, counts: Int32Array): readonly number[] =>
  kinds.flatMap(kind => {
    const word = counts[wordAt[kind] ?? 0] ?? 0;
    const bits = 33 - Math.clz32(mosts[kind] ?? 0);
    return new Array<number>((word >>> (fieldAt[kind] ?? 0)) & ((1 << bits) - 1)).fill(kind);
  });
