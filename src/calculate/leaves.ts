import type { Mounting, Opening, Sides } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import type { Length } from '../units/length.ts';
import type { Door, LengthWorking, Working } from './door-set.ts';
import { type Counted, type Given, type Sum, sumOf, work, workShared } from './working.ts';

/**
 * What closes an opening, as far as the opening alone decides it: one leaf, or a pair of them. Those are mirror images
 * and differ in nothing but their sides, so all else is worked out once for both.
 */
export type Leaf = {
  readonly sides: readonly LeafSide[];
  readonly width: LengthWorking;
  readonly height: LengthWorking;
  readonly gaps: Door['gaps'];
  readonly workings: readonly Working[];
};

export type LeafSide = Pick<Door, 'leaf' | 'hingeSide'>;

/**
 * The leaf or the pair that closes an opening. Sizes are rounded down to the shop's increment. What that takes
 * goes back into the gaps: between the leaves of a pair, on the side away from the hinge of a single one, and at the
 * bottom, so that tops stay in line. Geometry, apart from where the rest goes: that is common practice.
 */
export function leafOf(opening: Opening, shop: Shop): Leaf {
  const { hanging, mounting } = opening;
  const { increment } = shop.doors;
  const sums = SUMS[mounting.kind];
  const given = givenBy(opening);
  const height = workShared(sums.height, { by: 1, to: increment }, given);
  switch (hanging.kind) {
    case 'pair': {
      const width = workShared(sums.pairWidth, { by: 2, to: increment }, { ...given, g: hanging.gap });
      const made = madeBy(opening, width.value, height.value);
      // What is left between two leaves: the gap that was asked for and what rounding took from both.
      const between = work(sums.between, made);
      const bottom = work(sums.bottom, made);
      const { left, right, top } = asked(mounting);
      const gaps = { left, right, top, bottom: bottom.value, between: between.value };
      return { sides: PAIR, width, height, gaps, workings: [between, bottom] };
    }
    case 'single':
    case 'fixed': {
      const width = workShared(sums.width, { by: 1, to: increment }, given);
      const hingeSide = hanging.kind === 'single' ? hanging.hingeSide : undefined;
      const latch = hingeSide === 'right' ? 'left' : 'right';
      const made = madeBy(opening, width.value, height.value);
      const side = work(sums[latch], made);
      const bottom = work(sums.bottom, made);
      const { left, right, top } = asked(mounting);
      const gaps = {
        left: latch === 'left' ? side.value : left,
        right: latch === 'right' ? side.value : right,
        top,
        bottom: bottom.value,
        between: undefined,
      };
      return { sides: [{ leaf: 'single', hingeSide }], width, height, gaps, workings: [side, bottom] };
    }
  }
}

const PAIR: readonly LeafSide[] = [
  { leaf: 'left', hingeSide: 'left' },
  { leaf: 'right', hingeSide: 'right' },
];

/** What the workbook says of an opening, by the symbols of the sums. */
function givenBy({ width, height, mounting }: Opening): Given<string> {
  const { left, right, top, bottom } = asked(mounting);
  return mounting.kind === 'overlay'
    ? { Wo: width, Ho: height, OL: left, OR: right, OT: top, OB: bottom }
    : { Wo: width, Ho: height, cL: left, cR: right, cT: top, cB: bottom };
}

/** The same with the leaf that was made for it. Written out: an object that is spread and added to takes a hundred times as long. */
function madeBy({ width, height, mounting }: Opening, W: Length, H: Length): Given<string> {
  const { left, right, top, bottom } = asked(mounting);
  return mounting.kind === 'overlay'
    ? { Wo: width, Ho: height, OL: left, OR: right, OT: top, OB: bottom, W, H }
    : { Wo: width, Ho: height, cL: left, cR: right, cT: top, cB: bottom, W, H };
}

const asked = (mounting: Mounting): Sides => (mounting.kind === 'overlay' ? mounting.overlay : mounting.clearance);

/** A leaf is as large as its opening with what lies over it on both sides, or without what is left free on both. */
function sumsOf(kind: Mounting['kind'], symbols: Readonly<Record<keyof Sides, string>>): Sums {
  const sign = kind === 'overlay' ? 1 : -1;
  const side = (of: keyof Sides): Counted<string> => [sign, symbols[of]];
  /** What comes out at a side: the leaf less the opening and the other side, or the opening less the leaf and that. */
  const comesOut = (of: keyof Sides, other: keyof Sides, opening: string, leaf: string): Sum<string> =>
    kind === 'overlay'
      ? sumOf(`overlay-${of}`, [1, leaf], [-1, opening], [-1, symbols[other]])
      : sumOf(`clearance-${of}`, [1, opening], [-1, symbols[other]], [-1, leaf]);
  return {
    width: sumOf('door-width', [1, 'Wo'], side('left'), side('right')),
    pairWidth: sumOf('door-width', [1, 'Wo'], side('left'), side('right'), [-1, 'g']),
    height: sumOf('door-height', [1, 'Ho'], side('top'), side('bottom')),
    between: sumOf('gap-between', [1, 'Wo'], side('left'), side('right'), [-2, 'W']),
    left: comesOut('left', 'right', 'Wo', 'W'),
    right: comesOut('right', 'left', 'Wo', 'W'),
    bottom: comesOut('bottom', 'top', 'Ho', 'H'),
  };
}

type Sums = Readonly<Record<'width' | 'pairWidth' | 'height' | 'between' | 'left' | 'right' | 'bottom', Sum<string>>>;

const SUMS: Readonly<Record<Mounting['kind'], Sums>> = {
  overlay: sumsOf('overlay', { left: 'OL', right: 'OR', top: 'OT', bottom: 'OB' }),
  inset: sumsOf('inset', { left: 'cL', right: 'cR', top: 'cT', bottom: 'cB' }),
};
