import type { Stock } from '../../import/job.ts';
import type { Shop } from '../../trade/shop.ts';
import { askOf } from './asked.ts';
import { pairedKinds } from './colour.ts';
import type { CuttingProblem } from './problem.ts';
import { type Handling, type OpenBin, piecesIn, settingKey } from './rows.ts';
import type { Saw } from './sawing.ts';

/** The saw of the shop in the units of a problem. */
export const sawOf = (problem: CuttingProblem, { saw }: Shop): Saw => ({
  kerf: problem.kerf,
  reach: { crosscut: saw.crosscutCapacity / problem.unit, rip: saw.ripCapacity / problem.unit },
});

/** Tells of each bin what it asks of the saw; a bin that has been told of once is not looked at again. */
export function handlingOf(problem: CuttingProblem, stock: Stock, shop: Shop): (bin: OpenBin) => Handling {
  const saw = sawOf(problem, shop);
  const largest = Math.max(...problem.bins.map(bin => bin.area));
  const paired = pairedKinds(problem, shop.planning.colourMatch);
  const work = (bin: OpenBin): Handling => {
    const handling = { ...look(problem, saw, bin, stock, shop, largest), odd: oddPairs(bin, paired) };
    bin.handling = handling;
    return handling;
  };
  return bin => bin.handling ?? work(bin);
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
  if (kind === undefined) throw new RangeError('a bin of no kind');
  const settings = new Set<number>();
  let cuts = 0;
  let remnant = 0;
  let awkward = false;
  askOf(saw, bin, kind, stock.kind, {
    cut: (direction, setting, stage) => {
      cuts += 1;
      settings.add(settingKey(direction, setting * problem.unit, false));
      if (stage === 1) settings.add(settingKey(direction, setting * problem.unit, true));
      if (stage === 1 && direction !== kind.easy) awkward = true;
    },
    leftover: (length, width) => {
      if (length * problem.unit < planning.remnantLength || width * problem.unit < planning.remnantWidth) return;
      remnant = Math.max(remnant, length * width);
    },
  });
  return { settings: [...settings], cuts, remnant: remnant / largest, awkward };
}

function oddPairs(bin: OpenBin, paired: ReadonlySet<number>): number {
  if (paired.size === 0) return 0;
  const odd = new Set<number>();
  for (const kind of piecesIn(bin)) if (paired.has(kind) && !odd.delete(kind)) odd.add(kind);
  return odd.size;
}
