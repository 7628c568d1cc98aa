import type { Stock, StockSize } from '../../import/job.ts';
import type { Shop } from '../../trade/shop.ts';
import type { Blank } from '../shop-plan.ts';
import { costOf } from './costs.ts';
import type { BinKind, ClearStretch, CuttingProblem, PieceKind, Reach } from './problem.ts';

/**
 * The cutting problem of one stock in whole units: every length of it divided by their common divisor, so that areas
 * stay exact whole numbers (see `units/length.ts`).
 */
export function problemOf(blanks: readonly Blank[], stock: Stock, shop: Shop): CuttingProblem {
  const { saw } = shop;
  const trims = trimsOf(stock, shop);
  const unit = commonDivisor([
    saw.kerf,
    saw.leastSkim,
    trims.end,
    trims.edge,
    ...blanks.flatMap(blank => [blank.length, blank.width]),
    ...stock.sizes.flatMap(size => [
      size.length,
      size.width,
      ...size.defects.flatMap(defect => [defect.start, defect.end]),
    ]),
  ]);
  const kerf = saw.kerf / unit;
  return {
    unit,
    kerf,
    stages: saw.stages === 'free' ? Number.POSITIVE_INFINITY : saw.stages,
    leastSkim: saw.leastSkim / unit,
    pieces: pieceKinds(blanks, stock, unit, kerf),
    bins: binKinds(stock, shop, unit),
  };
}

/** What comes off the end and the edge of this stock before anything else, kerf included, and off the far sides. */
export function trimsOf(
  stock: Stock,
  { saw }: Shop,
): { readonly end: number; readonly edge: number; readonly farEdge: number } {
  return stock.kind === 'sheet'
    ? { end: saw.sheetTrim, edge: saw.sheetTrim, farEdge: saw.sheetTrim }
    : { end: saw.boardEndTrim, edge: saw.boardEdgeLoss, farEdge: 0 };
}

function pieceKinds(blanks: readonly Blank[], stock: Stock, unit: number, kerf: number): readonly PieceKind[] {
  const turns = stock.kind === 'sheet' && stock.grain === 'none';
  const bySize = new Map<string, Blank[]>();
  for (const blank of blanks) {
    const size = `${blank.length} ${blank.width}`;
    bySize.set(size, [...(bySize.get(size) ?? []), blank]);
  }
  return [...bySize.values()]
    .map(same => {
      const length = (same[0]?.length ?? 0) / unit + kerf;
      const width = (same[0]?.width ?? 0) / unit + kerf;
      const codes = same.map(blank => blank.code).sort((one, two) => (one < two ? -1 : 1));
      return { length, width, area: length * width, turns, blanks: codes };
    })
    .sort((one, two) => two.area - one.area || two.length - one.length);
}

/** On hand before to buy; on hand the smallest first, so that offcuts are used up; to buy the cheapest wood first. */
function binKinds(stock: Stock, shop: Shop, unit: number): readonly BinKind[] {
  return stock.sizes
    .flatMap((size, index) => [
      ...(size.onHand > 0 ? [binKind(stock, shop, unit, size, index, 'on-hand')] : []),
      ...(size.buy ? [binKind(stock, shop, unit, size, index, 'buy')] : []),
    ])
    .filter(bin => bin.clear.length > 0)
    .sort(
      (one, two) =>
        Number(one.source === 'buy') - Number(two.source === 'buy') ||
        (one.source === 'on-hand'
          ? one.length * one.width - two.length * two.width
          : one.cost / (one.length * one.width) - two.cost / (two.length * two.width)) ||
        two.length - one.length ||
        one.size - two.size,
    );
}

function binKind(
  stock: Stock,
  shop: Shop,
  unit: number,
  size: StockSize,
  index: number,
  source: 'on-hand' | 'buy',
): BinKind {
  const kerf = shop.saw.kerf / unit;
  const length = size.length / unit;
  const width = size.width / unit;
  const clear = clearStretches(stock, shop, unit, size);
  const last = clear.at(-1);
  return {
    size: index,
    source,
    available: source === 'buy' ? Number.POSITIVE_INFINITY : size.onHand,
    cost: costOf(stock, size, source),
    length,
    width,
    clear,
    area: clear.reduce((total, stretch) => total + stretch.length * stretch.width, 0),
    endsClear: last !== undefined && last.along + last.length - kerf === length - trimsOf(stock, shop).end / unit,
    easy: easyFirstCut(stock, size, shop),
    reach: {
      crosscut: reachOn(length, shop.saw.crosscutCapacity / unit, kerf),
      rip: reachOn(width, shop.saw.ripCapacity / unit, kerf),
    },
  };
}

/**
 * A long board is crosscut first, because nobody guides it alone through a rip. A sheet is ripped first, its long edge on
 * the fence, where the fence reaches every width from one side or the other, and crosscut first where it does not.
 */
const easyFirstCut = (stock: Stock, size: StockSize, { saw }: Shop): BinKind['easy'] =>
  stock.kind === 'sheet' && 2 * saw.ripCapacity >= size.width ? 'rip' : 'crosscut';

/** What the bin yields between its trims and around its defects. */
function clearStretches(stock: Stock, shop: Shop, unit: number, size: StockSize): readonly ClearStretch[] {
  const kerf = shop.saw.kerf / unit;
  const trims = trimsOf(stock, shop);
  const across = trims.edge / unit;
  const width = (size.width - trims.edge - trims.farEdge) / unit + kerf;
  const end = (size.length - trims.end) / unit;
  const stretches: ClearStretch[] = [];
  let along = trims.end / unit;
  for (const defect of [...size.defects].sort((one, two) => one.start - two.start)) {
    const clear = Math.min(defect.start / unit, end) - along;
    if (clear > 0) stretches.push({ along, across, length: clear + kerf, width });
    // A blade that stops at the defect has taken a kerf of it.
    along = Math.max(along, defect.end / unit, clear > 0 ? along + clear + kerf : along);
  }
  if (end > along) stretches.push({ along, across, length: end - along + kerf, width });
  return width > kerf ? stretches : [];
}

const reachOn = (extent: number, capacity: number, kerf: number): Reach => ({
  upTo: capacity + kerf,
  from: extent - capacity + kerf,
});

function commonDivisor(lengths: readonly number[]): number {
  let divisor = 0;
  for (const length of lengths) {
    let [one, two] = [divisor, length];
    while (two !== 0) [one, two] = [two, one % two];
    divisor = one;
  }
  return Math.max(1, divisor);
}
