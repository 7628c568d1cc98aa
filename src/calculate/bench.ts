import type { FrameStyle } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import type { Materials } from './materials.ts';
import type { Moistures } from './moisture.ts';
import { onceFor } from './once-for.ts';
import { panelRabbet, type RabbetWorking } from './rabbet.ts';

/** What every door of the job is worked out with. */
export type Bench = {
  readonly shop: Shop;
  readonly materials: Materials;
  readonly air: Moistures;
  /** Round the back of a style's plywood panels: the same on all of them. */
  readonly plywoodRabbet: (style: FrameStyle) => RabbetWorking;
};

export const benchOf = (shop: Shop, materials: Materials, air: Moistures): Bench => ({
  shop,
  materials,
  air,
  plywoodRabbet: onceFor(style => panelRabbet(style.infill.thickness, style, shop.panels.allowance, shop)),
});
