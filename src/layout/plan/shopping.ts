import type { Area } from '../../units/area.ts';
import type { Length } from '../../units/length.ts';
import type { Volume } from '../../units/mass.ts';
import type { Money } from '../../units/money.ts';

/** What to buy. */
export type Shopping = {
  readonly lines: readonly ShoppingLine[];
  readonly materials: Money;
  readonly labour: { readonly minutes: number; readonly amount: Money };
  readonly margin: Money;
  readonly total: Money;
  /** Lines whose price the workbook does not give, so that the total lacks them. */
  readonly unpriced: number;
};

export type ShoppingLine = {
  readonly kind: 'board' | 'sheet' | 'hardware' | 'glue' | 'abrasive' | 'finish' | 'glass';
  readonly item: string;
  readonly unit: 'board-foot' | 'board' | 'sheet' | 'pack' | 'piece' | 'litre' | 'container' | 'disc';
  /**
   * What is needed net, what of it is on hand, and what to buy in `unit`; only what comes in packs is needed in pieces and
   * bought in packs. `detail` in words' facts (board feet, sizes, containers).
   */
  readonly needed: number;
  readonly onHand: number;
  readonly buy: number;
  readonly detail: ShoppingDetail;
  readonly amount: Money | undefined;
};

export type ShoppingDetail =
  | {
      readonly kind: 'boards';
      readonly species: string;
      /** As it is counted: 4/4 is 1 in, and so is what is thinner. */
      readonly thickness: Length;
      readonly netBoardFeet: number;
      readonly boughtBoardFeet: number;
      readonly yield: number;
      readonly sizes: readonly SizeCount[];
    }
  | { readonly kind: 'sheets'; readonly sizes: readonly SizeCount[] }
  | { readonly kind: 'packs'; readonly pieces: number; readonly pack: number }
  | {
      readonly kind: 'volume';
      readonly volume: Volume;
      readonly containers: readonly { readonly volume: Volume; readonly count: number }[];
    }
  | { readonly kind: 'discs'; readonly grit: number; readonly area: Area; readonly pack: number }
  | {
      readonly kind: 'panes';
      readonly thickness: Length;
      readonly panes: readonly { readonly width: Length; readonly height: Length; readonly count: number }[];
    }
  | { readonly kind: 'none' };

export type SizeCount = {
  readonly width: Length;
  readonly length: Length;
  readonly count: number;
  readonly onHand: boolean;
};
