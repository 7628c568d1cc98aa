import { type CutTree, together } from './cut-tree.ts';
import { type Lie, pieceOf } from './lying.ts';
import type { Direction } from './rows.ts';

/**
 * A few pieces in hand, and the least rectangles from which every set of them comes out by through cuts: of two of these,
 * one is always shorter and the other narrower. What comes out of a bin comes out of one of them, so that asking them is
 * exact; a set is the number whose bits are the places of its pieces.
 */
export type Hand = {
  readonly length: number;
  readonly width: number;
  /** For each place, the ways in which its piece may lie. */
  readonly ways: (readonly Lie[])[];
  /** For each set how many least rectangles it has, and `ROOM` places for the length and the width of each, shortest first. */
  readonly counts: Int32Array;
  readonly sizes: Float64Array;
  /** Rectangles that were put together since this was set to 0. */
  spent: number;
  /** Whether a set had more pieces or least rectangles than there is room for: a no is not certain then. */
  isOver: boolean;
};

/** So many pieces may be in hand, and a set of them have so many least rectangles: with more, each asking takes too long. */
export const HAND_MOST = 10;
const ROOM = 96;

export const openHand = (length: number, width: number): Hand => ({
  length,
  width,
  ways: [],
  counts: new Int32Array(1 << HAND_MOST),
  sizes: new Float64Array((2 * ROOM) << HAND_MOST),
  spent: 0,
  isOver: false,
});

/**
 * Takes a piece into hand, after those at the places before; whether they all come out of the bin together. Where they do
 * not, another piece may be taken at the same place.
 */
export function take(hand: Hand, place: number, ways: readonly Lie[]): boolean {
  if (place >= HAND_MOST) {
    hand.isOver = true;
    return false;
  }
  const bit = 1 << place;
  hand.ways[place] = ways;
  hand.counts[bit] = 0;
  for (const { length, width } of ways) note(hand, bit, length, width);
  for (let others = 1; others < bit; others += 1) {
    putTogether(hand, bit, others);
    if (hand.counts[bit | others] === 0) return false;
  }
  return (hand.counts[bit] ?? 0) > 0;
}

/** Works out the least rectangles of a piece and some others: in any two parts, one beyond or beside the other. */
function putTogether(hand: Hand, bit: number, others: number): void {
  const { counts, sizes, length, width } = hand;
  const set = bit | others;
  counts[set] = 0;
  for (let part = others; part > 0; part = (part - 1) & others) {
    const rest = set ^ part;
    const from = 2 * ROOM * part;
    const to = from + 2 * (counts[part] ?? 0);
    const from2 = 2 * ROOM * rest;
    const to2 = from2 + 2 * (counts[rest] ?? 0);
    hand.spent += ((to - from) * (to2 - from2)) / 4;
    for (let one = from; one < to; one += 2) {
      const long = sizes[one] ?? 0;
      const wide = sizes[one + 1] ?? 0;
      for (let two = from2; two < to2; two += 2) {
        const long2 = sizes[two] ?? 0;
        const wide2 = sizes[two + 1] ?? 0;
        if (long + long2 <= length) note(hand, set, long + long2, Math.max(wide, wide2));
        if (wide + wide2 <= width) note(hand, set, Math.max(long, long2), wide + wide2);
      }
    }
  }
}

/** Notes a rectangle of a set if none is as short and as narrow, instead of those that are neither shorter nor narrower. */
function note(hand: Hand, set: number, long: number, wide: number): void {
  const { counts, sizes } = hand;
  const start = 2 * ROOM * set;
  const end = start + 2 * (counts[set] ?? 0);
  let at = start;
  while (at < end && (sizes[at] ?? 0) < long) at += 2;
  // Widths fall where lengths rise: the one before is the narrowest of the shorter ones.
  if (at > start && (sizes[at - 1] ?? 0) <= wide) return;
  if (at < end && sizes[at] === long && (sizes[at + 1] ?? 0) <= wide) return;
  let after = at;
  while (after < end && (sizes[after + 1] ?? 0) >= wide) after += 2;
  if (after === at && end - start === 2 * ROOM) {
    hand.isOver = true;
    return;
  }
  if (after !== at + 2) sizes.copyWithin(at + 2, after, end);
  sizes[at] = long;
  sizes[at + 1] = wide;
  counts[set] = (end - start + at + 2 - after) / 2;
}

/** How all pieces in hand are cut from the bin, so many as there are; undefined where they do not come out of it. */
export const treeOfHand = (hand: Hand, count: number): CutTree | undefined =>
  treeOf(hand, (1 << count) - 1, hand.length, hand.width);

function treeOf(hand: Hand, set: number, length: number, width: number): CutTree | undefined {
  const last = 31 - Math.clz32(set);
  const bit = 1 << last;
  if (set === bit) {
    const lie = hand.ways[last]?.find(each => each.length <= length && each.width <= width);
    return lie && pieceOf(lie);
  }
  const others = set ^ bit;
  for (let part = others; part > 0; part = (part - 1) & others) {
    const rest = set ^ part;
    for (const one of rectangles(hand, part))
      for (const two of rectangles(hand, rest)) {
        const cut = cutBetween(one, two, length, width);
        if (cut === undefined) continue;
        const trees = [treeOf(hand, part, one.length, one.width), treeOf(hand, rest, two.length, two.width)];
        return together(
          cut,
          trees.flatMap(tree => tree ?? []),
        );
      }
  }
  return undefined;
}

type Rectangle = { readonly length: number; readonly width: number };

const rectangles = ({ counts, sizes }: Hand, set: number): readonly Rectangle[] =>
  Array.from({ length: counts[set] ?? 0 }, (_, at) => ({
    length: sizes[2 * (ROOM * set + at)] ?? 0,
    width: sizes[2 * (ROOM * set + at) + 1] ?? 0,
  }));

/** The cut between two rectangles that lie in a larger one; undefined where they do not. */
function cutBetween(one: Rectangle, two: Rectangle, length: number, width: number): Direction | undefined {
  if (one.length + two.length <= length && Math.max(one.width, two.width) <= width) return 'crosscut';
  return one.width + two.width <= width && Math.max(one.length, two.length) <= length ? 'rip' : undefined;
}
