import { type Lying, lyingIn } from './lying.ts';
import type { CuttingProblem } from './problem.ts';
import type { Direction } from './rows.ts';
import { LEVELS_OF_THREE, LEVELS_OF_TWO, leastOfThree, leastOfTwo, threeComeOut, twoComeOut } from './two-or-three.ts';

/**
 * Tells which few pieces come out of one bin together. Pieces are numbered by how they lie: one that may be turned has two
 * numbers. The set that is asked about stands at the beginning of `sets`.
 */
export type FewPieces = {
  readonly lying: readonly Lying[];
  /** Area of the bin, and of each piece as it lies: as many of a square unit as make whole numbers that are quick to add. */
  readonly area: number;
  readonly areas: Int32Array;
  readonly scale: number;
  readonly lengths: Int32Array;
  readonly widths: Int32Array;
  /** Room for sets, and for what is left of them as parts are cut off. */
  readonly sets: Int32Array;
  readonly length: number;
  readonly width: number;
  readonly stages: number;
  /** Two numbers for each piece, whose sums tell sets apart, and the answers for these sums that were given lately. */
  readonly marks: Int32Array;
  readonly known: Int32Array;
  /** What may still be tried for the set in hand, and how much has been tried since `tried` was set to 0. */
  tries: number;
  tried: number;
  /** Which parts were cut off, the last first, when the answer is to be a tree. */
  steps: Step[] | undefined;
};

/** Cut off the rest by a cut in a direction, or lying together at the end. */
export type Step = { readonly cut: Direction | undefined; readonly lies: readonly number[] };

/** So many pieces are tried together. */
export const FEW = 12;

/** Nothing is asked about more pieces than this, so that a set of them and of each rest has its place in `sets`. */
const STRIDE = 16;
/** Parts tried for one set: with as many as eight pieces, most sets that come out at all come out with these. */
const TRIES = 30;
/** Parts tried for a set that is known to come out: it is what is left of one that was tried. */
const TRIES_FOR_STEPS = 100_000;
const KNOWN_BITS = 16;
/** Changes of direction that no few pieces need. */
const PLENTY = 99;
const AREA_MOST = 2 ** 30;

export const NONE = 0;
export const CROSSCUT = 1;
export const RIP = 2;
export type Last = typeof NONE | typeof CROSSCUT | typeof RIP;

/** For a plain bin; lengths and areas in units. */
export function openFewPieces(problem: CuttingProblem): FewPieces {
  const { length, width } = problem.bins[0]?.clear[0] ?? { length: 0, width: 0 };
  const scale = Math.min(1, AREA_MOST / (length * width));
  const lying = lyingIn(problem);
  return {
    lying,
    area: Math.floor(length * width * scale),
    scale,
    lengths: Int32Array.from(lying, lie => lie.length),
    widths: Int32Array.from(lying, lie => lie.width),
    areas: Int32Array.from(lying, lie => Math.floor(lie.length * lie.width * scale)),
    sets: new Int32Array(STRIDE * (FEW + 1)),
    length,
    width,
    stages: Math.min(PLENTY, problem.stages),
    marks: Int32Array.from({ length: 2 * lying.length }, (_, at) => mixed(at + 1)),
    known: new Int32Array(2 << KNOWN_BITS),
    tries: 0,
    tried: 0,
    steps: undefined,
  };
}

function mixed(number: number): number {
  let mix = Math.imul(number, 0x9e3779b1);
  mix = Math.imul(mix ^ (mix >>> 16), 0x85ebca6b);
  mix = Math.imul(mix ^ (mix >>> 13), 0xc2b2ae35);
  return mix ^ (mix >>> 16);
}

/** Whether one piece does not come out of a bin together with these: with any one of them, or with any two. */
export function isApart(few: FewPieces, lie: number, set: Int32Array, count: number): boolean {
  const { lengths, widths, length, width } = few;
  const along = lengths[lie] ?? 0;
  const across = widths[lie] ?? 0;
  for (let at = 0; at < count; at += 1) {
    const beside = set[at] ?? 0;
    if (along + (lengths[beside] ?? 0) > length && across + (widths[beside] ?? 0) > width) return true;
  }
  for (let at = 1; at < count; at += 1)
    for (let before = 0; before < at; before += 1)
      if (!threeComeOut(few, lie, set[at] ?? 0, set[before] ?? 0, length, width)) return true;
  return false;
}

