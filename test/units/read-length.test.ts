import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nm } from '../../src/units/length.ts';
import { printLength } from '../../src/units/print-length.ts';
import { readLength } from '../../src/units/read-length.ts';
import { length } from '../support/length.ts';
import { law } from '../support/runs.ts';

// 1 in = 25.4 mm exactly (international inch), so 1/64 in = 396 875 nm and 1 ft = 304 800 000 nm.
describe('reading a length', () => {
  it.each([
    // as typed          in inches: nanometres   why this row
    ['14 3/8', 365_125_000], // the usual way
    ['14-3/8"', 365_125_000], // with a hyphen, as on a drawing
    ['14.375', 365_125_000], // decimal
    ['14⅜', 365_125_000], // one sign for the fraction
    ['14 3⁄8', 365_125_000], // fraction slash
    ['14\u00a03/8 in', 365_125_000], // a hard space from a pasted table
    [`1' 2 3/8"`, 365_125_000], // feet and inches
    [`1'-2 3/8"`, 365_125_000], // the same as architects write it
    ['1 ft', 304_800_000],
    ['3/8', 9_525_000],
    ['11/64', 4_365_625], // and not 1 1/64
    ['.5', 12_700_000],
    ['23.249999999999996', 590_550_000], // the noise of a spreadsheet's own arithmetic
    ['365 mm', 365_000_000],
    ['36.5 cm', 365_000_000],
    ['0.365m', 365_000_000],
    ['35.7mm', 35_700_000], // never through a float
    ['-1/2', -12_700_000],
    ['0', 0],
  ])('%s is %d nm', (typed, expected) => {
    expect(readLength(typed, 'inch')).toBe(expected);
  });

  it.each([
    ['14', 'mm', 14_000_000], // a bare number means the workbook's units
    ['14', 'inch', 355_600_000],
    ['14.5', 'mm', 14_500_000],
    ['14"', 'mm', 355_600_000], // a unit that is written wins
  ] as const)('%s in a workbook of %s is %d nm', (typed, units, expected) => {
    expect(readLength(typed, units)).toBe(expected);
  });

  it.each([
    ['thirty'],
    [''],
    ['1/3'], // no whole number of nanometres: asked for again
    ['14 9/8'], // a slip of the pen
    ['1/0'],
    ['14 3/8 x'],
    ['14 3'],
    ['3/8 14'],
    ['1 1/2/3'],
    ['14 yd'],
    ['1e3'],
    ['99999999999'], // longer than any shop
    ['1.2.3'],
    ['1" 2'],
  ])('%s is no length', typed => {
    expect(readLength(typed, 'inch')).toBeUndefined();
  });

  it('reads back every sixty-fourth up to 120 in, in three ways of writing', () => {
    for (let count = 0; count <= 120 * 64; count += 1) {
      const exact = nm(count * 396_875);
      const whole = Math.floor(count / 64);
      const rest = count % 64;
      for (const written of [
        printLength(exact, { units: 'inch', increment: nm(396_875) }),
        `${whole}-${rest}/64"`,
        `${count / 64}`,
      ])
        expect(readLength(written, 'inch'), written).toBe(exact);
    }
  });

  it('reads back what was printed on the increment', () => {
    law([fc.integer({ min: -20_000, max: 20_000 }), fc.constantFrom('1/8', '1/16', '1/32', '1/64')], (count, step) => {
      const increment = length(step);
      const exact = nm(count * increment);
      const printed = printLength(exact, { units: 'inch', increment }).replace('−', '-');
      expect(readLength(printed, 'inch')).toBe(exact);
    });
  });

  it('reads back tenths of a millimetre', () => {
    law([fc.integer({ min: 0, max: 60_000 })], tenths => {
      const exact = nm(tenths * 100_000);
      const printed = printLength(exact, { units: 'mm', increment: nm(100_000) });
      expect(readLength(printed, 'mm')).toBe(exact);
    });
  });
});
