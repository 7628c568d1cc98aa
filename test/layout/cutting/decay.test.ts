import { expect, it } from 'vitest';
import { decay } from '../../../src/layout/cutting/decay.ts';

// M. Abramowitz, I. A. Stegun, "Handbook of Mathematical Functions" (1964), table 4.4: the exponential function. The first
// ten digits from memory; those of e⁻¹⁰ stand there as 0.00004 53999 298.
it.each([
  [0, 1],
  [0.1, 0.904837418],
  [0.5, 0.6065306597],
  [1, 0.3678794412],
  [2, 0.1353352832],
  [5, 0.006737946999],
  [10, 0.00004539992976],
])('e to the power of −%d', (x, published) => {
  expect(decay(x) / published).toBeCloseTo(1, 9);
});

it('is nothing where hardly anything is left', () => {
  expect(decay(31)).toBe(0);
});
