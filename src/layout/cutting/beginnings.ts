import { mixed } from './few-pieces.ts';

/**
 * Beginnings with the same number of pieces. A strip begins at `strip` and ends at `end`, the last row of it begins at
 * `row` and ends at `top`, and the pieces in that end at `reach`.
 */
export type Beginnings = {
  readonly left: Uint16Array;
  /** The bits of the ways in which pieces that are left may lie. */
  readonly open: Int32Array;
  readonly bin: Int32Array;
  readonly strip: Int32Array;
  readonly end: Int32Array;
  readonly row: Int32Array;
  readonly top: Int32Array;
  readonly reach: Int32Array;
  readonly filled: Float64Array;
  readonly mark: Int32Array;
  count: number;
};

/** Room for so many, of so many kinds of pieces, whose ways to lie take so many words. */
export const beginnings = (width: number, kinds: number, words: number): Beginnings => ({
  left: new Uint16Array(width * kinds),
  open: new Int32Array(width * words),
  bin: new Int32Array(width),
  strip: new Int32Array(width),
  end: new Int32Array(width),
  row: new Int32Array(width),
  top: new Int32Array(width),
  reach: new Int32Array(width),
  filled: new Float64Array(width),
  mark: new Int32Array(width),
  count: 0,
});

/** Beginnings that are known, by the marks of their pieces and of the room beyond them, and by the step of which they are. */
export type Known = {
  readonly marks: Int32Array;
  readonly fronts: Int32Array;
  readonly steps: Int32Array;
  step: number;
};

/** Room for so many beginnings of a step. */
export function knownFor(count: number): Known {
  const places = 2 ** (33 - Math.clz32(count));
  return { marks: new Int32Array(places), fronts: new Int32Array(places), steps: new Int32Array(places), step: 0 };
}

/** Whether a beginning with the same pieces and the same room beyond them is known in this step; it is afterwards. */
export function isKnown({ marks, fronts, steps, step }: Known, mark: number, front: number): boolean {
  const last = marks.length - 1;
  let at = mixed(mark ^ front) & last;
  for (; steps[at] === step; at = (at + 1) & last) if (marks[at] === mark && fronts[at] === front) return true;
  steps[at] = step;
  marks[at] = mark;
  fronts[at] = front;
  return false;
}
