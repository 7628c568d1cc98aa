import type { Door } from '../../calculate/door-set.ts';
import { type Length, minus } from '../../units/length.ts';
import type { Figure, Mark } from '../figure.ts';
import { across, ROW, roomFor, upright } from './dimensions.ts';
import { boxOf, type Placed, placed, type Room } from './door-elevation.ts';
import { beside, CAP_HEIGHT, centreLines, circle, type Pen, rectangle, text, WEIGHT } from './pen.ts';

/** A hand among doors that are bored alike: a door that hangs so, and what is written above it. */
export type Hand = { readonly door: Door; readonly title: string };

/**
 * The hinge borings as they are bored: doors on their faces, seen from the back, so that what hangs on the left has its
 * cups on the right. Each cup is dimensioned from the top of the door and from its hinge edge. A left-hand and a
 * right-hand door that are bored alike lie with their hinge edges towards each other. Undefined where nothing hangs.
 */
export function boringMap(hands: readonly Hand[], pen: Pen, room: Room): Figure | undefined {
  const hung = hands.filter(({ door }) => door.hingeSide !== undefined && door.hinges.length > 0);
  if (hung.length === 0) return undefined;
  const order = [...hung].sort((a, b) =>
    a.door.hingeSide === b.door.hingeSide ? 0 : a.door.hingeSide === 'left' ? -1 : 1,
  );
  const width = (room.width - GAP * (order.length - 1)) / order.length;
  return beside(
    order.map(hand => oneHand(hand, pen, { ...room, width })),
    GAP,
  );
}

function oneHand({ door, title }: Hand, pen: Pen, room: Room): Figure {
  const seenSide = door.hingeSide === 'left' ? 'right' : 'left';
  const outward = seenSide === 'left' ? -1 : 1;
  const places = door.hinges.map(hinge => hinge.fromTop);
  const needed = ROW + roomFor(places, pen, FIGURES);
  const named = pen.measure(title, 9, true);
  const margins = {
    left: seenSide === 'left' ? needed : 6,
    right: seenSide === 'right' ? needed : 6,
    top: 16,
    bottom: ROW + 18,
  };
  const at = placed(door, margins, room);
  const edge = at.box.x + (seenSide === 'left' ? 0 : at.box.width);
  const centre = (fromEdge: Length): number => at.x(seenSide === 'left' ? fromEdge : minus(door.width.value, fromEdge));
  const width = Math.max(at.box.x + at.box.width + margins.right, named);
  return {
    width,
    height: at.box.y + at.box.height + margins.bottom,
    marks: [
      ...door.sights.map(sight =>
        rectangle(boxOf({ ...sight, left: minus(door.width.value, sight.left, sight.width) }, at), WEIGHT.thin),
      ),
      rectangle(at.box, WEIGHT.outline),
      text(seenSide === 'left' ? [width, 9] : [0, 9], title, {
        bold: true,
        align: seenSide === 'left' ? 'right' : 'left',
      }),
      ...door.hinges.flatMap(hinge => cup(hinge, [centre(hinge.fromEdge), fromTop(hinge.fromTop, at)], at)),
      ...places.flatMap(place => fromTheTop(place, { edge, outward }, at, pen)),
      ...door.hinges.slice(0, 1).flatMap(hinge => fromTheEdge(hinge.fromEdge, edge, centre(hinge.fromEdge), at, pen)),
    ],
  };
}

const fromTop = (place: Length, at: Placed): number => at.box.y + place * at.scale;

/** The cup to scale, but never so small that it is lost on a copy. */
const cup = (hinge: { cupDiameter: Length }, centre: readonly [number, number], at: Placed): readonly Mark[] => {
  const radius = Math.max(3, (hinge.cupDiameter * at.scale) / 2);
  return [circle(centre, radius, WEIGHT.edge, 1), ...centreLines(centre, radius + 4)];
};

/** All from the top on one line, so that no error adds up: the figure of each stands at its own hinge. */
const fromTheTop = (place: Length, side: { edge: number; outward: -1 | 1 }, at: Placed, pen: Pen): readonly Mark[] =>
  upright(
    [{ from: at.box.y, to: fromTop(place, at), length: place }],
    { x: side.edge + side.outward * ROW, edge: side.edge },
    pen,
    FIGURES,
  ).map(mark => (mark.kind === 'text' ? { ...mark, y: fromTop(place, at) + (CAP_HEIGHT * FIGURES) / 2 } : mark));

const fromTheEdge = (place: Length, edge: number, centre: number, at: Placed, pen: Pen): readonly Mark[] =>
  across(
    [{ from: Math.min(edge, centre), to: Math.max(edge, centre), length: place }],
    { y: at.box.y + at.box.height + ROW, edge: at.box.y + at.box.height },
    pen,
    FIGURES,
  );

const FIGURES = 10;
const GAP = 6;
