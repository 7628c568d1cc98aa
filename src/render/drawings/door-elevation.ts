import type { Door, Part, Rectangle, Sight } from '../../calculate/door-set.ts';
import { type Length, minus, plus, ZERO } from '../../units/length.ts';
import type { Figure, Mark } from '../figure.ts';
import { across, ROW, roomFor, type Stretch, upright } from './dimensions.ts';
import { type Box, circle, grainArrow, HIDDEN_DASH, lettered, line, type Pen, rectangle, WEIGHT } from './pen.ts';

/** The room on paper that a drawing may take, in points. */
export type Room = { readonly width: number; readonly height: number };

/**
 * The door seen from its front, to scale: outline, joints, the mark of each part, all sizes across and upright, the
 * hinge side (where the dashed lines meet), the pull's holes and the panel's grain.
 */
export function doorElevation(door: Door, parts: readonly Part[], pen: Pen, room: Room): Figure {
  const [columns, rows] = [stretchesAcross(door), stretchesUpright(door)];
  const margins = {
    left: columns.length === 0 ? 4 : ROW + roomFor(rows, pen),
    right: ROW + roomFor([door.height.value], pen, 12),
    top: columns.length === 0 ? 4 : ROW + 26,
    bottom: ROW + 15,
  };
  const at = placed(door, margins, room);
  const marks = [
    ...parts.flatMap(part => drawnPart(part, door, at)),
    ...hingeSign(door, at),
    ...(door.pull?.holes ?? []).map(hole =>
      circle(
        [at.x(hole.fromLeft), at.y(hole.fromBottom)],
        Math.max(1.6, at.scale * (door.pull?.diameter ?? 0) * 0.5),
        WEIGHT.edge,
        1,
      ),
    ),
    rectangle(at.box, WEIGHT.outline),
    ...across(chain(columns, at.box.x, at.scale), { y: at.box.y - ROW, edge: at.box.y }, pen),
    ...upright(chainDown(rows, at.box, at.scale), { x: at.box.x - ROW, edge: at.box.x }, pen),
    ...across(
      [{ from: at.box.x, to: at.box.x + at.box.width, length: door.width.value }],
      { y: bottom(at.box) + ROW, edge: bottom(at.box) },
      pen,
      12,
    ),
    ...upright(
      [{ from: at.box.y, to: bottom(at.box), length: door.height.value }],
      { x: right(at.box) + ROW, edge: right(at.box) },
      pen,
      12,
    ),
  ];
  return { width: right(at.box) + margins.right, height: bottom(at.box) + margins.bottom, marks };
}

/** Where a door's own coordinates (from its left, up from its bottom) fall on paper. */
export type Placed = {
  readonly box: Box;
  readonly scale: number;
  readonly x: (fromLeft: Length) => number;
  readonly y: (fromBottom: Length) => number;
};

export function placed(
  door: Door,
  margins: { left: number; right: number; top: number; bottom: number },
  room: Room,
): Placed {
  const [width, height] = [door.width.value, door.height.value];
  const scale = Math.min(
    Math.max(LEAST_DRAWN, room.width - margins.left - margins.right) / width,
    (room.height - margins.top - margins.bottom) / height,
  );
  const box = { x: margins.left, y: margins.top, width: width * scale, height: height * scale };
  return {
    box,
    scale,
    x: fromLeft => box.x + fromLeft * scale,
    y: fromBottom => box.y + box.height - fromBottom * scale,
  };
}

/** However long its sizes are in words, a door is drawn this wide, in points: narrower, they would stand on each other. */
const LEAST_DRAWN = 44;

const right = (box: Box): number => box.x + box.width;
const bottom = (box: Box): number => box.y + box.height;

/** A rectangle of the door as a box on paper. */
export const boxOf = (place: Rectangle, at: Placed): Box => ({
  x: at.x(place.left),
  y: at.y(plus(place.bottom, place.height)),
  width: place.width * at.scale,
  height: place.height * at.scale,
});

/** From the left edge to the right one: frame member, clear opening, frame member …; empty for a slab. */
const stretchesAcross = (door: Door): readonly Length[] =>
  alternating(
    door.sights.filter(sight => sight.row === 1),
    sight => sight.left,
    sight => sight.width,
    door.width.value,
  );

/** From the bottom edge up. */
const stretchesUpright = (door: Door): readonly Length[] =>
  alternating(
    door.sights.filter(sight => sight.column === 1),
    sight => sight.bottom,
    sight => sight.height,
    door.height.value,
  );

function alternating(
  sights: readonly Sight[],
  start: (sight: Sight) => Length,
  size: (sight: Sight) => Length,
  total: Length,
): readonly Length[] {
  if (sights.length === 0) return [];
  const places = [...sights]
    .sort((a, b) => start(a) - start(b))
    .flatMap(sight => [start(sight), plus(start(sight), size(sight))]);
  return [...places, total].map((place, index) => minus(place, places[index - 1] ?? ZERO));
}

function chain(lengths: readonly Length[], from: number, scale: number): readonly Stretch[] {
  let at = from;
  return lengths.map(length => {
    const stretch = { from: at, to: at + length * scale, length };
    at = stretch.to;
    return stretch;
  });
}

/** The same from the bottom of a box up, given from its upper end as paper counts. */
const chainDown = (lengths: readonly Length[], box: Box, scale: number): readonly Stretch[] =>
  chain([...lengths].reverse(), box.y, scale);

function drawnPart(part: Part, door: Door, at: Placed): readonly Mark[] {
  const box = boxOf(part.place, at);
  const mark = part.code.slice(door.code.length + 1);
  const tall = box.width < 30 && box.height > box.width;
  const filling = part.role === 'panel' || part.role === 'glass' || part.role === 'slab';
  return [
    rectangle(box),
    ...(part.role === 'panel' || part.role === 'slab' ? grainIn(box) : []),
    ...(Math.min(box.width, box.height) < 9 && !filling
      ? []
      : [lettered(besideThePull(box, part, door), mark, { turn: tall ? 90 : 0, mask: true })]),
  ];
}

/** The mark of a slab stands on its right, where the pull in the middle leaves it alone. */
const besideThePull = (box: Box, { role }: Part, { pull }: Door): Box =>
  role === 'slab' && pull !== undefined ? { ...box, x: box.x + box.width * 0.66, width: box.width * 0.34 } : box;

/** Along the door's height, a little left of the middle, where the mark is. */
function grainIn(box: Box): readonly Mark[] {
  if (box.height < 40 || box.width < 24) return [];
  const x = box.x + box.width * 0.25;
  return grainArrow([x, box.y + box.height * 0.36], [x, box.y + box.height * 0.64]);
}

/** The trade's sign: dashed lines from the corners of the side that opens, meeting on the side that hangs. */
function hingeSign(door: Door, at: Placed): readonly Mark[] {
  if (door.hingeSide === undefined) return [];
  const { box } = at;
  const hung = door.hingeSide === 'left' ? box.x : right(box);
  const free = door.hingeSide === 'left' ? right(box) : box.x;
  const middle = box.y + box.height / 2;
  return [
    line([free, box.y], [hung, middle], WEIGHT.thin, HIDDEN_DASH),
    line([free, bottom(box)], [hung, middle], WEIGHT.thin, HIDDEN_DASH),
  ];
}
