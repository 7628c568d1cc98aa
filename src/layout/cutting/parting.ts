import { type FewPieces, NOBODY, PARTS_MOST, STRIDE } from './few-pieces.ts';
import { fiveComeOut, fourComeOut, threeComeOutOf } from './four-or-five.ts';
import type { Direction } from './rows.ts';
import { LEVELS_OF_TWO, leastOfThree, leastOfTwo } from './two-or-three.ts';

/** Cut off the rest by a cut in a direction, or lying together at the end. */
export type Step = { readonly cut: Direction | undefined; readonly lies: readonly number[] };

export const NONE = 0;
export const CROSSCUT = 1;
export const RIP = 2;
export type Last = typeof NONE | typeof CROSSCUT | typeof RIP;

/**
 * Of more than five pieces, so many parts are cut off and the rest tried, those first that leave it most room; and of each
 * rest, one. That finds nineteen of twenty sets of six or seven that come out at all.
 */
const PARTS = 6;
const PARTS_OF_REST = 1;
/** Of more pieces, three are never cut off together: so many threes take longer to look through than they are worth. */
const PIECES_FOR_THREES = 7;

/** What four pieces cost, and five, and for more of them each two, in looks. */
const LOOKS_FOR_FOUR = 17.5;
const LOOKS_FOR_FIVE = 66;
const LOOKS_FOR_TWO = 3;

/** A part that is cut off by a rip, not a crosscut; below it stand up to three places of its pieces in the set. */
const BY_RIP = 1 << 12;

/**
 * Whether what stands in `sets` from a place on can be cut from a rectangle: one, two or three pieces are cut off the rest,
 * which is tried in what is left. `stages` are left after the cut by which the rectangle came about. `steps` are written
 * down when the answer is to be a tree, the last first.
 */
export function fits(
  few: FewPieces,
  from: number,
  count: number,
  length: number,
  width: number,
  area: number,
  stages: number,
  last: Last,
  steps: Step[] | undefined,
): boolean {
  const { sets } = few;
  const crosscuts = last === CROSSCUT ? stages : stages - 1;
  const rips = last === RIP ? stages : stages - 1;
  const one = sets[from] ?? 0;
  const two = sets[from + 1] ?? 0;
  const three = sets[from + 2] ?? 0;
  if (count < 4) {
    const yes =
      count === 3
        ? threeComeOutOf(few, one, two, three, length, width, crosscuts, rips)
        : upToTwoComeOutOf(few, one, count === 2 ? two : one, length, width, crosscuts, rips);
    if (yes) steps?.push({ cut: undefined, lies: Array.from(sets.subarray(from, from + count)) });
    return yes;
  }
  if (count < 6 && steps === undefined) {
    few.spent += count === 4 ? LOOKS_FOR_FOUR : LOOKS_FOR_FIVE;
    const four = sets[from + 3] ?? 0;
    if (count === 4) return fourComeOut(few, one, two, three, four, length, width, area, crosscuts, rips);
    return fiveComeOut(few, one, two, three, four, sets[from + 4] ?? 0, length, width, area, crosscuts, rips);
  }
  few.spent += LOOKS_FOR_TWO * count * count;
  if (!everyTwoFit(few, from, count, length, width)) return false;
  const parts = partsOf(few, from, count, length, width, area, crosscuts, rips);
  const first = (from / STRIDE) * PARTS_MOST;
  for (let at = first; at < first + parts; at += 1)
    if (fitsWithout(few, few.parts[at] ?? 0, from, count, length, width, area, crosscuts, rips, steps)) return true;
  return false;
}

/** One piece, or two. */
function upToTwoComeOutOf(
  { lengths, widths }: FewPieces,
  one: number,
  two: number,
  length: number,
  width: number,
  crosscuts: number,
  rips: number,
): boolean {
  if (one === two) return (lengths[one] ?? 0) <= length && (widths[one] ?? 0) <= width && (crosscuts > 0 || rips > 0);
  return (
    leastOfTwo(lengths, widths, one, two, width, crosscuts) <= length ||
    leastOfTwo(widths, lengths, one, two, length, rips) <= width
  );
}

/** Whether any two lie in the rectangle, one beyond or beside the other. */
function everyTwoFit(
  { sets, lengths, widths }: FewPieces,
  from: number,
  count: number,
  length: number,
  width: number,
): boolean {
  for (let at = from; at < from + count; at += 1) {
    const along = lengths[sets[at] ?? 0] ?? 0;
    const across = widths[sets[at] ?? 0] ?? 0;
    if (along > length || across > width) return false;
    for (let before = from; before < at; before += 1) {
      const beside = sets[before] ?? 0;
      if (along + (lengths[beside] ?? 0) > length && across + (widths[beside] ?? 0) > width) return false;
    }
  }
  return true;
}

