import type { Area } from '../units/area.ts';
import { type Duration, duration } from '../units/duration.ts';
import type { Length } from '../units/length.ts';
import { fromPounds, kg, type Mass, US_GALLON, type Volume } from '../units/mass.ts';
import { money as cents, type Money } from '../units/money.ts';
import { readLength } from '../units/read-length.ts';
import { complain, isComplaint, listed, type Reader, textCell, typedIn, writtenIn } from './cells.ts';
import { dateText, readDate } from './dates.ts';

/** `12.50`, `$12.50`, `1,250.00`, `12,50 €`: whole cents. The shop has one currency, so its sign says nothing. */
export const money: Reader<Money> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const plain = written.replace(/^\p{Sc}\s*|\s*\p{Sc}$/gu, '').replace(/(\d),(?=\d{3}(\D|$))/g, '$1');
  const [, whole, tail = ''] = /^(\d{1,9})(?:[.,](\d+))?$/.exec(plain) ?? [];
  if (whole === undefined) return complain('money-unreadable', { typed: typedIn(cell) });
  // More digits than cents are the noise of a spreadsheet's own arithmetic.
  return cents(Number(whole) * 100 + Math.round(Number(`0.${tail.padEnd(2, '0')}`) * 100));
};

/** `45/gal`, `12 per litre`; a bare sum is by the gallon or the litre as the workbook measures. Kept by the litre. */
export const pricePerVolume: Reader<Money> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const [sum = '', per = cell.units === 'inch' ? 'gal' : 'l'] = written.split(/\s*(?:\/|per)\s*/);
  const amount = money(textCell(sum, cell.units));
  const measure = VOLUMES.find(([words]) => words.test(per))?.[1];
  if (isComplaint(amount) || measure === undefined) return complain('money-unreadable', { typed: typedIn(cell) });
  return cents(Math.round(amount / (measure * 1000)));
};

/** 1 ft² = 0.3048² m² exactly. */
const SQUARE_FOOT = 0.3048 * 0.3048;
const isFoot = (unit: string): boolean => /^(sq\.? ?ft|ft[²2])$/i.test(unit);
const isMetre = (unit: string): boolean => /^(sq\.? ?m|m[²2])$/i.test(unit);

/** `9/ft²`, `97 per m²`; a bare sum is by the square foot or metre as the workbook measures. Kept by the square metre. */
export const pricePerArea: Reader<Money> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const [sum = '', per = cell.units === 'inch' ? 'ft2' : 'm2'] = written.split(/\s*(?:\/|per)\s*/);
  const amount = money(textCell(sum, cell.units));
  if (isComplaint(amount) || !(isFoot(per) || isMetre(per))) return complain('money-unreadable', { typed: written });
  return cents(Math.round(isFoot(per) ? amount / SQUARE_FOOT : amount));
};

/** `20 ft²`, `2 m²`; a bare number as the workbook measures. */
export const surface: Reader<Area> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const [, figure = '', unit = cell.units === 'inch' ? 'ft2' : 'm2'] = /^(\d+\.?\d*)\s*(\S.*)?$/.exec(written) ?? [];
  const value = Number(figure) * (isFoot(unit) ? SQUARE_FOOT : isMetre(unit) ? 1 : Number.NaN);
  return value > 0 && value < 10_000
    ? (value as Area)
    : complain('form-unreadable', { typed: written, form: '20 ft² or 2 m²' });
};

const SECONDS: readonly (readonly [words: RegExp, seconds: number])[] = [
  [/^(min|mins|minute|minutes|minutos?)$/i, 60],
  [/^(h|hr|hrs|hour|hours|horas?)$/i, 3600],
  [/^(d|day|days|días?)$/i, 86_400],
];

