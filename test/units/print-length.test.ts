import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nm } from '../../src/units/length.ts';
import {
  type LengthFormat,
  printCaliper,
  printedValue,
  printLength,
  printSetting,
} from '../../src/units/print-length.ts';
import { length } from '../support/length.ts';
import { law } from '../support/runs.ts';

const inches: LengthFormat = { units: 'inch', increment: length('1/32') };
const millimetres: LengthFormat = { units: 'mm', increment: length('1/32') };

describe('printing a length', () => {
  it.each([
    ['14 3/8', inches, '14 3/8'],
    ['14', inches, '14'],
    ['0', inches, '0'],
    ['3/4', inches, '3/4'],
    ['14 11/32', inches, '14 11/32'],
    ['14 23/64', inches, '14 3/8−'], // halfway goes up, and the mark says that the true value is a little under
    ['14.377', inches, '14 3/8+'], // a little over
    ['14.373', inches, '14 3/8−'], // a little under
    ['-1/2', inches, '−1/2'],
    ['31/32', inches, '31/32'],
    ['0.999', inches, '1−'],
    ['365 mm', millimetres, '365'],
    ['365.1 mm', millimetres, '365.1'],
    ['14 3/8', millimetres, '365.1'], // 365.125
    ['-0.01 mm', millimetres, '0'],
    ['14 3/8', { units: 'decimal-inch', increment: length('1/32') }, '14.375'],
    ['1/64', { units: 'decimal-inch', increment: length('1/32') }, '0.016'],
    ['14 3/8', { units: 'both', increment: length('1/32') }, '14 3/8 (365.1)'],
  ] as const)('%s prints as %s', (written, format, printed) => {
    expect(printLength(length(written), format)).toBe(printed);
  });

  it.each([
    ['14 3/8', inches, '14 3/8'],
    ['1/64', inches, '1/64'], // a tolerance: not 1/32 and a mark
    ['0.004', inches, '0.004'], // the play of a tongue: nothing that a tape shows
    ['21.5 mm', inches, '27/32+ (21.5 mm)'], // centre of a hinge cup
    ['35 mm', inches, '1 3/8+ (35 mm)'],
    ['0.224', inches, '7/32+ (0.224)'], // depth of a rabbet
    ['0.47', inches, '15/32+ (0.470)'],
    ['21.5 mm', { units: 'decimal-inch', increment: length('1/32') }, '0.846 (21.5 mm)'],
    ['0.224', { units: 'decimal-inch', increment: length('1/32') }, '0.224'],
    ['1/64', { units: 'both', increment: length('1/32') }, '1/64 (0.4)'],
    ['21.5 mm', { units: 'both', increment: length('1/32') }, '27/32+ (21.5)'],
    ['0.224', { units: 'both', increment: length('1/32') }, '7/32+ (0.224)'],
    ['5.69 mm', millimetres, '5.69'],
    ['5.7 mm', millimetres, '5.7'],
    ['1/4', millimetres, '6.35'],
  ] as const)('%s is set as %s', (written, format, printed) => {
    expect(printSetting(length(written), format)).toBe(printed);
  });

  it('shows a caliper all its digits', () => {
    expect([printCaliper(length('0.45'), inches), printCaliper(length('12 mm'), millimetres)]).toEqual([
      '0.450',
      '12.00',
    ]);
  });

  it('never strays from the true value by more than half the increment', () => {
    law([fc.integer({ min: -1_000_000_000, max: 3_000_000_000 })], size => {
      const off = Math.abs(printedValue(nm(size), inches) - size);
      expect(off).toBeLessThanOrEqual(length('1/64'));
    });
  });

  it('marks exactly what it rounded', () => {
    law([fc.integer({ min: 0, max: 3_000_000_000 })], size => {
      const printed = printLength(nm(size), inches);
      const shown = printedValue(nm(size), inches);
      expect(printed.endsWith('+')).toBe(shown < size);
      expect(printed.endsWith('−')).toBe(shown > size);
    });
  });
});