/**
 * Whether the first `count` of `sets` come out of one bin by through cuts within the stages. What was asked lately is
 * remembered; of many pieces not every way to cut them is tried, so that a no may be wrong.
 */
export function comesOut(few: FewPieces, count: number): boolean {
  const { sets, areas, marks, known, length, width, stages } = few;
  let area = 0;
  let one = 0;
  let two = 0;
  for (let at = 0; at < count; at += 1) {
    const lie = sets[at] ?? 0;
    area += areas[lie] ?? 0;
    one = (one + (marks[2 * lie] ?? 0)) | 0;
    two = (two + (marks[2 * lie + 1] ?? 0)) | 0;
  }
  if (area > few.area) return false;
  few.tries = TRIES;
  if (count < 4) return fits(few, 0, count, length, width, area, stages, NONE);
  const place = (mixed(one ^ two) & ((1 << KNOWN_BITS) - 1)) << 1;
  if (known[place] === one && (known[place + 1] ?? 0) >> 1 === two >> 1) return ((known[place + 1] ?? 0) & 1) === 1;
  const yes = fits(few, 0, count, length, width, area, stages, NONE);
  known[place] = one;
  known[place + 1] = (two & ~1) | (yes ? 1 : 0);
  return yes;
}

/** How a set is taken apart, from the whole bin on; undefined where it does not come out of one. */
export function stepsFor(few: FewPieces, lies: readonly number[]): readonly Step[] | undefined {
  for (const [at, lie] of lies.entries()) few.sets[at] = lie;
  const area = lies.reduce((sum, lie) => sum + (few.areas[lie] ?? 0), 0);
  few.tries = TRIES_FOR_STEPS;
  few.steps = [];
  const yes = fits(few, 0, lies.length, few.length, few.width, area, few.stages, NONE);
  const steps = few.steps.reverse();
  few.steps = undefined;
  return yes ? steps : undefined;
}

/**
 * Whether what stands in `sets` from a place on can be cut from a rectangle: one, two or three pieces are cut off the rest,
 * which is tried in what is left. Every way to cut a rectangle divides it in two, and the smaller of these has no more
 * than three of seven pieces.
 */
function fits(
  few: FewPieces,
  from: number,
  count: number,
  length: number,
  width: number,
  area: number,
  stages: number,
  last: Last,
): boolean {
  const { sets, lengths, widths, areas, scale } = few;
  const crosscuts = last === CROSSCUT ? stages : stages - 1;
  const rips = last === RIP ? stages : stages - 1;
  if (count < 4) {
    const yes = fitsTogether(few, from, count, length, width, crosscuts, rips);
    if (yes) few.steps?.push({ cut: undefined, lies: Array.from(sets.subarray(from, from + count)) });
    return yes;
  }
  few.tried += 1;
  few.tries -= 1;
  if (few.tries < 0) return false;
  for (let at = from; at < from + count; at += 1) {
    const along = lengths[sets[at] ?? 0] ?? 0;
    const across = widths[sets[at] ?? 0] ?? 0;
    if (along > length || across > width) return false;
    for (let before = from; before < at; before += 1) {
      const beside = sets[before] ?? 0;
      if (along + (lengths[beside] ?? 0) > length && across + (widths[beside] ?? 0) > width) return false;
    }
  }
  for (let one = 0; one < count; one += 1) {
    const lie = sets[from + one] ?? 0;
    const rest = area - (areas[lie] ?? 0);
    const beyond = crosscuts > 0 ? length - (lengths[lie] ?? 0) : 0;
    const beside = rips > 0 ? width - (widths[lie] ?? 0) : 0;
    if (beyond * width * scale < rest && beside * length * scale < rest) continue;
    leaveOut(sets, from, count, one, -1, -1);
    if (fitsBeside(few, from, count, 1, beyond, beside, length, width, rest, crosscuts, rips)) return true;
  }
  // Two of four leave two: each pair is looked at once.
  for (let one = 0; one < (count === 4 ? 1 : count); one += 1) {
    for (let two = one + 1; two < count; two += 1) {
      const [lie, other] = [sets[from + one] ?? 0, sets[from + two] ?? 0];
      const rest = area - (areas[lie] ?? 0) - (areas[other] ?? 0);
      // As `leastOfTwo`, woven in here: most of the time is spent in this loop.
      const [along1, along2] = [lengths[lie] ?? 0, lengths[other] ?? 0];
      const [across1, across2] = [widths[lie] ?? 0, widths[other] ?? 0];
      const isBeside = across1 + across2 <= width && crosscuts >= LEVELS_OF_TWO;
      const isBeyond = along1 + along2 <= length && rips >= LEVELS_OF_TWO;
      const beyond = length - (isBeside ? Math.max(along1, along2) : along1 + along2);
      const beside = width - (isBeyond ? Math.max(across1, across2) : across1 + across2);
      if (beyond * width * scale < rest && beside * length * scale < rest) continue;
      leaveOut(sets, from, count, one, two, -1);
      if (fitsBeside(few, from, count, 2, beyond, beside, length, width, rest, crosscuts, rips)) return true;
    }
  }
  if (count < 6) return false;
  for (let one = 0; one < (count === 6 ? 1 : count); one += 1) {
    for (let two = one + 1; two < count; two += 1) {
      for (let three = two + 1; three < count; three += 1) {
        const [lie, other, third] = [sets[from + one] ?? 0, sets[from + two] ?? 0, sets[from + three] ?? 0];
        const rest = area - (areas[lie] ?? 0) - (areas[other] ?? 0) - (areas[third] ?? 0);
        const beyond = length - leastOfThree(lengths, widths, lie, other, third, width, crosscuts);
        const beside = width - leastOfThree(widths, lengths, lie, other, third, length, rips);
        if (beyond * width * scale < rest && beside * length * scale < rest) continue;
        leaveOut(sets, from, count, one, two, three);
        if (fitsBeside(few, from, count, 3, beyond, beside, length, width, rest, crosscuts, rips)) return true;
      }
    }
  }
  return false;
}

