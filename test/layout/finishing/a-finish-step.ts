import type { FinishStep } from '../../../src/import/job.ts';
import { hours } from '../../../src/units/duration.ts';
import { aSource } from '../../support/a-job.ts';

/** Square metres a litre for a label that speaks of square feet a gallon. */
export const squareFeetPerGallon = (count: number): number => (count * 0.3048 * 0.3048) / 3.785411784;

/** A sprayed topcoat, 350 ft²/gal, 65 % of which lands on the door; one coat, nothing mixed in. Invented. */
export const aFinishStep = (changes: Partial<FinishStep> = {}): FinishStep => ({
  name: 'Topcoat',
  kind: 'topcoat',
  components: [{ name: 'clear coat', parts: 1 }],
  additive: undefined,
  coats: 1,
  squareMetresPerLitre: squareFeetPerGallon(350),
  transfer: 0.65,
  grit: undefined,
  wait: hours(2),
  price: undefined,
  from: aSource('Finish', 2),
  ...changes,
});
