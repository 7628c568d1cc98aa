import type { FinishStep } from '../../import/job.ts';
import type { Area } from '../../units/area.ts';
import type { Volume } from '../../units/mass.ts';
import type { FinishStepPlan } from '../shop-plan.ts';

/**
 * What one coat over `surface` takes out of the can: area / spread rate / transfer. The spread rate is that of the
 * label, so it is that of the mix before an additive, which comes on top.
 */
export const coatVolume = (surface: Area, step: FinishStep): Volume =>
  (step.components.length === 0 || step.kind === 'sand' || step.kind === 'wait'
    ? 0
    : surface / step.squareMetresPerLitre / step.transfer / 1000) as Volume;

/** Each component with its share, in their order: 2 : 1 of 3 litres is 2 and 1. */
export function shareOut(volume: Volume, step: FinishStep): FinishStepPlan['components'] {
  const parts = step.components.reduce((sum, each) => sum + each.parts, 0);
  return step.components.map(each => ({ ...each, volume: ((volume * each.parts) / parts) as Volume }));
}

/** Percent of the mix, added to it: 10 % in 32 parts is 3.2 parts more. */
export const additiveFor = (volume: Volume, additive: { readonly percent: number }): Volume =>
  ((volume * additive.percent) / 100) as Volume;
