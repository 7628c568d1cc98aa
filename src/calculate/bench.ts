import type { Shop } from '../trade/shop.ts';
import type { Materials } from './materials.ts';
import type { Moistures } from './moisture.ts';

/** What every door of the job is worked out with. */
export type Bench = { readonly shop: Shop; readonly materials: Materials; readonly air: Moistures };
