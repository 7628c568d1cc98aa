import type { HingeCounts, Shop } from '../trade/shop.ts';
import { ceilTo, floorTo, type Length, minus, nm, plus, share, times } from '../units/length.ts';
import type { Mass } from '../units/mass.ts';
import type { FactWorking, Hinge, Input, LengthWorking, Rectangle, Working } from './door-set.ts';
import { onceFor, onceForEach } from './once-for.ts';
import { sumOf, work, workShared } from './working.ts';

/** The hinges of a leaf from the top down, with how their number and their places came about. */
export type Hanging = {
  readonly hinges: readonly Hinge[];
  readonly workings: readonly Working[];
};

/**
 * As many hinges as height and mass ask for: the end ones at their set distance, nearer to the ends on a short door,
 * the others spaced equally between them, each moved off a middle rail's joint where a small move will do it.
 */
export function hangingOf(
  leaf: { readonly height: Length; readonly mass: Mass },
  middleRails: readonly Rectangle[],
  shop: Shop,
): Hanging {
  const count = hingeCount(leaf, shop.hinges.counts);
  const places = hingePlaces(leaf.height, count.value.value, shop);
  const joints = jointsFromTop(middleRails, leaf.height);
  const moved = offJoints(places, joints, leaf.height, shop);
  const edge = hingeEdge(shop.hinges);
  const hinges = moved.map(
    ({ fromTop, shifted }): Hinge => ({
      fromTop,
      fromEdge: edge.value,
      cupDiameter: shop.hinges.cupDiameter,
      cupDepth: shop.hinges.cupDepth,
      shifted,
    }),
  );
  return { hinges, workings: [count, ...places, ...shifts(moved), edge] };
}

/** From the door's edge to the centre of the cup. */
const hingeEdge = onceFor(({ cupEdge, cupDiameter }: Shop['hinges']) =>
  work(HINGE_EDGE, { K: cupEdge, 'Ø/2': share(cupDiameter, 2, nm(1)).each }),
);

const HINGE_EDGE = sumOf('hinge-edge', [1, 'K'], [1, 'Ø/2']);

/** Where the edges of the middle rails meet the stile, from the top. */
export const jointsFromTop = (middleRails: readonly Rectangle[], height: Length): readonly Length[] =>
  middleRails.flatMap(rail => [minus(height, rail.bottom, rail.height), minus(height, rail.bottom)]);

/** Whether a hinge's plate lies over a joint; touching it does no harm. */
export const coversJoint = (place: Length, joints: readonly Length[], reach: Length): boolean =>
  joints.some(joint => minus(place, reach) < joint && joint < plus(place, reach));

/** The larger of what height and mass ask for; the most of the table where both are beyond it. */
export function hingeCount(
  leaf: { readonly height: Length; readonly mass: Mass },
  counts: HingeCounts,
): FactWorking & { readonly value: { readonly unit: 'count'; readonly value: number } } {
  const most = counts.reduce((largest, step) => Math.max(largest, step.hinges), HINGES_MIN);
  const byHeight = counts.find(step => leaf.height <= step.heightUpTo)?.hinges ?? most;
  const byMass = counts.find(step => leaf.mass <= step.massUpTo)?.hinges ?? most;
  return {
    kind: 'fact',
    of: 'hinge-count',
    formula: 'max(n(H), n(m))',
    inputs: COUNT_INPUTS,
    given: { H: leaf.height, m: leaf.mass, 'n(H)': byHeight, 'n(m)': byMass },
    value: { unit: 'count', value: Math.max(HINGES_MIN, byHeight, byMass) },
  };
}

const COUNT_INPUTS: readonly Input[] = [
  { symbol: 'H', unit: 'length' },
  { symbol: 'm', unit: 'kg' },
  { symbol: 'n(H)', unit: 'count' },
  { symbol: 'n(m)', unit: 'count' },
];

/** A door on one hinge hangs on nothing. */
const HINGES_MIN = 2;

/** Centres from the top. The end ones stand no farther in than a quarter of the height, so that a short door hangs on more than half. */
function hingePlaces(height: Length, count: number, shop: Shop): readonly LengthWorking[] {
  const increment = shop.doors.increment;
  const quarter = workShared(FROM_TOP, { by: 4, to: increment }, { H: height });
  const first = quarter.value < shop.hinges.fromEnd ? quarter : endPlace(shop.hinges);
  const given = { H: height, E: first.value };
  const between = sumsBetween(count).map(sum => workShared(sum, { by: count - 1, to: increment }, given));
  return [first, ...between, work(FROM_BOTTOM, given)];
}

const FROM_TOP = sumOf('hinge-place', [1, 'H']);
const FROM_END = sumOf('hinge-place', [1, 'E']);
const FROM_BOTTOM = sumOf('hinge-place', [1, 'H'], [-1, 'E']);

/** The sums of those between the end ones. */
const sumsBetween = onceForEach((count: number) =>
  Array.from({ length: count - 2 }, (_, at) => sumOf('hinge-place', [at + 1, 'H'], [count - 3 - 2 * at, 'E'])),
);

const endPlace = onceFor(({ fromEnd }: Shop['hinges']) => work(FROM_END, { E: fromEnd }));

/** A hinge's place as it was worked out, and where it came to stand. */
type Moved = { readonly place: LengthWorking; readonly fromTop: Length; readonly shifted: Length };

/** Each hinge in turn, kept clear of the one above it as it was moved and of the one below it as it stands. */
function offJoints(
  places: readonly LengthWorking[],
  joints: readonly Length[],
  height: Length,
  shop: Shop,
): readonly Moved[] {
  const moved: Moved[] = [];
  places.forEach((place, at) => {
    const fromTop = coversJoint(place.value, joints, shop.hinges.plateReach)
      ? nearestClear(place.value, joints, roomBetween(moved[at - 1], places[at + 1], height, shop), shop)
      : place.value;
    moved.push({ place, fromTop, shifted: minus(fromTop, place.value) });
  });
  return moved;
}

type Room = { readonly from: Length; readonly to: Length };

/** Where a hinge may stand; undefined is the end of the door. */
function roomBetween(
  above: Moved | undefined,
  below: LengthWorking | undefined,
  height: Length,
  { hinges: { plateReach } }: Shop,
): Room {
  const plate = times(2, plateReach);
  return {
    from: above === undefined ? plateReach : plus(above.fromTop, plate),
    to: below === undefined ? minus(height, plateReach) : minus(below.value, plate),
  };
}

/** The place nearest to the wished one at which the plate covers no joint; the wished one where none is near enough. */
function nearestClear(place: Length, joints: readonly Length[], room: Room, shop: Shop): Length {
  const { plateReach, shiftMax } = shop.hinges;
  const increment = shop.doors.increment;
  const [nearest] = joints
    .flatMap(joint => [floorTo(increment, minus(joint, plateReach)), ceilTo(increment, plus(joint, plateReach))])
    .filter(candidate => candidate >= room.from && candidate <= room.to)
    .filter(candidate => Math.abs(candidate - place) <= shiftMax && !coversJoint(candidate, joints, plateReach))
    // Towards the top where both ways are as far: the upper hinges carry the door.
    .sort((a, b) => Math.abs(a - place) - Math.abs(b - place) || a - b);
  return nearest ?? place;
}

const shifts = (moved: readonly Moved[]): readonly LengthWorking[] =>
  moved
    .filter(({ shifted }) => shifted !== 0)
    .map(({ place, shifted }) => work(MOVED, { P: place.value, 'off the joint': shifted }));

const MOVED = sumOf('hinge-moved', [1, 'P'], [1, 'off the joint']);
