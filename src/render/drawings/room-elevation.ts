import type { Door } from '../../calculate/door-set.ts';
import type { Figure, Mark } from '../figure.ts';
import { boxOf, placed } from './door-elevation.ts';
import { fitting, HIDDEN_DASH, line, moved, type Pen, rectangle, text, WEIGHT } from './pen.ts';

/**
 * The fronts of a room in cabinet order, all at one scale and standing on one line, with their codes: a row for each
 * width of paper.
 */
export function roomElevations(doors: readonly Door[], pen: Pen, width: number): readonly Figure[] {
  const scale = scaleFor(doors);
  const rows: Door[][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const door of doors) {
    const needed = place(door, scale, pen);
    if (used + needed > width) {
      rows.push([]);
      used = 0;
    }
    rows.at(-1)?.push(door);
    used += needed;
  }
  return rows.map(row => elevationRow(row, scale, pen, width));
}

/** The tallest front of the room takes `TALLEST` points, and none is drawn larger than 1 : 12. */
const scaleFor = (doors: readonly Door[]): number =>
  Math.min(LARGEST, TALLEST / Math.max(...doors.map(door => door.height.value)));

/** A front with its code under it and a space beside it. */
const place = (door: Door, scale: number, pen: Pen): number =>
  Math.max(door.width.value * scale, pen.measure(codeOf(door, pen), CODE_SIZE, true)) + GAP;

/** A code that is longer than any front is wide would leave the paper. */
const codeOf = ({ code }: Door, pen: Pen): string => fitting(code, CODE_MAX, CODE_SIZE, true, pen);

function elevationRow(doors: readonly Door[], scale: number, pen: Pen, width: number): Figure {
  const ground = 2 + scale * Math.max(...doors.map(door => door.height.value));
  const marks: Mark[] = [line([0, ground], [width, ground], WEIGHT.thin)];
  let x = 0;
  for (const door of doors) {
    const room = place(door, scale, pen);
    const left = x + (room - door.width.value * scale) / 2;
    const down = ground - door.height.value * scale;
    marks.push(...front(door, scale).map(mark => moved(mark, left, down)));
    marks.push(text([x + room / 2, ground + CODE_SIZE + 3], codeOf(door, pen), { size: CODE_SIZE, bold: true }));
    x += room;
  }
  return { width, height: ground + CODE_SIZE + 8, marks };
}

function front(door: Door, scale: number): readonly Mark[] {
  const paper = { width: door.width.value * scale, height: door.height.value * scale };
  const at = placed(door, { left: 0, right: 0, top: 0, bottom: 0 }, paper);
  const { box } = at;
  const right = box.x + box.width;
  const [hung, free] = door.hingeSide === 'left' ? [box.x, right] : [right, box.x];
  return [
    rectangle(box, WEIGHT.edge),
    ...door.sights.map(sight => rectangle(boxOf(sight, at), WEIGHT.thin)),
    ...(door.hingeSide === undefined
      ? []
      : [
          line([free, box.y], [hung, box.y + box.height / 2], WEIGHT.hair, HIDDEN_DASH),
          line([free, box.y + box.height], [hung, box.y + box.height / 2], WEIGHT.hair, HIDDEN_DASH),
        ]),
  ];
}

const CODE_SIZE = 9;
const GAP = 8;
const CODE_MAX = 160;
const TALLEST = 96;
/** 1 : 12, an inch to the foot, in points to a nanometre. */
const LARGEST = 72 / 25_400_000 / 12;
