import type { Door } from '../../calculate/door-set.ts';
import { type Length, minus } from '../../units/length.ts';
import type { Figure, Mark } from '../figure.ts';
import { across, ROW, roomFor, upright } from './dimensions.ts';
import { boxOf, type Placed, placed, type Room } from './door-elevation.ts';
import { centreLines, circle, type Pen, rectangle, text, WEIGHT } from './pen.ts';

/**
 * The hinge borings as they are bored: the door on its face, seen from its back, so that what hangs on the left is
 * drawn on the right. Each cup is dimensioned from the top of the door and from its hinge edge.
 * Undefined for what hangs on nothing.
 */
export function boringMap(door: Door, top: string, pen: Pen, room: Room): Figure | undefined {
  const first = door.hinges[0];
  if (door.hingeSide === undefined || first === undefined) return undefined;
  const seenSide = door.hingeSide === 'left' ? 'right' : 'left';
  const places = door.hinges.map(hinge => hinge.fromTop);
  const needed = ROW * (places.length + 1) + roomFor(places, pen, 11);
  const margins = {
    left: seenSide === 'left' ? needed : 8,
    right: seenSide === 'right' ? needed : 8,
    top: 20,
    bottom: ROW + 20,
  };
  const at = placed(door, margins, room);
  const centre = (fromEdge: Length): number => at.x(seenSide === 'left' ? fromEdge : minus(door.width.value, fromEdge));
  const edge = at.box.x + (seenSide === 'left' ? 0 : at.box.width);
  return {
    width: at.box.x + at.box.width + margins.right,
    height: at.box.y + at.box.height + margins.bottom,
    marks: [
      ...door.sights.map(sight =>
        rectangle(boxOf({ ...sight, left: minus(door.width.value, sight.left, sight.width) }, at), WEIGHT.thin),
      ),
      rectangle(at.box, WEIGHT.outline),
      text([at.box.x + at.box.width / 2, at.box.y - 7], top, { bold: true }),
      ...door.hinges.flatMap(hinge => cup(hinge, [centre(hinge.fromEdge), fromTop(hinge.fromTop, at)], at)),
      ...places.flatMap((place, index) =>
        fromTheTop(place, index, places.length, { edge, outward: seenSide === 'left' ? -1 : 1 }, at, pen),
      ),
      ...fromTheEdge(first.fromEdge, edge, centre(first.fromEdge), at, pen),
    ],
  };
}

const fromTop = (place: Length, at: Placed): number => at.box.y + place * at.scale;

/** The cup to scale, but never so small that it is lost on a copy. */
const cup = (hinge: { cupDiameter: Length }, centre: readonly [number, number], at: Placed): readonly Mark[] => {
  const radius = Math.max(3, (hinge.cupDiameter * at.scale) / 2);
  return [circle(centre, radius, WEIGHT.edge, 1), ...centreLines(centre, radius + 4)];
};

/** Running dimensions, all from the top, so that no error adds up: the nearest hinge on the inmost line. */
function fromTheTop(
  place: Length,
  index: number,
  count: number,
  side: { edge: number; outward: -1 | 1 },
  at: Placed,
  pen: Pen,
): readonly Mark[] {
  const x = side.edge + side.outward * ROW * (index + 1);
  const stretch = { from: at.box.y, to: fromTop(place, at), length: place };
  // The figures of all lines stand beyond the last one, each at its own hinge.
  return upright([stretch], { x, edge: side.edge }, pen, 11).map(mark =>
    mark.kind === 'text'
      ? { ...mark, x: side.edge + side.outward * (ROW * count + 4), y: fromTop(place, at) + 4 }
      : mark,
  );
}

const fromTheEdge = (place: Length, edge: number, centre: number, at: Placed, pen: Pen): readonly Mark[] =>
  across(
    [{ from: Math.min(edge, centre), to: Math.max(edge, centre), length: place }],
    { y: at.box.y + at.box.height + ROW, edge: at.box.y + at.box.height },
    pen,
    11,
  );
