import { describe, expect, it } from 'vitest';
import { addAreas, area, squareFeet, timesArea } from '../../src/units/area.ts';
import { addDurations, hours, inHours, inMinutes, minutes, timesDuration } from '../../src/units/duration.ts';
import { mm } from '../../src/units/length.ts';
import {
  addMasses,
  fromPounds,
  gallons,
  kg,
  litres,
  massOf,
  pounds,
  spread,
  US_GALLON,
  volume,
} from '../../src/units/mass.ts';
import { addMoney, money, priceOf, printMoney } from '../../src/units/money.ts';
import { length } from '../support/length.ts';

describe('areas', () => {
  it('a 48 × 96 in sheet is 32 ft²', () => {
    expect(squareFeet(area(length('96'), length('48')))).toBeCloseTo(32, 12);
    expect(timesArea(2, area(mm(1000), mm(500)))).toBeCloseTo(1, 12);
    expect(addAreas([area(mm(1000), mm(1000)), area(mm(500), mm(1000))])).toBeCloseTo(1.5, 12);
  });
});

describe('masses and volumes', () => {
  // Sugar maple at 12 %: 44.05 lb/ft³; 16 × 25 × 3/4 in slab 7.65 lb (computed from the Wood Handbook's G = 0.63).
  it('a maple slab of 16 × 25 × 3/4 in weighs 7.65 lb', () => {
    const slab = massOf(volume(length('25'), length('16'), length('3/4')), 705.6);
    expect(pounds(slab)).toBeCloseTo(7.65, 2);
  });

  // One US gallon, 231 in³, covers 231 · 1000 / 144 = 1604.17 ft² at one thousandth of an inch.
  it('a gallon covers 1604.17 ft² at 1 mil', () => {
    const squareFoot = area(length("1'"), length("1'"));
    expect(gallons(spread(timesArea(1604.1667, squareFoot), length('0.001')))).toBeCloseTo(1, 6);
    expect(litres(US_GALLON)).toBeCloseTo(3.785411784, 9);
  });

  it('pounds and kilograms agree', () => {
    expect(fromPounds(15)).toBeCloseTo(6.80388555, 8);
    expect(addMasses([kg(1), kg(2.5)])).toBeCloseTo(3.5, 12);
  });
});

describe('money', () => {
  it.each([
    [123456789, '1,234,567.89'],
    [5, '0.05'],
    [0, '0.00'],
    [-150, '−1.50'],
    [100000, '1,000.00'],
  ])('%d cents print as %s', (cents, printed) => {
    expect(printMoney(money(cents))).toBe(printed);
  });

  it('13.4 board feet at 7.85 are 105.19', () => {
    expect(priceOf(13.4, money(785))).toBe(10519);
    expect(addMoney([money(1), money(2)])).toBe(3);
    expect(() => money(0.5)).toThrow();
  });
});

describe('durations', () => {
  it('are whole seconds', () => {
    expect(addDurations([minutes(0.5), hours(1)])).toBe(3630);
    expect(timesDuration(3, minutes(10))).toBe(1800);
    expect([inMinutes(minutes(90)), inHours(minutes(90))]).toEqual([90, 1.5]);
  });
});
