import type { FewPieces } from './few-pieces.ts';
import { LEVELS_OF_THREE, LEVELS_OF_TWO, leastOfThree, threeComeOut } from './two-or-three.ts';

/**
 * Whether four pieces come out of a rectangle: two cut off two, or one off three. `crosscuts` and `rips` are the stages
 * that are left if the first cut is a crosscut, or a rip.
 */
export function fourComeOut(
  few: FewPieces,
  one: number,
  two: number,
  three: number,
  four: number,
  length: number,
  width: number,
  area: number,
  crosscuts: number,
  rips: number,
): boolean {
  const { lengths, widths } = few;
  const long1 = lengths[one] ?? 0;
  const long2 = lengths[two] ?? 0;
  const long3 = lengths[three] ?? 0;
  const long4 = lengths[four] ?? 0;
  if (long1 > length || long2 > length || long3 > length || long4 > length) return false;
  const wide1 = widths[one] ?? 0;
  const wide2 = widths[two] ?? 0;
  const wide3 = widths[three] ?? 0;
  const wide4 = widths[four] ?? 0;
  if (wide1 > width || wide2 > width || wide3 > width || wide4 > width) return false;
  return (
    twoAndTwo(long1, long2, long3, long4, wide1, wide2, wide3, wide4, length, width, crosscuts) ||
    twoAndTwo(wide1, wide2, wide3, wide4, long1, long2, long3, long4, width, length, rips) ||
    oneAndThree(few, one, two, three, four, length, width, area, crosscuts, rips) ||
    oneAndThree(few, two, one, three, four, length, width, area, crosscuts, rips) ||
    oneAndThree(few, three, one, two, four, length, width, area, crosscuts, rips) ||
    oneAndThree(few, four, one, two, three, length, width, area, crosscuts, rips)
  );
}

function oneAndThree(
  few: FewPieces,
  off: number,
  one: number,
  two: number,
  three: number,
  length: number,
  width: number,
  area: number,
  crosscuts: number,
  rips: number,
): boolean {
  const rest = area - (few.areas[off] ?? 0);
  const beyond = length - (few.lengths[off] ?? 0);
  const beside = width - (few.widths[off] ?? 0);
  return (
    (crosscuts > 0 &&
      beyond * width * few.scale >= rest &&
      threeComeOutOf(few, one, two, three, beyond, width, crosscuts, crosscuts - 1)) ||
    (rips > 0 &&
      length * beside * few.scale >= rest &&
      threeComeOutOf(few, one, two, three, length, beside, rips - 1, rips))
  );
}

/** Whether two are cut off two others across `along`, in any of the three ways to pair them. */
function twoAndTwo(
  along1: number,
  along2: number,
  along3: number,
  along4: number,
  across1: number,
  across2: number,
  across3: number,
  across4: number,
  along: number,
  across: number,
  stages: number,
): boolean {
  if (stages < 1) return false;
  if (stages < LEVELS_OF_TWO) return along1 + along2 + along3 + along4 <= along;
  const long12 = across1 + across2 > across ? along1 + along2 : Math.max(along1, along2);
  const long34 = across3 + across4 > across ? along3 + along4 : Math.max(along3, along4);
  if (long12 + long34 <= along) return true;
  const long13 = across1 + across3 > across ? along1 + along3 : Math.max(along1, along3);
  const long24 = across2 + across4 > across ? along2 + along4 : Math.max(along2, along4);
  if (long13 + long24 <= along) return true;
  const long14 = across1 + across4 > across ? along1 + along4 : Math.max(along1, along4);
  const long23 = across2 + across3 > across ? along2 + along3 : Math.max(along2, along3);
  return long14 + long23 <= along;
}

/** Whether three pieces come out of a rectangle. `crosscuts` and `rips` as for four. */
export function threeComeOutOf(
  few: FewPieces,
  one: number,
  two: number,
  three: number,
  length: number,
  width: number,
  crosscuts: number,
  rips: number,
): boolean {
  if (crosscuts >= LEVELS_OF_THREE && rips >= LEVELS_OF_THREE) return threeComeOut(few, one, two, three, length, width);
  const { lengths, widths } = few;
  return (
    leastOfThree(lengths, widths, one, two, three, width, crosscuts) <= length ||
    leastOfThree(widths, lengths, one, two, three, length, rips) <= width
  );
}

