import type { Length } from '../../units/length.ts';
import type { Mark, Measure } from '../figure.ts';

/** What a drawing is made with: how long a text will be, and how this job writes a length. */
export type Pen = {
  readonly measure: Measure;
  readonly print: (length: Length) => string;
};

export type Point = readonly [x: number, y: number];
export type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/**
 * The line weights of a drawing, in points: an outline is told from a dimension at arm's length, and the thinnest
 * survives a copier.
 */
export const WEIGHT = { outline: 1.4, edge: 0.9, thin: 0.75, hair: 0.75 } as const;
/** Smallest lettering, in points: what is still read at arm's length. */
export const LETTERING = 9;

export const line = (from: Point, to: Point, weight: number = WEIGHT.thin, dash?: readonly number[]): Mark => ({
  kind: 'line',
  x1: from[0],
  y1: from[1],
  x2: to[0],
  y2: to[1],
  weight,
  ...(dash === undefined ? {} : { dash }),
});

export const rectangle = (box: Box, weight: number = WEIGHT.edge, fill?: number): Mark => ({
  kind: 'polygon',
  closed: true,
  points: [
    [box.x, box.y],
    [box.x + box.width, box.y],
    [box.x + box.width, box.y + box.height],
    [box.x, box.y + box.height],
  ],
  weight,
  ...(fill === undefined ? {} : { fill }),
});

export const outline = (points: readonly Point[], weight: number = WEIGHT.edge, fill?: number): Mark => ({
  kind: 'polygon',
  closed: true,
  points,
  weight,
  ...(fill === undefined ? {} : { fill }),
});

export const circle = (centre: Point, radius: number, weight: number = WEIGHT.edge, fill?: number): Mark => ({
  kind: 'circle',
  x: centre[0],
  y: centre[1],
  radius,
  weight,
  ...(fill === undefined ? {} : { fill }),
});

export type Lettering = {
  readonly size?: number;
  readonly bold?: boolean;
  readonly align?: 'left' | 'centre' | 'right';
  readonly turn?: 0 | 90;
  readonly mask?: boolean;
};

/** Lettering with its base line at `at`; small type is never smaller than `LETTERING`. */
export const text = (at: Point, words: string, how: Lettering = {}): Mark => ({
  kind: 'text',
  x: at[0],
  y: at[1],
  text: words,
  size: how.size ?? LETTERING,
  align: how.align ?? 'centre',
  ...(how.bold === undefined ? {} : { bold: how.bold }),
  ...(how.turn === undefined ? {} : { turn: how.turn }),
  ...(how.mask === undefined ? {} : { mask: how.mask }),
});

/** Lettering in the middle of a box. */
export const lettered = (box: Box, words: string, how: Lettering = {}): Mark => {
  const half = CAP_HEIGHT * (how.size ?? LETTERING) * 0.5;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  return text(how.turn === 90 ? [x + half, y] : [x, y + half], words, { ...how, align: 'centre' });
};

/** Words that take no more than so much room: what is too long loses its middle, since codes differ at both ends. */
export function fitting(words: string, room: number, size: number, bold: boolean, { measure }: Pen): string {
  if (measure(words, size, bold) <= room) return words;
  const signs = [...words];
  const kept = (left: number): string =>
    `${signs.slice(0, Math.ceil(left / 2)).join('')}…${signs.slice(signs.length - Math.floor(left / 2)).join('')}`;
  let left = signs.length - 1;
  while (left > 0 && measure(kept(left), size, bold) > room) left -= 1;
  return kept(left);
}

/** Section lines at 45° over a box, `step` points apart: cut wood, or waste. */
export function hatched(box: Box, step = 5, weight: number = WEIGHT.hair): readonly Mark[] {
  const marks: Mark[] = [];
  for (let at = step; at < box.width + box.height; at += step) {
    const down = Math.min(at, box.height);
    const right = Math.min(at, box.width);
    marks.push(line([box.x + (at - down), box.y + down], [box.x + right, box.y + (at - right)], weight));
  }
  return marks;
}

/** A solid arrow head at `to`, coming from `from`. */
export function arrowHead(from: Point, to: Point, size = 5): Mark {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.sqrt(dx * dx + dy * dy) || 1;
  const [ux, uy] = [dx / length, dy / length];
  const [bx, by] = [to[0] - ux * size, to[1] - uy * size];
  const wing = size * 0.32;
  return {
    kind: 'polygon',
    closed: true,
    points: [to, [bx - uy * wing, by + ux * wing], [bx + uy * wing, by - ux * wing]],
    fill: 0,
  };
}

/** A line with a head at its end. */
export const arrow = (from: Point, to: Point, weight: number = WEIGHT.edge, size = 6): readonly Mark[] => [
  line(from, to, weight),
  arrowHead(from, to, size),
];

/** A line with heads at both ends: the sign for the direction of the grain. */
export const grainArrow = (from: Point, to: Point): readonly Mark[] => [
  line(from, to, WEIGHT.edge),
  arrowHead(from, to, 6),
  arrowHead(to, from, 6),
];

/** The crossed centre lines of a hole. */
export const centreLines = (centre: Point, reach: number): readonly Mark[] => [
  line([centre[0] - reach, centre[1]], [centre[0] + reach, centre[1]], WEIGHT.thin, CENTRE_DASH),
  line([centre[0], centre[1] - reach], [centre[0], centre[1] + reach], WEIGHT.thin, CENTRE_DASH),
];

/** A mark, pushed right and down. */
export function moved(mark: Mark, right: number, down: number): Mark {
  switch (mark.kind) {
    case 'line':
      return { ...mark, x1: mark.x1 + right, y1: mark.y1 + down, x2: mark.x2 + right, y2: mark.y2 + down };
    case 'polygon':
      return { ...mark, points: mark.points.map(([x, y]): Point => [x + right, y + down]) };
    case 'circle':
    case 'text':
      return { ...mark, x: mark.x + right, y: mark.y + down };
  }
}

/** A mark at a smaller scale, with its weights and its lettering as they are. */
export function shrunk(mark: Mark, scale: number): Mark {
  switch (mark.kind) {
    case 'line':
      return { ...mark, x1: mark.x1 * scale, y1: mark.y1 * scale, x2: mark.x2 * scale, y2: mark.y2 * scale };
    case 'polygon':
      return { ...mark, points: mark.points.map(([x, y]): Point => [x * scale, y * scale]) };
    case 'circle':
      return { ...mark, x: mark.x * scale, y: mark.y * scale, radius: mark.radius * scale };
    case 'text':
      return { ...mark, x: mark.x * scale, y: mark.y * scale };
  }
}

/** Height of a capital over the size of the type. */
export const CAP_HEIGHT = 0.7;
export const CENTRE_DASH: readonly number[] = [8, 2, 2, 2];
export const HIDDEN_DASH: readonly number[] = [4, 2.5];
