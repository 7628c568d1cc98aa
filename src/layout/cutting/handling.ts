import type { Stock } from '../../import/job.ts';
import type { Shop } from '../../trade/shop.ts';
import { pairedKinds } from './colour.ts';
import type { Handling } from './fewer-settings.ts';
import type { CuttingProblem } from './problem.ts';
import { type OpenBin, piecesIn } from './rows.ts';
import { type Saw, sawingOrder } from './sawing.ts';

/** The saw of the shop in the units of a problem. */
export const sawOf = (problem: CuttingProblem, { saw }: Shop): Saw => ({
  kerf: problem.kerf,
  reach: { crosscut: saw.crosscutCapacity / problem.unit, rip: saw.ripCapacity / problem.unit },
});

/** Tells of each bin what it asks of the saw; a bin that has been told of once is not sawn again. */
export function handlingOf(problem: CuttingProblem, stock: Stock, shop: Shop): (bin: OpenBin) => Handling {
  const known = new WeakMap<OpenBin, Handling>();
  const saw = sawOf(problem, shop);
  const largest = Math.max(...problem.bins.map(bin => bin.area));
  const paired = pairedKinds(problem, shop.planning.colourMatch);
  return bin => {
    const before = known.get(bin);
    if (before !== undefined) return before;
    const handling = { ...look(problem, saw, bin, stock, shop, largest), odd: oddPairs(bin, paired) };
    known.set(bin, handling);
    return handling;
  };
}

function look(
  problem: CuttingProblem,
  saw: Saw,
  bin: OpenBin,
  stock: Stock,
  { planning }: Shop,
  largest: number,
): Omit<Handling, 'odd'> {
  const kind = problem.bins[bin.kind];
  if (kind === undefined) return { settings: [], remnant: 0 };
  const { cuts, sides } = sawingOrder(saw, bin, kind, stock.kind);
  const leftovers = sides.map(side =>
    side.kind === 'leftover' &&
    !side.spoilt &&
    side.at.length * problem.unit >= planning.remnantLength &&
    side.at.width * problem.unit >= planning.remnantWidth
      ? side.at.length * side.at.width
      : 0,
  );
  return {
    settings: cuts.filter(cut => !cut.trim).map(cut => settingKey(cut.direction, cut.setting * problem.unit)),
    remnant: Math.max(0, ...leftovers) / largest,
  };
}

/** One number for a direction and a distance in nanometres, the same for all wood of a job. */
export const settingKey = (direction: 'crosscut' | 'rip', setting: number): number =>
  2 * setting + (direction === 'rip' ? 1 : 0);

function oddPairs(bin: OpenBin, paired: ReadonlySet<number>): number {
  if (paired.size === 0) return 0;
  const odd = new Set<number>();
  for (const kind of piecesIn(bin)) if (paired.has(kind) && !odd.delete(kind)) odd.add(kind);
  return odd.size;
}
