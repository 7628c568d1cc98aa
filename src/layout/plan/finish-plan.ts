import type { DoorCode } from '../../codes/codes.ts';
import type { DoorSide } from '../../trade/finishing.ts';
import type { Area } from '../../units/area.ts';
import type { Duration } from '../../units/duration.ts';
import type { Volume } from '../../units/mass.ts';

export type FinishPlan = {
  readonly area: Area;
  readonly steps: readonly FinishStepPlan[];
};

/** A step of the finish: how much of what to mix, in how many batches. */
export type FinishStepPlan = {
  readonly number: number;
  readonly name: string;
  readonly kind: 'sand' | 'stain' | 'seal' | 'topcoat' | 'wait';
  readonly coats: number;
  readonly grit: number | undefined;
  /** For one coat of all doors, losses included. */
  readonly volume: Volume;
  readonly components: readonly { readonly name: string; readonly parts: number; readonly volume: Volume }[];
  readonly additive: { readonly name: string; readonly percent: number; readonly volume: Volume } | undefined;
  /** For one coat: the doors of each mix, such that it fits the pot and is used up within its working time. */
  readonly batches: readonly Mix[];
  /** In this order, so that the show face is touched last. */
  readonly sides: readonly DoorSide[];
  /** Doors that are wet at once, at the pace of this step. */
  readonly rackSlots: number;
  /** For all coats of all doors. */
  readonly minutes: { readonly setup: number; readonly pieces: number };
  /** After each coat. */
  readonly wait: Duration;
};

/** One filling of the pot: its share of each component, in their order, and of the additive that comes on top. */
export type Mix = {
  readonly doors: readonly DoorCode[];
  /** Of the components together, without the additive. */
  readonly volume: Volume;
  readonly components: readonly Volume[];
  readonly additive: Volume | undefined;
};