/** The same of five: one cut off four, or two off three. */
export function fiveComeOut(
  few: FewPieces,
  one: number,
  two: number,
  three: number,
  four: number,
  five: number,
  length: number,
  width: number,
  area: number,
  crosscuts: number,
  rips: number,
): boolean {
  return (
    twoAndThree(few, one, two, three, four, five, length, width, area, crosscuts, rips) ||
    twoAndThree(few, one, three, two, four, five, length, width, area, crosscuts, rips) ||
    twoAndThree(few, one, four, two, three, five, length, width, area, crosscuts, rips) ||
    twoAndThree(few, one, five, two, three, four, length, width, area, crosscuts, rips) ||
    twoAndThree(few, two, three, one, four, five, length, width, area, crosscuts, rips) ||
    twoAndThree(few, two, four, one, three, five, length, width, area, crosscuts, rips) ||
    twoAndThree(few, two, five, one, three, four, length, width, area, crosscuts, rips) ||
    twoAndThree(few, three, four, one, two, five, length, width, area, crosscuts, rips) ||
    twoAndThree(few, three, five, one, two, four, length, width, area, crosscuts, rips) ||
    twoAndThree(few, four, five, one, two, three, length, width, area, crosscuts, rips) ||
    oneAndFour(few, one, two, three, four, five, length, width, area, crosscuts, rips) ||
    oneAndFour(few, two, one, three, four, five, length, width, area, crosscuts, rips) ||
    oneAndFour(few, three, one, two, four, five, length, width, area, crosscuts, rips) ||
    oneAndFour(few, four, one, two, three, five, length, width, area, crosscuts, rips) ||
    oneAndFour(few, five, one, two, three, four, length, width, area, crosscuts, rips)
  );
}

function oneAndFour(
  few: FewPieces,
  off: number,
  one: number,
  two: number,
  three: number,
  four: number,
  length: number,
  width: number,
  area: number,
  crosscuts: number,
  rips: number,
): boolean {
  const rest = area - (few.areas[off] ?? 0);
  const beyond = length - (few.lengths[off] ?? 0);
  const beside = width - (few.widths[off] ?? 0);
  if (beyond < 0 || beside < 0) return false;
  return (
    (crosscuts > 0 &&
      beyond * width * few.scale >= rest &&
      fourComeOut(few, one, two, three, four, beyond, width, rest, crosscuts, crosscuts - 1)) ||
    (rips > 0 &&
      length * beside * few.scale >= rest &&
      fourComeOut(few, one, two, three, four, length, beside, rest, rips - 1, rips))
  );
}

function twoAndThree(
  { lengths, widths, areas, scale }: FewPieces,
  one: number,
  two: number,
  three: number,
  four: number,
  five: number,
  length: number,
  width: number,
  area: number,
  crosscuts: number,
  rips: number,
): boolean {
  const rest = area - (areas[one] ?? 0) - (areas[two] ?? 0);
  const long1 = lengths[one] ?? 0;
  const long2 = lengths[two] ?? 0;
  const wide1 = widths[one] ?? 0;
  const wide2 = widths[two] ?? 0;
  // As `leastOfTwo`, woven in here, where most of the time is spent.
  if (crosscuts > 0 && wide1 <= width && wide2 <= width) {
    const isBeside = crosscuts >= LEVELS_OF_TWO && wide1 + wide2 <= width;
    const beyond = length - (isBeside ? Math.max(long1, long2) : long1 + long2);
    if (beyond * width * scale >= rest && leastOfThree(lengths, widths, three, four, five, width, crosscuts) <= beyond)
      return true;
  }
  if (rips < 1 || long1 > length || long2 > length) return false;
  const isBeyond = rips >= LEVELS_OF_TWO && long1 + long2 <= length;
  const beside = width - (isBeyond ? Math.max(wide1, wide2) : wide1 + wide2);
  return beside * length * scale >= rest && leastOfThree(widths, lengths, three, four, five, length, rips) <= beside;
}