/** Writes the set without up to three of it behind the set, and these three behind that. */
function leaveOut(sets: Int32Array, from: number, count: number, one: number, two: number, three: number): void {
  let to = from + STRIDE;
  for (let at = 0; at < count; at += 1) {
    if (at === one || at === two || at === three) continue;
    sets[to] = sets[from + at] ?? 0;
    to += 1;
  }
  sets[to] = sets[from + one] ?? 0;
  if (two >= 0) sets[to + 1] = sets[from + two] ?? 0;
  if (three >= 0) sets[to + 2] = sets[from + three] ?? 0;
}

/** Whether the rest comes out of what is left beyond a part, by a crosscut, or beside it, by a rip. */
function fitsBeside(
  few: FewPieces,
  from: number,
  count: number,
  cutOff: number,
  beyond: number,
  beside: number,
  length: number,
  width: number,
  rest: number,
  crosscuts: number,
  rips: number,
): boolean {
  const next = from + STRIDE;
  const left = count - cutOff;
  let cut: Direction;
  if (
    crosscuts > 0 &&
    beyond * width * few.scale >= rest &&
    fits(few, next, left, beyond, width, rest, crosscuts, CROSSCUT)
  )
    cut = 'crosscut';
  else if (rips > 0 && beside * length * few.scale >= rest && fits(few, next, left, length, beside, rest, rips, RIP))
    cut = 'rip';
  else return false;
  few.steps?.push({ cut, lies: Array.from(few.sets.subarray(next + left, next + count)) });
  return true;
}

/** Whether up to three pieces come out of a rectangle. */
function fitsTogether(
  few: FewPieces,
  from: number,
  count: number,
  length: number,
  width: number,
  crosscuts: number,
  rips: number,
): boolean {
  const { sets, lengths, widths } = few;
  const lie = sets[from] ?? 0;
  const other = sets[from + 1] ?? 0;
  const third = sets[from + 2] ?? 0;
  switch (count) {
    case 1:
      return (lengths[lie] ?? 0) <= length && (widths[lie] ?? 0) <= width && (crosscuts > 0 || rips > 0);
    case 2:
      if (crosscuts >= LEVELS_OF_TWO && rips >= LEVELS_OF_TWO) return twoComeOut(few, lie, other, length, width);
      return (
        leastOfTwo(lengths, widths, lie, other, width, crosscuts) <= length ||
        leastOfTwo(widths, lengths, lie, other, length, rips) <= width
      );
    default:
      if (crosscuts >= LEVELS_OF_THREE && rips >= LEVELS_OF_THREE)
        return threeComeOut(few, lie, other, third, length, width);
      return (
        leastOfThree(lengths, widths, lie, other, third, width, crosscuts) <= length ||
        leastOfThree(widths, lengths, lie, other, third, length, rips) <= width
      );
  }
}
