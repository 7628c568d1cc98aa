import type { Stock, StockSize } from '../../import/job.ts';

/** Wood on hand counts so little beside wood to buy that none is bought where what is on hand will do. */
const ON_HAND = 1 / 4096;

/**
 * What one board or sheet counts when plans are compared. Where every size that can be bought has a price, the price;
 * otherwise its area. Both as a share of the dearest size, so that plans with bought wood of one size count bins.
 */
export function costOf(stock: Stock, size: StockSize, source: 'on-hand' | 'buy'): number {
  const bought = stock.sizes.filter(each => each.buy);
  const priced = bought.length > 0 && bought.every(each => each.price !== undefined);
  const price = (each: StockSize): number => (priced && each.buy ? priceOf(stock, each) : areaOf(each));
  if (source === 'on-hand') return (ON_HAND * areaOf(size)) / Math.max(...stock.sizes.map(areaOf));
  return price(size) / Math.max(...bought.map(price));
}

const areaOf = (size: StockSize): number => (size.length / 1e6) * (size.width / 1e6);

/** Price of one board or sheet of the size, in cents. A board foot is 144 in³, and wood thinner than 1 in counts as 1 in. */
function priceOf(stock: Stock, size: StockSize): number {
  if (size.price === undefined) return 0;
  if (size.price.by !== 'board-foot') return size.price.amount;
  const inch = 25_400_000;
  const boardFeet = ((size.length / inch) * (size.width / inch) * Math.max(1, stock.thickness / inch)) / 144;
  return size.price.amount * boardFeet;
}
