import type { Door, Part } from '../../calculate/door-set.ts';
import { minus } from '../../units/length.ts';
import type { Figure, Mark } from '../figure.ts';
import { boxOf, placed, type Room } from './door-elevation.ts';
import { arrow, type Box, hatched, type Point, rectangle, WEIGHT } from './pen.ts';

/** Which edge of a piece its tag looks up to. */
export type TagUp = 'inside' | 'top' | 'none';

/**
 * Where a piece goes in its door, as it lies with its tag up: the door seen from the back, the piece dark, and an arrow
 * the way its tag looks. Black and white alone, for a thermal printer.
 */
export function partInDoor(part: Part, door: Door, up: TagUp, room: Room): Figure {
  const at = placed(door, { left: EDGE, right: EDGE, top: EDGE, bottom: EDGE }, room);
  const fromBack = (place: Part['place']): Box =>
    boxOf({ ...place, left: minus(door.width.value, place.left, place.width) }, at);
  const piece = fromBack(part.place);
  const isMember = Math.min(piece.width, piece.height) < MEMBER_MAX;
  return {
    width: at.box.x + at.box.width + EDGE,
    height: at.box.y + at.box.height + EDGE,
    marks: [
      ...door.sights.map(sight => rectangle(fromBack(sight), WEIGHT.thin)),
      ...(isMember ? [] : hatched(piece, 6, WEIGHT.thin)),
      rectangle(piece, WEIGHT.outline, isMember ? 0 : undefined),
      rectangle(at.box, WEIGHT.outline),
      ...lookingUp(piece, at.box, up, isMember),
    ],
  };
}

/** From a member's edge into the opening; up the middle of a panel. */
function lookingUp(piece: Box, door: Box, up: TagUp, isMember: boolean): readonly Mark[] {
  if (up === 'none') return [];
  const centre: Point = [piece.x + piece.width / 2, piece.y + piece.height / 2];
  if (up === 'top' || !isMember) {
    const half = Math.min(REACH, piece.height - 8) / 2;
    const field = { x: centre[0] - HEAD, y: centre[1] - half - 4, width: 2 * HEAD, height: 2 * half + 8 };
    return [
      rectangle(field, WEIGHT.thin, 1),
      ...arrow([centre[0], centre[1] + half], [centre[0], centre[1] - half], WEIGHT.outline, HEAD),
    ];
  }
  const [right, down] =
    piece.height > piece.width
      ? [Math.sign(door.x + door.width / 2 - centre[0]), 0]
      : [0, Math.sign(door.y + door.height / 2 - centre[1])];
  const [fromX, fromY] = [centre[0] + (right * piece.width) / 2, centre[1] + (down * piece.height) / 2];
  return arrow([fromX, fromY], [fromX + right * REACH, fromY + down * REACH], WEIGHT.outline * 1.5, HEAD);
}

const EDGE = 2;
/** What is drawn narrower than this is filled: hatching would not show in it. */
const MEMBER_MAX = 26;
const REACH = 26;
const HEAD = 9;
