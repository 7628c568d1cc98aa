import { describe, expect, it } from 'vitest';
import type { FinishStep } from '../../src/import/job.ts';
import { coatVolume } from '../../src/layout/finishing/mixing.ts';
import { gallons, litres } from '../../src/units/mass.ts';
import { aFinishStep } from '../layout/finishing/a-finish-step.ts';
import { squareFeet } from '../support/a-door-set.ts';

/** A litre laid on `mils` thousandths of an inch thick covers 1 / (mils · 25.4 µm) of a thousandth of a cubic metre. */
const film = (mils: number): number => 0.001 / (mils * 25.4e-6);

const step = (squareMetresPerLitre: number, transfer: number): FinishStep =>
  aFinishStep({ squareMetresPerLitre, transfer });

// One US gallon is 231 in³ (the definition, as NIST gives it), so it covers 231 · 1000 / 144 = 1604.17 ft² at 1 mil.
// A coating consultant's formula of the trade: ft²/gal = 1604 · solids · transfer / dry film in mil.
describe('what a gallon covers', () => {
  it.each([
    { solids: 1, transfer: 1, dry: 1, covers: 1604.17, source: 'the gallon' },
    { solids: 0.65, transfer: 1, dry: 5, covers: 208.52, source: 'a coating’s data sheet' },
    { solids: 0.52, transfer: 0.3, dry: 1.5, covers: 166.8, source: 'the consultant, October 2003: "167"' },
    { solids: 0.52, transfer: 0.35, dry: 1.5, covers: 194.6, source: 'the consultant, May 2004: "194.5"' },
    { solids: 1, transfer: 1, dry: 6, covers: 267.36, source: 'glue at 6 mil' },
  ])(
    '$covers ft² at $dry mil dry, $solids solids, $transfer transfer ($source)',
    ({ solids, transfer, dry, covers }) => {
      expect(gallons(coatVolume(squareFeet(covers), step(film(dry / solids), transfer)))).toBeCloseTo(1, 3);
    },
  );

  // The same data sheet in metric units: 65 % solids at 125 µm dry cover 5.2 m² a litre.
  it('a litre covers 5.2 m² at 125 µm dry and 65 % solids', () => {
    const surface = 5.2 as Parameters<typeof coatVolume>[0];
    expect(litres(coatVolume(surface, step(0.001 / (125e-6 / 0.65), 1)))).toBeCloseTo(1, 12);
  });
});
