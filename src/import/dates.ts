import type { CellValue } from './workbook.ts';

export type CalendarDate = Extract<CellValue, { kind: 'date' }>;

/** `2026-03-04` */
export const dateText = ({ year, month, day }: CalendarDate): string =>
  `${padded(year, 4)}-${padded(month, 2)}-${padded(day, 2)}`;

/**
 * The fraction that was probably typed before the spreadsheet made a date of it. `3/4` becomes the 4th of March, or the
 * 3rd of April where days come first; `3/32` is no day of any month and becomes March 1932.
 */
export function likelyFraction({ year, month, day }: CalendarDate): string | undefined {
  const ways = [[month, day], [day, month], ...(day === 1 ? [[month, year % 100]] : [])] as const;
  const fraction = ways.find(
    ([top = 0, bottom = 0]) => top < bottom && top % 2 === 1 && SHOP_DENOMINATORS.includes(bottom),
  );
  return fraction?.join('/');
}

const SHOP_DENOMINATORS: readonly number[] = [2, 4, 8, 16, 32, 64];

/** A date in the order year, month, day, if there is such a day. */
export function readDate(text: string): string | undefined {
  const [, year = '', month = '', day = ''] = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text.trim()) ?? [];
  const date: CalendarDate = { kind: 'date', year: Number(year), month: Number(month), day: Number(day) };
  return isDay(date) ? dateText(date) : undefined;
}

const isDay = ({ year, month, day }: CalendarDate): boolean =>
  year > 0 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);

function daysIn(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

const padded = (value: number, digits: number): string => value.toString().padStart(digits, '0');
