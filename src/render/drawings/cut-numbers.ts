import type { Mark } from '../figure.ts';
import { type Box, CAP_HEIGHT, circle, LETTERING, type Pen, type Point, text, WEIGHT } from './pen.ts';

/** Where the blade runs, on paper. */
export type Blade = { readonly number: number; readonly from: Point; readonly to: Point };

/** Radius of a ring round two figures. */
export const RING = 6.5;

/**
 * Each cut's number on its line, where it hides no code of a piece: in a ring as near to the cut's beginning as there is
 * room for one, else bare, else (on a board full of short pieces) close by. Short cuts choose first: they have least
 * choice.
 */
export function cutNumbers(blades: readonly Blade[], lettering: readonly Mark[], pen: Pen): readonly Mark[] {
  const taken: Box[] = lettering.flatMap(mark => (mark.kind === 'text' ? [areaOf(mark, pen)] : []));
  const shortFirst = [...blades].sort((a, b) => lengthOf(a) - lengthOf(b) || a.number - b.number);
  return shortFirst.flatMap(blade => {
    const words = `${blade.number}`;
    const bare: Size = { width: pen.measure(words, LETTERING, false) + 2, height: CAP_HEIGHT * LETTERING + 3 };
    const ring = freePlace(blade, { width: 2 * RING, height: 2 * RING }, taken);
    const centre = ring ?? freePlace(blade, bare, taken) ?? placeNear(blade.from, bare, taken);
    taken.push(around(centre, ring === undefined ? bare : { width: 2 * RING, height: 2 * RING }));
    const base: Point = [centre[0], centre[1] + (CAP_HEIGHT * LETTERING) / 2];
    if (ring === undefined) return [text(base, words, { mask: true })];
    return [circle(centre, RING, WEIGHT.thin, 1), text(base, words)];
  });
}

type Size = { readonly width: number; readonly height: number };

/** The first place along the cut where something of that size hides nothing. */
function freePlace({ from, to }: Pick<Blade, 'from' | 'to'>, size: Size, taken: readonly Box[]): Point | undefined {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = lengthOf({ from, to });
  const way = around([from[0] + dx / 2, from[1] + dy / 2], { width: dx + size.width, height: dy + size.height });
  const near = taken.filter(other => meet(other, way));
  for (let along = 0; along <= length; along += STEP) {
    const share = length === 0 ? 0 : along / length;
    const place: Point = [from[0] + dx * share, from[1] + dy * share];
    const box = around(place, size);
    if (near.every(other => !meet(box, other))) return place;
  }
  return undefined;
}

/** The nearest place round a point where something of that size hides nothing; the point itself where there is none. */
function placeNear([x, y]: Point, size: Size, taken: readonly Box[]): Point {
  for (let away = STEP; away <= 20 * STEP; away += STEP) {
    for (const [right, down] of AROUND) {
      const place: Point = [x + right * away, y + down * away];
      const box = around(place, size);
      if (taken.every(other => !meet(box, other))) return place;
    }
  }
  return [x, y];
}

const AROUND: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
];

const lengthOf = ({ from, to }: Pick<Blade, 'from' | 'to'>): number => to[0] - from[0] + to[1] - from[1];

/** How finely places are tried, in points. */
const STEP = 2;

const around = ([x, y]: Point, { width, height }: Size): Box => ({
  x: x - width / 2,
  y: y - height / 2,
  width,
  height,
});

const meet = (one: Box, other: Box): boolean =>
  one.x < other.x + other.width &&
  other.x < one.x + one.width &&
  one.y < other.y + other.height &&
  other.y < one.y + one.height;

/** The ink of centred lettering, lying or standing. */
function areaOf({ x, y, size, text: words, bold = false, turn = 0 }: Extract<Mark, { kind: 'text' }>, pen: Pen): Box {
  const [long, high] = [pen.measure(words, size, bold), CAP_HEIGHT * size];
  return turn === 90
    ? { x: x - high, y: y - long / 2, width: high, height: long }
    : { x: x - long / 2, y: y - high, width: long, height: high };
}
