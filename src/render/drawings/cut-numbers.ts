import type { Mark } from '../figure.ts';
import { type Box, CAP_HEIGHT, circle, LETTERING, line, type Pen, type Point, text, WEIGHT } from './pen.ts';

/** Where the blade runs, on paper. */
export type Blade = { readonly number: number; readonly from: Point; readonly to: Point };

/** Radius of a ring round two figures. */
export const RING = 6.5;

/** Numbers with their leaders, and how far down they reach where they needed room below the drawing. */
export type CutNumbers = { readonly marks: readonly Mark[]; readonly bottom: number };

/**
 * Each cut's number, where it touches no code of a piece and no other number: on its cut, in a ring as near to the cut's
 * beginning as there is room for one, else bare; else (on a board full of short pieces) beside it on a leader; and at last
 * below `field`, where there is always room. `busy` is what else it keeps off. Short cuts choose first: they have least
 * choice.
 */
export function cutNumbers(
  blades: readonly Blade[],
  lettering: readonly Mark[],
  { field, busy }: { readonly field: Box; readonly busy: readonly Box[] },
  pen: Pen,
): CutNumbers {
  const codes = lettering.flatMap(mark => (mark.kind === 'text' ? [areaOf(mark, pen)] : []));
  const taken: Box[] = [...codes, ...busy];
  const shortFirst = [...blades].sort((a, b) => lengthOf(a) - lengthOf(b) || a.number - b.number);
  let { bottom } = sidesOf(field);
  const marks = shortFirst.flatMap(blade => {
    const words = `${blade.number}`;
    const bare: Size = { width: pen.measure(words, LETTERING, false) + 3, height: BARE_HEIGHT };
    const ring = freePlace(blade, RINGED, taken, field);
    if (ring !== undefined) {
      taken.push(around(ring, RINGED));
      return [circle(ring, RING, WEIGHT.thin, 1), text(baseOf(ring), words)];
    }
    const onIt = freePlace(blade, bare, taken, field);
    const led =
      onIt === undefined
        ? (placeBeside(blade, bare, taken, field) ?? placeBelow(blade, bare, taken, codes, field))
        : undefined;
    const place = onIt ?? led?.place ?? blade.from;
    taken.push(around(place, bare));
    bottom = Math.max(bottom, sidesOf(around(place, bare)).bottom);
    const leader = led === undefined ? [] : [line(led.from, place, WEIGHT.thin)];
    return [...leader, text(baseOf(place), words, { mask: true })];
  });
  // Leaders first, so that no line runs over a number.
  return {
    marks: [...marks.filter(({ kind }) => kind === 'line'), ...marks.filter(({ kind }) => kind !== 'line')],
    bottom,
  };
}

type Size = { readonly width: number; readonly height: number };

const RINGED: Size = { width: 2 * RING + 1, height: 2 * RING + 1 };
/** Digits in the white that they are drawn on. */
const BARE_HEIGHT = 11;

const baseOf = ([x, y]: Point): Point => [x, y + (CAP_HEIGHT * LETTERING) / 2];

/** The first place along the cut where something of that size touches nothing. */
function freePlace(blade: Blade, size: Size, taken: readonly Box[], field: Box): Point | undefined {
  const way = wayOf(blade, size);
  const near = taken.filter(other => meet(other, way));
  for (const place of placesOn(blade, STEP)) {
    const box = around(place, size);
    if (isWithin(box, field) && near.every(other => !meet(box, other))) return place;
  }
  return undefined;
}

/** All that something of that size covers on its way along the cut. */
function wayOf({ from, to }: Blade, { width, height }: Size): Box {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  return around([from[0] + dx / 2, from[1] + dy / 2], { width: dx + width, height: dy + height });
}

/** Where a number stands that is not on its cut, and where on the cut its leader begins. */
type Led = { readonly place: Point; readonly from: Point };

/** The nearest place beside the cut where something of that size touches nothing, nor does its leader. */
function placeBeside(blade: Blade, size: Size, taken: readonly Box[], field: Box): Led | undefined {
  const starts = [...placesOn(blade, 4 * STEP)];
  const reach = wayOf(blade, { width: 2 * FARTHEST + size.width, height: 2 * FARTHEST + size.height });
  const near = taken.filter(other => meet(other, reach));
  for (let away = 3 * STEP; away <= FARTHEST; away += STEP) {
    for (const from of starts) {
      for (const [right, down] of AROUND) {
        const led: Led = { from, place: [from[0] + right * away, from[1] + down * away] };
        const box = around(led.place, size);
        if (isWithin(box, field) && near.every(other => !meet(box, other) && !crosses(led, other))) return led;
      }
    }
  }
  return undefined;
}

