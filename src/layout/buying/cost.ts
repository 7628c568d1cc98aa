import type { Shop } from '../../trade/shop.ts';
import { addMoney, type Money, priceOf } from '../../units/money.ts';
import type { Shopping, ShoppingLine } from '../shop-plan.ts';

/** Materials, labour by the hour, and the margin on both. What has no price is counted and left out of the sum. */
export function cost(lines: readonly ShoppingLine[], labourMinutes: number, work: Shop['work']): Shopping {
  const priced = lines.flatMap(line => (line.amount === undefined ? [] : [line.amount]));
  const materials = addMoney(priced);
  const amount: Money = priceOf(labourMinutes / 60, work.rate);
  const margin = priceOf(work.margin, addMoney([materials, amount]));
  return {
    lines,
    materials,
    labour: { minutes: labourMinutes, amount },
    margin,
    total: addMoney([materials, amount, margin]),
    unpriced: lines.filter(line => line.buy > 0 && line.amount === undefined).length,
  };
}
