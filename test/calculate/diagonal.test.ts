import { describe, expect, it } from 'vitest';
import { diagonal, rootOfSquares } from '../../src/calculate/diagonal.ts';
import { nm } from '../../src/units/length.ts';
import { law } from '../support/runs.ts';
import { aLength } from './drawn-jobs.ts';

describe('√(W² + H²)', () => {
  it.each([
    [3, 4, 5, 'exact'],
    [0, 7, 7, 'exact'],
    [1, 1, 1, '1.414'],
    [1, 2, 2, '2.236'],
    [2, 2, 3, '2.828: up'],
    [20, 21, 29, 'exact'],
    // 10¹¹ nm is 100 m: the squares are beyond what a float holds exactly.
    [30_000_000_001, 40_000_000_000, 50_000_000_001, '50 000 000 000.6'],
    [30_000_000_000, 40_000_000_000, 50_000_000_000, 'exact'],
    [94_906_267, 94_906_267, 134_217_730, '134 217 730.0'],
    // w² + h² = r² + r: a hair below r + 1/2, where a float says r + 1/2 and rounds up.
    [50_000_199_999, 500_001, 50_000_200_001, 'just under the half'],
  ])('of %i and %i is %i (%s)', (width, height, expected) => {
    expect(rootOfSquares(nm(width), nm(height))).toBe(expected);
  });

  it('is right to the nanometre, whatever the sizes', () => {
    law([aLength(0.5, 4000), aLength(0.5, 4000)], (width, height) => {
      const twice = 2n * BigInt(rootOfSquares(width, height));
      const squares = 4n * (BigInt(width) ** 2n + BigInt(height) ** 2n);
      expect((twice - 1n) ** 2n <= squares && squares <= (twice + 1n) ** 2n).toBe(true);
    });
  });

  it('says how it came about', () => {
    expect(diagonal({ width: nm(3), height: nm(4) })).toEqual({
      kind: 'fact',
      of: 'diagonal',
      formula: '√(W² + H²)',
      inputs: [
        { symbol: 'W', unit: 'length' },
        { symbol: 'H', unit: 'length' },
      ],
      given: { W: 3, H: 4 },
      value: { unit: 'length', value: 5 },
    });
  });
});
