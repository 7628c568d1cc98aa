import type { BlankCode, PartCode } from '../../codes/codes.ts';
import type { OperationId } from '../../trade/operations.ts';
import type { Length } from '../../units/length.ts';
import type { Mass } from '../../units/mass.ts';

/** A rough piece of board or sheet, before it is a part. */
export type Blank = {
  readonly code: BlankCode;
  readonly purpose: 'part' | 'strip' | 'stops' | 'test' | 'spare';
  /**
   * What it becomes: short parts of one size, and stops, come several from one blank; a strip is a part of its panel;
   * none for a spare or a test piece.
   */
  readonly parts: readonly PartCode[];
  /** For a test piece, the operation that it tries. */
  readonly operation: OperationId | undefined;
  readonly stock: string;
  readonly length: Length;
  readonly width: Length;
};

/** How the boards, or the sheets, of one stock are cut. */
export type CutPlan = {
  readonly stock: string;
  readonly kind: 'board' | 'sheet';
  readonly thickness: Length;
  readonly kerf: Length;
  readonly bins: readonly CutBin[];
  /** Proven: no plan at all needs fewer boards or sheets (or, where prices differ, costs less). */
  readonly bound: { readonly bins: number; readonly by: 'area' | 'packing' | 'column-generation' | 'every-way' };
  /** Distinct fence and stop settings of this stock's plan. */
  readonly settings: number;
  /** Share of the bins' area that becomes neither piece nor kept offcut. */
  readonly waste: number;
};

/** One board or sheet. In its own coordinates `along` runs with its length (and grain), `across` with its width. */
export type CutBin = {
  readonly code: string;
  readonly length: Length;
  readonly width: Length;
  readonly source: 'on-hand' | 'buy';
  /** Cut away before the first cut; part of `cuts` too. */
  readonly pieces: readonly PlacedPiece[];
  readonly offcuts: readonly Offcut[];
  readonly waste: readonly CutRectangle[];
  readonly defects: readonly CutRectangle[];
  /** In sawing order. */
  readonly cuts: readonly Cut[];
  readonly mass: Mass;
};

export type CutRectangle = {
  readonly along: Length;
  readonly across: Length;
  readonly length: Length;
  readonly width: Length;
};

/** A piece where it lies. `turned`: its own length runs across the sheet. `length` and `width` are as it lies. */
export type PlacedPiece = CutRectangle & { readonly blank: BlankCode; readonly turned: boolean };
export type Offcut = CutRectangle & { readonly code: string };

/**
 * A through cut of one workpiece into two. A rip runs along the bin's length, a crosscut across it.
 * `workpiece` is the number of the piece that is picked up (0 the whole bin); what falls between fence (or stop) and
 * blade is `falls`, of exactly `setting` (its width or length); what is left is `stays`.
 */
export type Cut = {
  readonly number: number;
  readonly direction: 'rip' | 'crosscut';
  readonly setting: Length;
  readonly workpiece: number;
  readonly from: CutRectangle;
  readonly falls: Fallen;
  readonly stays: Fallen;
  readonly trim: boolean;
};

export type Fallen =
  | { readonly kind: 'workpiece'; readonly number: number; readonly at: CutRectangle }
  | { readonly kind: 'piece'; readonly blank: BlankCode; readonly at: CutRectangle }
  | { readonly kind: 'offcut'; readonly code: string; readonly at: CutRectangle }
  | { readonly kind: 'waste'; readonly at: CutRectangle }
  | { readonly kind: 'nothing' };