/** Writes down the parts that leave most room for the rest; how many. */
function partsOf(
  few: FewPieces,
  from: number,
  count: number,
  length: number,
  width: number,
  area: number,
  crosscuts: number,
  rips: number,
): number {
  const { sets, lengths, widths, areas, scale, longs, wides } = few;
  const level = from / STRIDE;
  const most = count < 6 ? PARTS_MOST : level > 0 ? PARTS_OF_REST : PARTS;
  let parts = 0;
  for (let one = 0; one < count; one += 1) {
    const lie = sets[from + one] ?? 0;
    const rest1 = area - (areas[lie] ?? 0);
    const along1 = lengths[lie] ?? 0;
    const across1 = widths[lie] ?? 0;
    const alone = one | (NOBODY << 4) | (NOBODY << 8);
    const beyond1 = (length - along1) * width * scale - rest1;
    const beside1 = (width - across1) * length * scale - rest1;
    if (crosscuts > 0 && beyond1 >= 0) parts = note(few, level, parts, most, beyond1, alone);
    if (rips > 0 && beside1 >= 0) parts = note(few, level, parts, most, beside1, alone | BY_RIP);
    for (let two = one + 1; two < count; two += 1) {
      const other = sets[from + two] ?? 0;
      const rest = rest1 - (areas[other] ?? 0);
      const along2 = lengths[other] ?? 0;
      const across2 = widths[other] ?? 0;
      // As `leastOfTwo`, woven in here, where most of the time is spent.
      const isBeside = across1 + across2 <= width && crosscuts >= LEVELS_OF_TWO;
      const isBeyond = along1 + along2 <= length && rips >= LEVELS_OF_TWO;
      const long = isBeside ? Math.max(along1, along2) : along1 + along2;
      const wide = isBeyond ? Math.max(across1, across2) : across1 + across2;
      longs[one * STRIDE + two] = long;
      wides[one * STRIDE + two] = wide;
      const both = one | (two << 4) | (NOBODY << 8);
      const beyond = (length - long) * width * scale - rest;
      const beside = (width - wide) * length * scale - rest;
      if (crosscuts > 0 && beyond >= 0) parts = note(few, level, parts, most, beyond, both);
      if (rips > 0 && beside >= 0) parts = note(few, level, parts, most, beside, both | BY_RIP);
    }
  }
  if (count < 6 || count > PIECES_FOR_THREES) return parts;
  // Three of six leave three: each three is looked at once.
  for (let one = 0; one < (count === 6 ? 1 : count); one += 1)
    for (let two = one + 1; two < count; two += 1)
      for (let three = two + 1; three < count; three += 1) {
        const lie = sets[from + one] ?? 0;
        const other = sets[from + two] ?? 0;
        const third = sets[from + three] ?? 0;
        const rest = area - (areas[lie] ?? 0) - (areas[other] ?? 0) - (areas[third] ?? 0);
        const all = one | (two << 4) | (three << 8);
        // Three take no less than any two of them.
        if (crosscuts > 0 && (length - mostOfTwo(longs, one, two, three)) * width * scale >= rest) {
          const long = leastOfThree(lengths, widths, lie, other, third, width, crosscuts);
          const beyond = (length - long) * width * scale - rest;
          if (beyond >= 0) parts = note(few, level, parts, most, beyond, all);
        }
        if (rips > 0 && (width - mostOfTwo(wides, one, two, three)) * length * scale >= rest) {
          const wide = leastOfThree(widths, lengths, lie, other, third, length, rips);
          const beside = (width - wide) * length * scale - rest;
          if (beside >= 0) parts = note(few, level, parts, most, beside, all | BY_RIP);
        }
      }
  return parts;
}

function mostOfTwo(sizes: Int32Array, one: number, two: number, three: number): number {
  const size12 = sizes[one * STRIDE + two] ?? 0;
  const size13 = sizes[one * STRIDE + three] ?? 0;
  const size23 = sizes[two * STRIDE + three] ?? 0;
  return Math.max(size12, size13, size23);
}

/** Puts a part among those that leave most room, if it is one of them; how many there are then. */
function note(few: FewPieces, level: number, parts: number, most: number, room: number, part: number): number {
  const { rooms } = few;
  const first = level * PARTS_MOST;
  let at = first + parts;
  if (parts === most) {
    at -= 1;
    if (room <= (rooms[at] ?? 0)) return parts;
  }
  for (; at > first && (rooms[at - 1] ?? 0) < room; at -= 1) {
    rooms[at] = rooms[at - 1] ?? 0;
    few.parts[at] = few.parts[at - 1] ?? 0;
  }
  rooms[at] = room;
  few.parts[at] = part;
  return parts === most ? parts : parts + 1;
}

/** Whether the rest comes out of what is left beyond a part, or beside it. */
function fitsWithout(
  few: FewPieces,
  part: number,
  from: number,
  count: number,
  length: number,
  width: number,
  area: number,
  crosscuts: number,
  rips: number,
  steps: Step[] | undefined,
): boolean {
  const { sets, lengths, widths, areas } = few;
  const one = part & NOBODY;
  const two = (part >> 4) & NOBODY;
  const three = (part >> 8) & NOBODY;
  const next = from + STRIDE;
  let to = next;
  for (let at = 0; at < count; at += 1) {
    if (at === one || at === two || at === three) continue;
    sets[to] = sets[from + at] ?? 0;
    to += 1;
  }
  const left = to - next;
  const lie = sets[from + one] ?? 0;
  const other = sets[from + two] ?? 0;
  const third = sets[from + three] ?? 0;
  let rest = area - (areas[lie] ?? 0);
  if (two !== NOBODY) rest -= areas[other] ?? 0;
  if (three !== NOBODY) rest -= areas[third] ?? 0;
  const isRip = (part & BY_RIP) !== 0;
  const alongs = isRip ? widths : lengths;
  const acrosses = isRip ? lengths : widths;
  const room = isRip ? length : width;
  const stages = isRip ? rips : crosscuts;
  const size =
    two === NOBODY
      ? (alongs[lie] ?? 0)
      : three === NOBODY
        ? leastOfTwo(alongs, acrosses, lie, other, room, stages)
        : leastOfThree(alongs, acrosses, lie, other, third, room, stages);
  const yes = isRip
    ? fits(few, next, left, length, width - size, rest, stages, RIP, steps)
    : fits(few, next, left, length - size, width, rest, stages, CROSSCUT, steps);
  if (yes) {
    const lies = [lie, ...(two === NOBODY ? [] : [other]), ...(three === NOBODY ? [] : [third])];
    steps?.push({ cut: isRip ? 'rip' : 'crosscut', lies });
  }
  return yes;
}
