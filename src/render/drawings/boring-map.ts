import type { Door } from '../../calculate/door-set.ts';
import { type Length, minus } from '../../units/length.ts';
import type { Figure, Mark } from '../figure.ts';
import { across, ROW, roomFor, upright } from './dimensions.ts';
import { boxOf, type Placed, placed, type Room } from './door-elevation.ts';
import { CAP_HEIGHT, centreLines, circle, moved, type Pen, rectangle, text, WEIGHT } from './pen.ts';

/** A hand among doors that are bored alike: a door that hangs so, and what is written above it. */
export type Hand = { readonly door: Door; readonly title: string };

/**
 * The hinge borings as they are bored: doors on their faces, seen from the back, so that what hangs on the left has its
 * cups on the right. Each cup is dimensioned from the top of the door and from its hinge edge. A left-hand and a
 * right-hand door that are bored alike lie with their hinge edges towards each other. Undefined where nothing hangs.
 */
export function boringMap(hands: readonly Hand[], pen: Pen, room: Room): Figure | undefined {
  const hung = hands.filter(({ door }) => door.hingeSide !== undefined && door.hinges.length > 0);
  const [first] = hung;
  if (first === undefined) return undefined;
  const [left, right] = [hung.find(isLeft), hung.find(hand => !isLeft(hand))];
  const places = first.door.hinges.map(hinge => hinge.fromTop);
  const middle = (left !== undefined && right !== undefined ? 2 : 1) * ROW + roomFor(places, pen, FIGURES);
  const doors = left !== undefined && right !== undefined ? 2 : 1;
  const sides = { left: 4, right: 4, top: 14, bottom: ROW + 16 };
  const width = (room.width - middle) / doors;
  const drawn = (hand: Hand | undefined): Drawn | undefined =>
    hand === undefined ? undefined : oneHand(hand, placed(hand.door, sides, { ...room, width }), pen);
  const [before, after] = [drawn(left), drawn(right)];
  // What hangs on the left has its hinge edge on the right as it lies: towards the dimensions.
  const start = before?.width ?? 0;
  const height = Math.max(before?.height ?? 0, after?.height ?? 0);
  return {
    width: start + middle + (after?.width ?? 0),
    height,
    marks: [
      ...(before?.marks ?? []),
      ...(after?.marks.map(mark => moved(mark, start + middle, 0)) ?? []),
      ...figures(places, { before, after, start, middle }, pen),
    ],
  };
}

const isLeft = ({ door }: Hand): boolean => door.hingeSide === 'left';

type Drawn = Figure & { readonly at: Placed };

/** A door seen from the back, with its cups, and the dimension of these from its edge. */
function oneHand({ door, title }: Hand, at: Placed, pen: Pen): Drawn {
  const onLeft = door.hingeSide === 'right';
  const edge = at.box.x + (onLeft ? 0 : at.box.width);
  const centre = (fromEdge: Length): number => at.x(onLeft ? fromEdge : minus(door.width.value, fromEdge));
  const width = Math.max(at.box.x + at.box.width + 4, pen.measure(title, 9, true));
  return {
    at,
    width,
    height: at.box.y + at.box.height + ROW + 16,
    marks: [
      ...door.sights.map(sight =>
        rectangle(boxOf({ ...sight, left: minus(door.width.value, sight.left, sight.width) }, at), WEIGHT.thin),
      ),
      rectangle(at.box, WEIGHT.outline),
      text([onLeft ? width : 0, 9], title, { bold: true, align: onLeft ? 'right' : 'left' }),
      ...door.hinges.flatMap(hinge => cup(hinge, [centre(hinge.fromEdge), fromTop(hinge.fromTop, at)], at)),
      ...door.hinges.slice(0, 1).flatMap(hinge => fromTheEdge(hinge.fromEdge, edge, centre(hinge.fromEdge), at, pen)),
    ],
  };
}

type Between = {
  readonly before: Drawn | undefined;
  readonly after: Drawn | undefined;
  readonly start: number;
  readonly middle: number;
};

/**
 * All cups from the top on one line, so that no error adds up; the figure of each stands at its own cup. Two doors that
 * are bored alike share the figures between them.
 */
function figures(places: readonly Length[], { before, after, start, middle }: Between, pen: Pen): readonly Mark[] {
  const at = (before ?? after)?.at;
  if (at === undefined) return [];
  const lines = [
    ...(before === undefined ? [] : [{ x: start + ROW - 4, edge: start - 4 }]),
    ...(after === undefined ? [] : [{ x: start + middle - ROW + 4, edge: start + middle + 4 }]),
  ];
  const figuresAt = start + middle / 2 + (lines.length === 2 ? 0 : before === undefined ? -ROW / 2 : ROW / 2);
  return places.flatMap(place => [
    ...lines.flatMap(line =>
      upright([{ from: at.box.y, to: fromTop(place, at), length: place }], line, pen, FIGURES).filter(
        mark => mark.kind !== 'text',
      ),
    ),
    text([figuresAt, fromTop(place, at) + (CAP_HEIGHT * FIGURES) / 2], pen.print(place), { size: FIGURES }),
  ]);
}

const fromTop = (place: Length, at: Placed): number => at.box.y + place * at.scale;

/** The cup to scale, but never so small that it is lost on a copy. */
const cup = (hinge: { cupDiameter: Length }, centre: readonly [number, number], at: Placed): readonly Mark[] => {
  const radius = Math.max(3, (hinge.cupDiameter * at.scale) / 2);
  return [circle(centre, radius, WEIGHT.edge, 1), ...centreLines(centre, radius + 4)];
};

const fromTheEdge = (place: Length, edge: number, centre: number, at: Placed, pen: Pen): readonly Mark[] =>
  across(
    [{ from: Math.min(edge, centre), to: Math.max(edge, centre), length: place }],
    { y: at.box.y + at.box.height + ROW, edge: at.box.y + at.box.height },
    pen,
    FIGURES,
  );

const FIGURES = 10;