/** `2 h`, `90 min`, `3 days`, or a bare number of hours; up to a year. */
export const hoursLong: Reader<Duration> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const [, figure = '', unit = ''] = /^(\d+\.?\d*|\.\d+)\s*(\p{L}*)\.?$/u.exec(written) ?? [];
  const per = unit === '' ? 3600 : SECONDS.find(([words]) => words.test(unit))?.[1];
  const seconds = per === undefined || figure === '' ? Number.NaN : Math.round(Number(figure) * per);
  return seconds <= 366 * 86_400 ? duration(seconds) : complain('duration-unreadable', { typed: typedIn(cell) });
};

/** US measures, exact: 1 gal = 4 qt = 8 pt = 128 fl oz = 231 in³. */
const VOLUMES: readonly (readonly [words: RegExp, cubicMetres: number])[] = [
  [/^(gal|gals|gallons?|galón|galones)$/i, US_GALLON],
  [/^(qt|qts|quarts?)$/i, US_GALLON / 4],
  [/^(pt|pts|pints?)$/i, US_GALLON / 8],
  [/^(oz|floz)$/i, US_GALLON / 128],
  [/^(ml)$/i, 1e-6],
  [/^(l|lit(?:er|re)s?|litros?)$/i, 1e-3],
];

export const volume: Reader<Volume> = cell => {
  const written = writtenIn(cell);
  return isComplaint(written) ? written : (readVolume(written) ?? complain('volume-unreadable', { typed: written }));
};

export const volumes: Reader<readonly Volume[]> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const read = listed(written).map(readVolume);
  return read.every(each => each !== undefined)
    ? read.filter(each => each !== undefined).sort((a, b) => a - b)
    : complain('volume-unreadable', { typed: written });
};

function readVolume(written: string): Volume | undefined {
  const [, figure = '', unit = ''] = /^(\d+\.?\d*|\.\d+)\s*(?:US |fl\.? ?)?(\p{L}+)\.?$/iu.exec(written) ?? [];
  const per = VOLUMES.find(([words]) => words.test(unit))?.[1];
  const value = per === undefined ? 0 : Number(figure) * per;
  return value > 0 && value < 10 ? (value as Volume) : undefined;
}

/** A day: as the spreadsheet keeps it, or written 2026-03-31. */
export const date: Reader<string> = cell => {
  if (cell.value.kind === 'date') return dateText(cell.value);
  const written = writtenIn(cell);
  return isComplaint(written) ? written : (readDate(written) ?? complain('date-unreadable', { typed: written }));
};

export const dates: Reader<readonly string[]> = cell => {
  if (cell.value.kind === 'date') return [dateText(cell.value)];
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const read = listed(written).map(readDate);
  return read.every(each => each !== undefined)
    ? read.filter(each => each !== undefined)
    : complain('date-unreadable', { typed: written });
};

/** `60 in, 30 lb`: as high and as heavy as a door may be for so many hinges. */
export const hingeLimit: Reader<{ readonly heightUpTo: Length; readonly massUpTo: Mass }> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const [height = '', heavy = '', more] = written.split(/[,;]/);
  const heightUpTo = readLength(height, cell.units);
  const [, figure = '', unit = ''] = /^\s*(\d+\.?\d*)\s*(lbs?|pounds?|kg)\s*$/i.exec(heavy) ?? [];
  const massUpTo = unit.toLowerCase() === 'kg' ? kg(Number(figure)) : fromPounds(Number(figure));
  return heightUpTo !== undefined && heightUpTo > 0 && massUpTo > 0 && more === undefined
    ? { heightUpTo, massUpTo }
    : complain('form-unreadable', { typed: written, form: '60 in, 30 lb' });
};

/** `20 + 0.5`: minutes to set up, and minutes for each piece. */
export const operationMinutes: Reader<{ readonly setup: number; readonly piece: number }> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const [, setup, piece] = /^(\d+\.?\d*)\s*\+\s*(\d*\.?\d+)$/.exec(written) ?? [];
  return setup !== undefined && piece !== undefined && Number(setup) <= 10_000 && Number(piece) <= 10_000
    ? { setup: Number(setup), piece: Number(piece) }
    : complain('form-unreadable', { typed: written, form: '20 + 0.5' });
};
