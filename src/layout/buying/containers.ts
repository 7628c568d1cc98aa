import type { Volume } from '../../units/mass.ts';

/** So many cans of one size. */
export type Cans = { readonly volume: Volume; readonly count: number };

/**
 * The cans to buy for `needed`: the least that is bought too much, and of equals the fewest cans. `sizes` are those that
 * are sold; none sold, none bought.
 */
export function cansFor(needed: Volume, sizes: readonly Volume[]): readonly Cans[] {
  const largestFirst = [...sizes].filter(size => size > 0).sort((a, b) => b - a);
  return needed <= 0 ? [] : (best(needed, largestFirst) ?? []);
}

export const boughtVolume = (cans: readonly Cans[]): Volume =>
  cans.reduce((sum, each) => sum + each.volume * each.count, 0) as Volume;

/** So many of the largest, the rest of the others: the best over all counts that could be. */
function best(needed: number, [size, ...smaller]: readonly Volume[]): readonly Cans[] | undefined {
  if (needed <= NOTHING) return [];
  if (size === undefined) return undefined;
  const enough = Math.ceil(needed / size - NOTHING);
  let found: readonly Cans[] = some(size, enough);
  for (let count = enough - 1; count >= Math.max(0, enough - FEWER_MAX); count -= 1) {
    const rest = best(needed - count * size, smaller);
    const cans = rest && [...some(size, count), ...rest];
    if (cans !== undefined && isBetter(cans, found)) found = cans;
  }
  return found;
}

const some = (volume: Volume, count: number): readonly Cans[] => (count === 0 ? [] : [{ volume, count }]);

function isBetter(first: readonly Cans[], second: readonly Cans[]): boolean {
  const difference = boughtVolume(first) - boughtVolume(second);
  return difference < -NOTHING || (difference <= NOTHING && cansIn(first) < cansIn(second));
}

const cansIn = (cans: readonly Cans[]): number => cans.reduce((sum, each) => sum + each.count, 0);

/** A thousandth of a millilitre, in cubic metres: sums of floats differ by less, and no can is bought for it. */
const NOTHING = 1e-9;

/** So many large cans at most are given up for small ones: more than that are worth another large one again. */
const FEWER_MAX = 9;
