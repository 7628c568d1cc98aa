import assert from 'node:assert';

declare const cents: unique symbol;

/** A sum of money in whole cents of the shop's one currency. */
export type Money = number & { readonly [cents]: true };

/** Throws on a fraction of a cent: that is a bug. */
export function money(count: number): Money {
  assert(Number.isSafeInteger(count), `${count} is not a whole number of cents`);
  return (count + 0) as Money;
}

export const addMoney = (sums: readonly Money[]): Money => money(sums.reduce((total, each) => total + each, 0));
/** A price times a quantity that need not be whole (13.4 board feet), to the nearest cent. */
export const priceOf = (quantity: number, price: Money): Money => money(Math.round(quantity * price));
export const printMoney = (value: Money): string => {
  const whole = Math.trunc(Math.abs(value) / 100).toString();
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return `${value < 0 ? '−' : ''}${grouped}.${(Math.abs(value) % 100).toString().padStart(2, '0')}`;
};
