/** Days since 1 January 1970 of an ISO date, by the Gregorian calendar; undefined for what is no date. */
export function dayNumber(date: string): number | undefined {
  const [, y, m, d] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(date) ?? [];
  if (y === undefined || m === undefined || d === undefined) return undefined;
  // A year that begins in March has its leap day at the end, so that months before it do not shift.
  const year = Number(m) > 2 ? Number(y) : Number(y) - 1;
  const month = (Number(m) + 9) % 12;
  const dayOfYear = Math.floor((153 * month + 2) / 5) + Number(d) - 1;
  return 365 * year + leapDays(year) + dayOfYear - MARCH_0000;
}

/** The ISO date of a day number. */
export function dateOf(day: number): string {
  const days = day + MARCH_0000;
  let year = Math.floor(days / 365.2425);
  while (365 * (year + 1) + leapDays(year + 1) <= days) year += 1;
  while (365 * year + leapDays(year) > days) year -= 1;
  const dayOfYear = days - 365 * year - leapDays(year);
  const month = Math.floor((5 * dayOfYear + 2) / 153);
  const date = dayOfYear - Math.floor((153 * month + 2) / 5) + 1;
  return [pad(month < 10 ? year : year + 1, 4), pad(month < 10 ? month + 3 : month - 9, 2), pad(date, 2)].join('-');
}

/** 1 is Monday, 7 is Sunday; 1 January 1970 was a Thursday. */
export const weekdayOf = (day: number): number => ((((day + 3) % 7) + 7) % 7) + 1;

const leapDays = (year: number): number => Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
const pad = (value: number, width: number): string => value.toString().padStart(width, '0');

/** From 1 March of the year 0 to 1 January 1970. */
const MARCH_0000 = 719_468;
