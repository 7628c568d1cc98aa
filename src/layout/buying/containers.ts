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

/** As many of the largest as go in whole and the rest of the others, or one more of the largest: a can never pays twice. */
function best(needed: number, [size, ...smaller]: readonly Volume[]): readonly Cans[] | undefined {
  if (size === undefined) return needed <= NOTHING ? [] : undefined;
  const whole = Math.floor(needed / size + NOTHING);
  const rest = best(needed - whole * size, smaller);
  const exact = rest === undefined ? undefined : [...some(size, whole), ...rest];
  const over = some(size, whole + (needed - whole * size > NOTHING ? 1 : 0));
  return exact === undefined || isBetter(over, exact) ? over : exact;
}

const some = (volume: Volume, count: number): readonly Cans[] => (count === 0 ? [] : [{ volume, count }]);

function isBetter(first: readonly Cans[], second: readonly Cans[]): boolean {
  const difference = boughtVolume(first) - boughtVolume(second);
  return difference < -NOTHING || (difference <= NOTHING && cansIn(first) < cansIn(second));
}

const cansIn = (cans: readonly Cans[]): number => cans.reduce((sum, each) => sum + each.count, 0);

/** A thousandth of a millilitre, in cubic metres: sums of floats differ by less, and no can is bought for it. */
const NOTHING = 1e-9;