/**
 * In the first row below the field that has room, as near to being under the cut's end as it has it. Its leader may go
 * under other numbers, but, in the first rows, through no code.
 */
function placeBelow({ to }: Blade, size: Size, taken: readonly Box[], codes: readonly Box[], field: Box): Led {
  const { left, right, bottom } = sidesOf(field);
  for (let row = 0; ; row += 1) {
    const y = bottom + (row + 0.5) * size.height;
    for (let away = 0; away <= field.width; away += STEP) {
      for (const x of [to[0] - away, to[0] + away]) {
        const led: Led = { from: to, place: [x, y] };
        const box = around(led.place, size);
        const isLevel = size.width >= field.width || (box.x >= left && box.x + box.width <= right);
        const isClear = row >= ROWS_CHOSEN || codes.every(other => !crosses(led, other));
        if (isLevel && isClear && taken.every(other => !meet(box, other))) return led;
      }
    }
  }
}

const lengthOf = ({ from, to }: Pick<Blade, 'from' | 'to'>): number => to[0] - from[0] + to[1] - from[1];

/** Places along a cut, from its beginning to its end. */
function* placesOn(blade: Blade, step: number): Generator<Point> {
  const { from, to } = blade;
  const length = lengthOf(blade);
  for (let along = 0; along <= length; along += step) {
    const share = length === 0 ? 0 : along / length;
    yield [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
  }
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

/** How finely places are tried, and how far from the cut, in points. */
const STEP = 2;
const FARTHEST = 20 * STEP;
/** In so many rows below the drawing a leader keeps off the codes; where that cannot be, it runs over one. */
const ROWS_CHOSEN = 3;

const around = ([x, y]: Point, { width, height }: Size): Box => ({
  x: x - width / 2,
  y: y - height / 2,
  width,
  height,
});

const spanned = ([x1, y1]: Point, [x2, y2]: Point): Box => ({
  x: Math.min(x1, x2),
  y: Math.min(y1, y2),
  width: Math.abs(x2 - x1),
  height: Math.abs(y2 - y1),
});

const sidesOf = ({ x, y, width, height }: Box) => ({ left: x, top: y, right: x + width, bottom: y + height });

const meet = (one: Box, other: Box): boolean =>
  one.x < other.x + other.width &&
  other.x < one.x + one.width &&
  one.y < other.y + other.height &&
  other.y < one.y + one.height;

const isWithin = (one: Box, field: Box): boolean => {
  const [inner, outer] = [sidesOf(one), sidesOf(field)];
  return (
    inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom
  );
};

/** Whether a leader runs through a box: what is left of it between the box's sides, one pair after the other. */
function crosses({ from, place }: Led, box: Box): boolean {
  // Most boxes are nowhere near, and one quick look tells.
  if (!meet(spanned(from, place), box)) return false;
  const { left, top, right, bottom } = sidesOf(box);
  let [first, last] = [0, 1];
  for (const [start, end, low, high] of [
    [from[0], place[0], left, right],
    [from[1], place[1], top, bottom],
  ] as const) {
    const way = end - start;
    if (way === 0) {
      if (start <= low || start >= high) return false;
    } else {
      const [one, other] = [(low - start) / way, (high - start) / way];
      [first, last] = [Math.max(first, Math.min(one, other)), Math.min(last, Math.max(one, other))];
    }
  }
  return first < last;
}

/** What centred lettering takes, lying or standing: its ink, and what a tail hangs below the line. */
function areaOf({ x, y, size, text: words, bold = false, turn = 0 }: Extract<Mark, { kind: 'text' }>, pen: Pen): Box {
  const [long, above, below] = [pen.measure(words, size, bold) + 2, 0.74 * size, 0.24 * size];
  return turn === 90
    ? { x: x - above, y: y - long / 2, width: above + below, height: long }
    : { x: x - long / 2, y: y - above, width: long, height: above + below };
}
