import type { BlankCode } from '../../codes/codes.ts';

/**
 * What is cut from what, for one stock, in whole units of a length that divides every size, trim and kerf of it.
 *
 * A blade that takes a kerf `k` between two pieces is the same as no blade at all between pieces that are each `k`
 * larger, in a bin that is `k` larger: n pieces need Σ(w) + (n − 1)·k ≤ L, which is Σ(w + k) ≤ L + k. So every size
 * in here is its true size and one kerf, and the planner knows no kerf.
 *
 * `along` runs with the bin's length (a crosscut divides it), `across` with its width (a rip divides it).
 */
export type CuttingProblem = {
  /** Nanometres of one unit. */
  readonly unit: number;
  readonly kerf: number;
  /** How often the direction of cutting may change on one piece's way; Infinity where it is free. */
  readonly stages: number;
  /** Least that the blade can take off beside a piece; 0 where it can skim. */
  readonly leastSkim: number;
  /** Every different size, largest first. */
  readonly pieces: readonly PieceKind[];
  /** Every kind of bin, in the order in which they are wanted. */
  readonly bins: readonly BinKind[];
};

/** Pieces of one size. */
export type PieceKind = {
  readonly length: number;
  readonly width: number;
  readonly area: number;
  readonly turns: boolean;
  readonly blanks: readonly BlankCode[];
};

/** Boards or sheets of one size from one row of Stock. */
export type BinKind = {
  /** Index in the stock's sizes. */
  readonly size: number;
  readonly source: 'on-hand' | 'buy';
  /** How many there are; Infinity where it can be bought. */
  readonly available: number;
  /** What one of them counts in the plan; see `costs.ts`. */
  readonly cost: number;
  /** True extents, trims included. */
  readonly length: number;
  readonly width: number;
  /** Clear stretches between trims and defects, true extents and a kerf. More than one only where there are defects. */
  readonly clear: readonly ClearStretch[];
  /** Of the clear stretches together. */
  readonly area: number;
  /** Whether the last clear stretch runs to the far trim; otherwise a defect lies behind it. */
  readonly endsClear: boolean;
  /** The direction of first cuts in which one person can guide the whole of it. */
  readonly easy: 'crosscut' | 'rip';
  /** How large a piece may be, kerf included, for fence or stop to measure it from one side or the other. */
  readonly reach: { readonly crosscut: Reach; readonly rip: Reach };
};

/** Up to `upTo`, measured from the near side; from `from` on, measured from the far side. */
export type Reach = { readonly upTo: number; readonly from: number };

/** A clear stretch of a bin: where it begins, and its extents with one kerf each. */
export type ClearStretch = {
  readonly along: number;
  readonly across: number;
  readonly length: number;
  readonly width: number;
};
