import type { FrameStyle } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import type { Materials } from './materials.ts';
import type { Moistures } from './moisture.ts';
import { onceFor, onceForEach } from './once-for.ts';
import { sumOfMasses } from './piece.ts';
import { panelRabbet, type RabbetWorking } from './rabbet.ts';

/** What every door of the job is worked out with. */
export type Bench = {
  readonly shop: Shop;
  readonly materials: Materials;
  readonly air: Moistures;
  /** Round the back of a style's plywood panels: the same on all of them. */
  readonly plywoodRabbet: (style: FrameStyle) => RabbetWorking;
  /** The sum of the masses of pieces, by their marks: the same for all doors of one make. */
  readonly doorMass: typeof sumOfMasses;
};

export const benchOf = (shop: Shop, materials: Materials, air: Moistures): Bench => ({
  shop,
  materials,
  air,
  plywoodRabbet: onceFor(style => panelRabbet(style.infill.thickness, style, shop.panels.allowance, shop)),
  doorMass: onceForEach(sumOfMasses),
});
