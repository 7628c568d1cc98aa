import type { Opening, Side } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import { type Length, minus, nm, plus, share } from '../units/length.ts';
import type { Pull } from './door-set.ts';

type Leaf = { readonly width: Length; readonly height: Length; readonly hingeSide: Side | undefined };

/**
 * The holes of a leaf's pull: on a door up the stile away from the hinges, from the end that the workbook names; on a
 * drawer front level in its middle. Undefined where nothing is bored.
 */
export function pullOf(opening: Opening, leaf: Leaf, shop: Shop): Pull | undefined {
  const { kind, pull } = opening;
  if (pull === 'none') return undefined;
  // A front that pulls out is pulled at its middle; one that is only looked at, where the workbook asks for it.
  if (leaf.hingeSide === undefined) {
    return pull !== undefined || kind === 'drawer-front' ? levelPull(leaf, shop) : undefined;
  }
  return pull === undefined ? undefined : uprightPull(pull, { ...leaf, hingeSide: leaf.hingeSide }, shop);
}

function levelPull(leaf: Leaf, shop: Shop): Pull {
  const { spacing, holeDiameter } = shop.pulls;
  const fromLeft = middle(minus(leaf.width, spacing), shop);
  const fromBottom = middle(leaf.height, shop);
  const holes = offsets(spacing).map(offset => ({ fromLeft: plus(fromLeft, offset), fromBottom }));
  return { end: 'middle', runs: 'level', holes, diameter: holeDiameter };
}

function uprightPull(end: Pull['end'], leaf: Leaf & { readonly hingeSide: Side }, shop: Shop): Pull {
  const { fromEdge, spacing, holeDiameter } = shop.pulls;
  const fromLeft = leaf.hingeSide === 'left' ? minus(leaf.width, fromEdge) : fromEdge;
  const nearest = firstHole(end, leaf.height, shop);
  const holes = offsets(spacing).map(offset => ({
    fromLeft,
    fromBottom: end === 'top' ? minus(nearest, offset) : plus(nearest, offset),
  }));
  return { end, runs: 'upright', holes, diameter: holeDiameter };
}

/** The hole nearest to the end; the lower one of a pull at the middle. */
function firstHole(end: Pull['end'], height: Length, shop: Shop): Length {
  switch (end) {
    case 'bottom':
      return shop.pulls.fromEnd;
    case 'top':
      return minus(height, shop.pulls.fromEnd);
    case 'middle':
      return middle(minus(height, shop.pulls.spacing), shop);
  }
}

/** One hole for a knob. */
const offsets = (spacing: Length): readonly Length[] => (spacing === 0 ? [nm(0)] : [nm(0), spacing]);

const middle = (length: Length, shop: Shop): Length => share(length, 2, shop.doors.increment).each;
