import { type Lying, lyingIn } from './lying.ts';
import type { CuttingProblem } from './problem.ts';

/**
 * Few pieces that may come out of one bin together. Every piece has a number, and one that may be turned has two, for the
 * two ways in which it lies. The set that is asked about stands at the beginning of `sets`.
 */
export type FewPieces = {
  readonly lying: readonly Lying[];
  readonly lengths: Int32Array;
  readonly widths: Int32Array;
  /** The number of the other way in which the same piece may lie, or its own. */
  readonly twins: Int32Array;
  /** Area of the bin, and of each piece as it lies: as many of a square unit as make whole numbers that are quick to add. */
  readonly area: number;
  readonly areas: Int32Array;
  readonly scale: number;
  /** Weights of the pieces of which no bin can hold more than `FULL`, however it is cut. */
  readonly weights: readonly Int32Array[];
  readonly length: number;
  readonly width: number;
  readonly stages: number;
  /** Room for sets, and for what is left of them as parts are cut off. */
  readonly sets: Int32Array;
  /** For each of these sets the parts that leave most room for the rest, and how much they leave, the best first. */
  readonly parts: Int32Array;
  readonly rooms: Float64Array;
  /** How much any two of the set in hand take along the bin and across it. */
  readonly longs: Int32Array;
  readonly wides: Int32Array;
  /** Two numbers for each piece, whose sums tell sets apart, and the answers for these sums that were given lately. */
  readonly marks: Int32Array;
  readonly known: Int32Array;
  /** What has been spent on sets since it was set to 0, in looks. */
  spent: number;
};

/** So many pieces are tried together. */
export const FEW = 12;
/** A set of them, and each rest, has its place in `sets`, and room for so many parts that may be cut off it. */
export const STRIDE = 16;
export const PARTS_MOST = 32;
/** What is no piece of a set. */
export const NOBODY = STRIDE - 1;
/** What a bin can hold, in whole numbers. */
export const FULL = 2 ** 22;
/** Answers that are remembered: a power of 2. */
export const KNOWN = 2 ** 16;

/** Changes of direction that no few pieces need. */
const PLENTY = 99;
const AREA_MOST = 2 ** 30;

/** For a plain bin; lengths and areas in units, `weights` for each kind of piece as a share of what a bin can hold. */
export function openFewPieces(problem: CuttingProblem, weights: readonly (readonly number[])[]): FewPieces {
  const { length, width } = problem.bins[0]?.clear[0] ?? { length: 0, width: 0 };
  const scale = Math.min(1, AREA_MOST / (length * width));
  const lying = everyPieceLying(problem);
  return {
    lying,
    lengths: Int32Array.from(lying, lie => lie.length),
    widths: Int32Array.from(lying, lie => lie.width),
    twins: Int32Array.from(lying, lie => lie.twin),
    area: Math.floor(length * width * scale),
    areas: Int32Array.from(lying, lie => Math.floor(lie.length * lie.width * scale)),
    scale,
    weights: weights.map(each => Int32Array.from(lying, lie => Math.floor(FULL * (each[lie.kind] ?? 0)))),
    length,
    width,
    stages: Math.min(PLENTY, problem.stages),
    sets: new Int32Array(STRIDE * (FEW + 1)),
    parts: new Int32Array(PARTS_MOST * (FEW + 1)),
    rooms: new Float64Array(PARTS_MOST * (FEW + 1)),
    longs: new Int32Array(STRIDE * STRIDE),
    wides: new Int32Array(STRIDE * STRIDE),
    marks: Int32Array.from({ length: 2 * lying.length }, (_, at) => mixed(at + 1)),
    known: new Int32Array(2 * KNOWN),
    spent: 0,
  };
}

/** Every piece in every way in which it may lie, strewn: whoever begins at some number comes to pieces of any size. */
function everyPieceLying(problem: CuttingProblem): readonly Lying[] {
  const strewn = lyingIn(problem)
    .flatMap((lie, way) => (problem.pieces[lie.kind]?.blanks ?? []).map((_, copy) => ({ lie, way, copy })))
    .map((each, at) => ({ ...each, mark: mixed(at + 1) }))
    .sort((one, two) => one.mark - two.mark);
  const numbers = new Map(strewn.map(({ way, copy }, number) => [`${way} ${copy}`, number]));
  return strewn.map(({ lie, copy }, number) => ({ ...lie, twin: numbers.get(`${lie.twin} ${copy}`) ?? number }));
}

/** A number that looks like chance. */
export function mixed(number: number): number {
  let mix = Math.imul(number, 0x9e3779b1);
  mix = Math.imul(mix ^ (mix >>> 16), 0x85ebca6b);
  mix = Math.imul(mix ^ (mix >>> 13), 0xc2b2ae35);
  return mix ^ (mix >>> 16);
}
