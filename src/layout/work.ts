import type { Door, DoorSet, Part } from '../calculate/door-set.ts';
import type { BlankCode } from '../codes/codes.ts';
import type { Job, Stock, Style } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import { type Length, minus, ZERO } from '../units/length.ts';
import type { Blank, GlueUpBatch } from './shop-plan.ts';

/** A job's records by their codes, so that an operation can ask of a piece what door it is for and what it is cut from. */
export type Work = {
  readonly job: Job;
  readonly shop: Shop;
  readonly doorSet: DoorSet;
  readonly stock: ReadonlyMap<string, Stock>;
  readonly styles: ReadonlyMap<string, Style>;
  readonly doors: ReadonlyMap<string, Door>;
  readonly doorOf: (part: Part) => Door;
};

/** What lies on a machine: a rough blank, a part, a whole door. */
export type Piece =
  /** `part` is what it becomes; for a spare or a test piece, the part that it stands in for. */
  | {
      readonly kind: 'blank';
      readonly blank: Blank;
      readonly part: Part;
      readonly door: Door;
      /** The board or sheet that it is cut from; undefined where no stock yields it. */
      readonly bin: string | undefined;
    }
  /** `blank` is what it is cut from; undefined for a glued-up panel and for glass. */
  | { readonly kind: 'part'; readonly part: Part; readonly door: Door; readonly blank: Blank | undefined }
  | { readonly kind: 'door'; readonly door: Door; readonly batch: GlueUpBatch | undefined };

/** The blanks of a job, and for each test piece or spare the part that it stands in for. */
export type BlankPlan = {
  readonly blanks: readonly Blank[];
  readonly standsFor: ReadonlyMap<BlankCode, Part>;
  /** Test pieces of each set-up that needs some, by operation and setting. */
  readonly testPieces: ReadonlyMap<string, readonly BlankCode[]>;
};

export function workOf(job: Job, doorSet: DoorSet): Work {
  const doors = new Map<string, Door>(doorSet.doors.map(door => [door.code, door]));
  return {
    job,
    shop: job.shop,
    doorSet,
    stock: new Map(job.stock.map(stock => [stock.name, stock])),
    styles: new Map(job.styles.map(style => [style.name, style])),
    doors,
    doorOf: part => {
      const door = doors.get(part.door);
      if (door === undefined) throw new Error(`${part.code} belongs to no door`);
      return door;
    },
  };
}

/** The stock of a part, unless it is ordered to size. */
export const stockOf = (part: Part, work: Work): Stock | undefined =>
  part.stock === undefined ? undefined : work.stock.get(part.stock);

export const isFromBoard = (part: Part, work: Work): boolean => stockOf(part, work)?.kind === 'board';

/** Thicker than the part, so that it is planed first. */
export const isThicker = (part: Part, stock: Stock, left: Length): boolean =>
  minus(stock.thickness, part.thickness) > left;

/** What the stiles of a door are left long by at each end; nothing for a slab. */
export function hornOf(door: Door, work: Work): Length {
  const style = work.styles.get(door.style);
  return style?.build === 'frame' ? style.horn : ZERO;
}
