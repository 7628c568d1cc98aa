import type { FrameStyle } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import type { Length } from '../units/length.ts';
import type { LengthWorking, Rabbet, Working } from './door-set.ts';
import { work } from './working.ts';

/** A rabbet, and how its numbers came about. */
export type RabbetWorking = { readonly rabbet: Rabbet | undefined; readonly workings: readonly Working[] };

/**
 * The step round the back of a panel that is thicker than the groove is wide. `allowance` is what lies free between the
 * panel's edge and the bottom of the groove when the panel is at its largest. Geometry; fit and clearance are common
 * practice.
 */
export function panelRabbet(panelThickness: Length, style: FrameStyle, allowance: Length, shop: Shop): RabbetWorking {
  const { rabbetFit, backClearance } = shop.panels;
  if (panelThickness <= style.grooveWidth) return { rabbet: undefined, workings: [] };
  const depth = work('rabbet-depth', [1, 'Tp', panelThickness], [-1, 'G', style.grooveWidth], [1, 'fit', rabbetFit]);
  // Wider than what is in the groove, so that the field drops between the back lips of the frame.
  const width = work('rabbet-width', [1, 'D', style.grooveDepth], [-1, 'a', allowance], [1, 'clear', backClearance]);
  const tongue = work('panel-tongue', [1, 'G', style.grooveWidth], [-1, 'fit', rabbetFit]);
  return {
    rabbet: { depth: depth.value, width: width.value, tongue: tongue.value },
    workings: [depth, width, tongue],
  };
}

/** How far the infill's back stands proud of the frame's back; negative where it is recessed. */
export const backProjection = (infillThickness: Length, style: FrameStyle): LengthWorking =>
  work('back-projection', [1, 'L', style.faceToGroove], [1, 'Tp', infillThickness], [-1, 'F', style.frameThickness]);
