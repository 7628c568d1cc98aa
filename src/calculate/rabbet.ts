import type { FrameStyle } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import type { Length } from '../units/length.ts';
import type { Rabbet, Working } from './door-set.ts';
import { onceFor } from './once-for.ts';
import { sumOf, work } from './working.ts';

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
  const depth = work(DEPTH, { Tp: panelThickness, G: style.grooveWidth, fit: rabbetFit });
  // Wider than what is in the groove, so that the field drops between the back lips of the frame.
  const width = work(WIDTH, { D: style.grooveDepth, a: allowance, clear: backClearance });
  const tongue = work(TONGUE, { G: style.grooveWidth, fit: rabbetFit });
  return {
    rabbet: { depth: depth.value, width: width.value, tongue: tongue.value },
    workings: [depth, width, tongue],
  };
}

/** How far the infill's back stands proud of the frame's back; negative where it is recessed. */
export const backProjection = onceFor((style: FrameStyle) =>
  work(BACK_PROJECTION, { L: style.faceToGroove, Tp: style.infill.thickness, F: style.frameThickness }),
);

const DEPTH = sumOf('rabbet-depth', [1, 'Tp'], [-1, 'G'], [1, 'fit']);
const WIDTH = sumOf('rabbet-width', [1, 'D'], [-1, 'a'], [1, 'clear']);
const TONGUE = sumOf('panel-tongue', [1, 'G'], [-1, 'fit']);
const BACK_PROJECTION = sumOf('back-projection', [1, 'L'], [1, 'Tp'], [-1, 'F']);
