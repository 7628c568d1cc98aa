import type { Mounting, Opening, Side, Sides } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import type { Length } from '../units/length.ts';
import type { Door, LengthWorking, Term, Working } from './door-set.ts';
import { work, workShared } from './working.ts';

/** A door of the opening, as far as the opening alone decides it. */
export type Leaf = {
  readonly leaf: Door['leaf'];
  readonly hingeSide: Side | undefined;
  readonly width: LengthWorking;
  readonly height: LengthWorking;
  readonly gaps: Door['gaps'];
  readonly workings: readonly Working[];
};

/**
 * The leaf or the two leaves that close an opening. Sizes are rounded down to the shop's increment. What that takes
 * goes back into the gaps: between the leaves of a pair, on the side away from the hinge of a single one, and at the
 * bottom, so that tops stay in line. Geometry, apart from where the rest goes: that is common practice.
 */
export function leavesOf(opening: Opening, shop: Shop): readonly Leaf[] {
  const { hanging } = opening;
  const width = leafWidth(opening, shop.doors.increment);
  const height = leafHeight(opening, shop.doors.increment);
  const hingeSide = hanging.kind === 'single' ? hanging.hingeSide : undefined;
  const latch = hingeSide === 'right' ? 'left' : 'right';
  const bottom = bottomGap(opening, height.value);
  switch (hanging.kind) {
    case 'pair': {
      const between = gapBetween(opening, width.value);
      const gaps = { ...asked(opening.mounting), bottom: bottom.value, between: between.value };
      const shared = { width, height, gaps, workings: [between, bottom] };
      return [
        { ...shared, leaf: 'left', hingeSide: 'left' },
        { ...shared, leaf: 'right', hingeSide: 'right' },
      ];
    }
    case 'single':
    case 'fixed': {
      const side = latchGap(opening, latch, width.value);
      const gaps = { ...asked(opening.mounting), bottom: bottom.value, [latch]: side.value, between: undefined };
      return [{ leaf: 'single', hingeSide, width, height, gaps, workings: [side, bottom] }];
    }
  }
}

function leafWidth(opening: Opening, increment: Length): LengthWorking {
  const reach = [term('left', opening.mounting), term('right', opening.mounting)];
  return opening.hanging.kind === 'pair'
    ? workShared('door-width', { by: 2, to: increment }, openingWidth(opening), ...reach, [
        -1,
        'g',
        opening.hanging.gap,
      ])
    : workShared('door-width', { by: 1, to: increment }, openingWidth(opening), ...reach);
}

const leafHeight = (opening: Opening, increment: Length): LengthWorking =>
  workShared(
    'door-height',
    { by: 1, to: increment },
    [1, 'Ho', opening.height],
    term('top', opening.mounting),
    term('bottom', opening.mounting),
  );

/** What is left between two leaves: the gap that was asked for and what rounding took from both. */
const gapBetween = (opening: Opening, width: Length): LengthWorking =>
  work('gap-between', openingWidth(opening), term('left', opening.mounting), term('right', opening.mounting), [
    -2,
    'W',
    width,
  ]);

/** Overlay or clearance on the side away from the hinge, as it comes out. */
const latchGap = (opening: Opening, latch: 'left' | 'right', width: Length): LengthWorking =>
  comesOut(opening.mounting, latch, openingWidth(opening), [1, 'W', width]);

const bottomGap = (opening: Opening, height: Length): LengthWorking =>
  comesOut(opening.mounting, 'bottom', [1, 'Ho', opening.height], [1, 'H', height]);

/** Overlay: what of the leaf is left when opening and other side are taken from it. Clearance: the other way round. */
function comesOut(mounting: Mounting, side: keyof Sides, opening: Term, leaf: Term): LengthWorking {
  const of = `${mounting.kind === 'overlay' ? 'overlay' : 'clearance'}-${side}` as const;
  const other = term(OPPOSITE[side], mounting);
  return mounting.kind === 'overlay'
    ? work(of, leaf, negative(opening), negative(other))
    : work(of, opening, other, negative(leaf));
}

const openingWidth = (opening: Opening): Term => [1, 'Wo', opening.width];
const negative = ([count, symbol, length]: Term): Term => [-count, symbol, length];

/** What a side adds to the opening: an overlay, or less a clearance. */
const term = (side: keyof Sides, mounting: Mounting): Term =>
  mounting.kind === 'overlay'
    ? [1, OVERLAY_SYMBOLS[side], mounting.overlay[side]]
    : [-1, CLEARANCE_SYMBOLS[side], mounting.clearance[side]];

const asked = (mounting: Mounting): Sides => (mounting.kind === 'overlay' ? mounting.overlay : mounting.clearance);

const OPPOSITE = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' } as const;
const OVERLAY_SYMBOLS = { left: 'OL', right: 'OR', top: 'OT', bottom: 'OB' } as const;
const CLEARANCE_SYMBOLS = { left: 'cL', right: 'cR', top: 'cT', bottom: 'cB' } as const;
