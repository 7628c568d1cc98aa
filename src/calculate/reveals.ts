import { type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import { cellOf } from '../diagnostics/place.ts';
import type { FrameSide } from '../diagnostics/problems/calculate.ts';
import type { Opening } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import { type Length, minus, nm, plus } from '../units/length.ts';
import { openingName } from './opening-name.ts';

/**
 * Overlays against the face frame. No door may lie over more of a member than there is; where two doors share one, both
 * overlays and the wished reveal must fit on it. Only what the workbook says of the frame is looked at. Geometry.
 */
export function revealFindings(openings: readonly Opening[], shop: Shop): readonly Diagnostic[] {
  const find = finder(openings);
  const findings: Diagnostic[] = [];
  for (const opening of openings) {
    for (const side of SIDES) findings.push(...overlayFits(opening, side));
    for (const shared of NEIGHBOURS) findings.push(...neighbourFits(opening, shared, find, shop));
  }
  return findings;
}

function overlayFits(opening: Opening, side: FrameSide): readonly Diagnostic[] {
  const member = opening.faceFrame[side];
  const overlay = overlayOn(opening, side);
  return member === undefined || overlay <= member
    ? []
    : [
        problem('overlay-wider-than-frame', overlayCell(opening, side), {
          door: openingName(opening),
          side,
          overlay,
          member,
        }),
      ];
}

type Shared = {
  readonly side: 'right' | 'top';
  readonly facing: 'left' | 'bottom';
  readonly named: 'rightNeighbour' | 'topNeighbour';
};

function neighbourFits(
  opening: Opening,
  { side, facing, named }: Shared,
  find: Finder,
  shop: Shop,
): readonly Diagnostic[] {
  const name = opening.faceFrame[named];
  if (name === undefined) return [];
  const neighbour = find(name);
  const door = openingName(opening);
  // A neighbour that Cabinets does not have was reported by the import.
  if (neighbour === undefined) return [];
  if (neighbour === 'several')
    return [problem('neighbour-ambiguous', cellOf(opening.from, named), { door, neighbour: name })];
  const member = narrower(opening.faceFrame[side], neighbour.faceFrame[facing]);
  if (member === undefined) return [];
  const overlays = plus(overlayOn(opening, side), overlayOn(neighbour, facing));
  const left = minus(member, overlays);
  // Inset doors leave the whole member to be seen: there is nothing to collide.
  if (overlays === 0 || left >= shop.doors.reveal) return [];
  const facts = { door, neighbour: openingName(neighbour), side, member, overlays, left, reveal: shop.doors.reveal };
  return [problem('reveal-too-small', overlayCell(opening, side), facts, [overlayCell(neighbour, facing)])];
}

/** A member that two rows describe is taken at its narrower width: that one is wrong on the safe side. */
const narrower = (one: Length | undefined, other: Length | undefined): Length | undefined =>
  one === undefined ? other : other === undefined || one <= other ? one : other;

const overlayOn = ({ mounting }: Opening, side: FrameSide): Length =>
  mounting.kind === 'overlay' ? mounting.overlay[side] : nm(0);

const overlayCell = (opening: Opening, side: FrameSide) => cellOf(opening.from, OVERLAY_FIELDS[side]);

type Finder = (name: string) => Opening | 'several' | undefined;

/** By cabinet where that names one opening, or by cabinet and label. */
function finder(openings: readonly Opening[]): Finder {
  const byName = new Map<string, Opening | 'several'>();
  for (const opening of openings) byName.set(opening.cabinet, byName.has(opening.cabinet) ? 'several' : opening);
  for (const opening of openings) byName.set(openingName(opening), opening);
  return name => byName.get(name);
}

const SIDES: readonly FrameSide[] = ['left', 'right', 'top', 'bottom'];

const NEIGHBOURS: readonly Shared[] = [
  { side: 'right', facing: 'left', named: 'rightNeighbour' },
  { side: 'top', facing: 'bottom', named: 'topNeighbour' },
];

const OVERLAY_FIELDS = {
  left: 'overlayLeft',
  right: 'overlayRight',
  top: 'overlayTop',
  bottom: 'overlayBottom',
} as const;
