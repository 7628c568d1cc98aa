import { describe, expect, it } from 'vitest';
import { findField, nearest } from '../../src/import/columns.ts';
import { likelyFraction, readDate } from '../../src/import/dates.ts';
import { CABINETS } from '../../src/import/sheets/cabinets-columns.ts';

describe('a heading', () => {
  it.each([
    ['Opening width', 'width', undefined],
    ['  opening-WIDTH. ', 'width', undefined],
    ['Opening W', 'width', undefined],
    ['W', 'width', undefined],
    ['Width (mm)', 'width', 'mm'],
    ['Width, in', 'width', 'inch'],
    ['Opening height [millimetres]', 'height', 'mm'],
    ['Qty', 'quantity', undefined],
    ['Habitacion', 'room', undefined],
    ['Hinge side:', 'hingeSide', undefined],
  ] as const)('%s is %s', (heading, field, units) => {
    expect(findField(heading, CABINETS)).toEqual({ field, units });
  });

  it.each(['', '?', 'Widths of all', 'constructor', '__proto__'])('%j is none', heading => {
    expect(findField(heading, CABINETS)).toBe(undefined);
  });
});

describe('the name that was probably meant', () => {
  it.each([
    ['Plane', 'Plain'],
    ['Mapel 4/4', 'Maple 4/4'],
    ['plain ', 'Plain'],
    ['Oak', undefined],
    ['x'.repeat(500), undefined],
  ])('by %s is %s', (typed, meant) => {
    expect(nearest(typed, ['Plain', 'Maple 4/4', 'Solid'])).toBe(meant);
  });
});

describe('the fraction that became a date', () => {
  it.each([
    [2026, 3, 4, '3/4'],
    [2026, 4, 3, '3/4'], // days first
    [2026, 5, 16, '5/16'],
    [1932, 3, 1, '3/32'], // no month has 32 days
    [1964, 1, 1, '1/64'],
    [2026, 3, 31, undefined], // a date that was meant
    [2026, 2, 4, undefined], // nobody writes 2/4
  ])('%i-%i-%i was %s', (year, month, day, fraction) => {
    expect(likelyFraction({ kind: 'date', year, month, day })).toBe(fraction);
  });
});

describe('a date as text', () => {
  it.each([
    ['2026-03-31', '2026-03-31'],
    ['2026-3-1', '2026-03-01'],
    ['2024-02-29', '2024-02-29'],
    ['2026-02-29', undefined],
    ['2100-02-29', undefined],
    ['2000-02-29', '2000-02-29'],
    ['2026-13-01', undefined],
    ['31.3.2026', undefined], // which of the two is the month is anybody's guess
  ])('%s is %s', (text, date) => {
    expect(readDate(text)).toBe(date);
  });
});
