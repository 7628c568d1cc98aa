import type { DoorSet } from '../../calculate/door-set.ts';
import type { Job, Price, Stock, StockSize } from '../../import/job.ts';
import { addMoney, type Money, priceOf } from '../../units/money.ts';
import type { CutBin, CutPlan, ShoppingLine, SizeCount } from '../shop-plan.ts';
import { boardFeet, countedThickness, netBoardFeet } from './board-feet.ts';

/** A line for each stock that the job uses, in the order of its name. */
export const wood = (job: Job, doorSet: DoorSet, cutPlans: readonly CutPlan[]): readonly ShoppingLine[] =>
  [...job.stock]
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap(stock => {
      const bins = cutPlans.filter(plan => plan.stock === stock.name).flatMap(plan => plan.bins);
      if (stock.kind === 'sheet') return bins.length === 0 ? [] : [sheets(stock, bins)];
      if (bins.length > 0 && isMeasured(stock)) return [wholeBoards(stock, bins)];
      const pieces = bins.length > 0 ? bins.flatMap(bin => bin.pieces) : partsOf(stock, doorSet);
      return pieces.length === 0 ? [] : [byTheBoardFoot(stock, pieces, bins, job.shop.rough.yield)];
    });

function sheets(stock: Stock, bins: readonly CutBin[]): ShoppingLine {
  return {
    kind: 'sheet',
    item: stock.name,
    unit: 'sheet',
    ...counts(bins),
    detail: { kind: 'sheets', sizes: sizeCounts(bins) },
    amount: priceOfBins(stock, bins.filter(isBought)),
  };
}

/** The boards of the cutting plan, by their own sizes. */
function wholeBoards(stock: Stock, bins: readonly CutBin[]): ShoppingLine {
  const net = netBoardFeet(
    bins.flatMap(bin => bin.pieces),
    stock.thickness,
  );
  const gross = netBoardFeet(bins, stock.thickness);
  return {
    kind: 'board',
    item: stock.name,
    unit: 'board',
    ...counts(bins),
    detail: {
      ...boards(stock),
      netBoardFeet: net,
      boughtBoardFeet: boardFeet(bins.filter(isBought), stock.thickness),
      yield: gross === 0 ? 0 : net / gross,
      sizes: sizeCounts(bins),
    },
    amount: priceOfBins(stock, bins.filter(isBought)),
  };
}

/** Where nobody knows what widths the yard will have: net board feet over the shop's usual yield, rounded up. */
function byTheBoardFoot(
  stock: Stock,
  pieces: readonly Sized[],
  bins: readonly CutBin[],
  usualYield: number,
): ShoppingLine {
  const net = netBoardFeet(pieces, stock.thickness);
  const bought = Math.ceil(net / usualYield);
  const price = stock.sizes.find(size => size.buy && size.price?.by === 'board-foot')?.price;
  return {
    kind: 'board',
    item: stock.name,
    unit: 'board-foot',
    needed: bought,
    onHand: 0,
    buy: bought,
    detail: {
      ...boards(stock),
      netBoardFeet: net,
      boughtBoardFeet: bought,
      yield: usualYield,
      sizes: sizeCounts(bins),
    },
    amount: price && priceOf(bought, price.amount),
  };
}

type Sized = Parameters<typeof netBoardFeet>[0][number];

const partsOf = (stock: Stock, doorSet: DoorSet): readonly Sized[] =>
  doorSet.parts
    .filter(part => part.stock === stock.name)
    .map(part => ({ length: part.length.value, width: part.width.value }));

const boards = (stock: Stock) => ({
  kind: 'boards' as const,
  species: stock.species,
  thickness: countedThickness(stock.thickness),
});

/** Whether the workbook gives the sizes, and not the standard board that the plan was tried on. */
const isMeasured = (stock: Stock): boolean =>
  stock.sizes.some(size => size.from.columns['width'] !== undefined || size.from.columns['length'] !== undefined);

const isBought = (bin: CutBin): boolean => bin.source === 'buy';

const counts = (bins: readonly CutBin[]) => ({
  needed: bins.length,
  onHand: bins.filter(bin => !isBought(bin)).length,
  buy: bins.filter(isBought).length,
});

/** Largest first, what is on hand before what is bought. */
function sizeCounts(bins: readonly CutBin[]): readonly SizeCount[] {
  const sizes = new Map<string, SizeCount>();
  for (const bin of bins) {
    const key = `${bin.source} ${bin.length} ${bin.width}`;
    const count = (sizes.get(key)?.count ?? 0) + 1;
    sizes.set(key, { width: bin.width, length: bin.length, count, onHand: !isBought(bin) });
  }
  return [...sizes.values()].sort(
    (a, b) => Number(b.onHand) - Number(a.onHand) || b.length - a.length || b.width - a.width,
  );
}

/**
 * What the bought bins cost; undefined as soon as one has no price, so that the sum never passes for the whole. Boards
 * at one price are one tally, as at the yard.
 */
function priceOfBins(stock: Stock, bins: readonly CutBin[]): Money | undefined {
  const tallies = new Map<string, { readonly price: Price; readonly bins: CutBin[] }>();
  for (const bin of bins) {
    const price = stock.sizes.find(size => size.buy && isOf(size, bin))?.price;
    if (price === undefined) return undefined;
    const key = `${price.by} ${price.amount}`;
    const tally = tallies.get(key);
    if (tally === undefined) tallies.set(key, { price, bins: [bin] });
    else tally.bins.push(bin);
  }
  return addMoney(
    [...tallies.values()].map(tally =>
      priceOf(
        tally.price.by === 'board-foot' ? boardFeet(tally.bins, stock.thickness) : tally.bins.length,
        tally.price.amount,
      ),
    ),
  );
}

const isOf = (size: StockSize, bin: CutBin): boolean => size.width === bin.width && size.length === bin.length;
