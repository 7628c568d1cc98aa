import type { DoorCode } from '../codes/codes.ts';
import type { Blank, CutPlan } from './plan/cut-plan.ts';
import type { DayPlan } from './plan/day-plan.ts';
import type { FinishPlan } from './plan/finish-plan.ts';
import type { Operation, OperationId } from './plan/operation.ts';
import type { Shopping } from './plan/shopping.ts';

export type * from './plan/cut-plan.ts';
export type * from './plan/day-plan.ts';
export type * from './plan/finish-plan.ts';
export type * from './plan/operation.ts';
export type * from './plan/shopping.ts';

/** The work and the wood, laid out: everything that the packet prints and the stations ask for. */
export type ShopPlan = {
  /** In the order in which they are done. An operation without pieces is left out. */
  readonly operations: readonly Operation[];
  /** The operations of each part and each door, in order. */
  readonly routes: { readonly [code: string]: readonly OperationId[] };
  readonly blanks: readonly Blank[];
  readonly cutPlans: readonly CutPlan[];
  readonly shopping: Shopping;
  readonly batches: readonly GlueUpBatch[];
  readonly finish: FinishPlan;
  readonly days: DayPlan;
};

/** Doors that are in clamps together. */
export type GlueUpBatch = { readonly number: number; readonly doors: readonly DoorCode[]; readonly clamps: number };
