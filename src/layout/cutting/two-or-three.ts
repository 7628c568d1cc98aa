/** Lengths and widths of pieces as they lie, by their numbers. */
export type Sizes = { readonly lengths: Int32Array; readonly widths: Int32Array };

/** Whether three pieces come out of a rectangle, by any cuts: all in a row, or one beside or beyond the two others. */
export function threeComeOut(
  { lengths, widths }: Sizes,
  one: number,
  two: number,
  three: number,
  length: number,
  width: number,
): boolean {
  const along1 = lengths[one] ?? 0;
  const along2 = lengths[two] ?? 0;
  const along3 = lengths[three] ?? 0;
  const across1 = widths[one] ?? 0;
  const across2 = widths[two] ?? 0;
  const across3 = widths[three] ?? 0;
  if (along1 > length || along2 > length || along3 > length) return false;
  if (across1 > width || across2 > width || across3 > width) return false;
  const [long12, long13, long23] = [along1 + along2 <= length, along1 + along3 <= length, along2 + along3 <= length];
  const [wide12, wide13, wide23] = [across1 + across2 <= width, across1 + across3 <= width, across2 + across3 <= width];
  // One and, beyond it, two others that lie beside each other: each of them has room beyond it. And so crosswise.
  if ((wide12 && long13 && long23) || (wide13 && long12 && long23) || (wide23 && long12 && long13)) return true;
  if ((long12 && wide13 && wide23) || (long13 && wide12 && wide23) || (long23 && wide12 && wide13)) return true;
  return along1 + along2 + along3 <= length || across1 + across2 + across3 <= width;
}

/** Changes of direction after a cut, a trim included, that all ways to cut two pieces, and three, can do with. */
export const LEVELS_OF_TWO = 2;
export const LEVELS_OF_THREE = 3;

/**
 * Extent along a cut of the smallest part with two pieces, where there is so much room across it: one after the other, or
 * beside each other by a cut across. `stages` are the changes of direction that are left after the cut.
 */
export function leastOfTwo(
  alongs: Int32Array,
  acrosses: Int32Array,
  one: number,
  two: number,
  room: number,
  stages: number,
): number {
  const [across1, across2] = [acrosses[one] ?? 0, acrosses[two] ?? 0];
  if (across1 > room || across2 > room || stages < 1) return NEVER;
  const [along1, along2] = [alongs[one] ?? 0, alongs[two] ?? 0];
  return across1 + across2 <= room && stages >= LEVELS_OF_TWO ? Math.max(along1, along2) : along1 + along2;
}

/** The same of three pieces. */
export function leastOfThree(
  alongs: Int32Array,
  acrosses: Int32Array,
  one: number,
  two: number,
  three: number,
  room: number,
  stages: number,
): number {
  const across1 = acrosses[one] ?? 0;
  const across2 = acrosses[two] ?? 0;
  const across3 = acrosses[three] ?? 0;
  if (across1 > room || across2 > room || across3 > room || stages < 1) return NEVER;
  const along1 = alongs[one] ?? 0;
  const along2 = alongs[two] ?? 0;
  const along3 = alongs[three] ?? 0;
  // One after another.
  let least = along1 + along2 + along3;
  if (stages < LEVELS_OF_TWO) return least;
  // Two beside each other, and one after them.
  if (across1 + across2 <= room) least = Math.min(least, along3 + Math.max(along1, along2));
  if (across1 + across3 <= room) least = Math.min(least, along2 + Math.max(along1, along3));
  if (across2 + across3 <= room) least = Math.min(least, along1 + Math.max(along2, along3));
  if (across1 + across2 + across3 <= room) least = Math.min(least, Math.max(along1, along2, along3));
  if (stages < LEVELS_OF_THREE) return least;
  // One beside two that lie one after another.
  if (across1 + Math.max(across2, across3) <= room) least = Math.min(least, Math.max(along1, along2 + along3));
  if (across2 + Math.max(across1, across3) <= room) least = Math.min(least, Math.max(along2, along1 + along3));
  if (across3 + Math.max(across1, across2) <= room) least = Math.min(least, Math.max(along3, along1 + along2));
  return least;
}

/** More than any bin has. */
const NEVER = 2 ** 30;
