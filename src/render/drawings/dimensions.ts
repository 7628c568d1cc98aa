import type { Length } from '../../units/length.ts';
import type { Mark } from '../figure.ts';
import { CAP_HEIGHT, line, type Pen, text, WEIGHT } from './pen.ts';

/** A stretch to be dimensioned: from one place to another along a side, in points, and how long it truly is. */
export type Stretch = { readonly from: number; readonly to: number; readonly length: Length };

/** How far a row of dimensions stands from the next, in points. */
export const ROW = 12;

/**
 * Dimensions above or below a drawing, on the line `y`: extension lines from the drawing's edge at `edge`, ticks, and
 * figures beyond the line. Figures that would run into each other are set in a second row, further out.
 */
export function across(
  stretches: readonly Stretch[],
  at: { y: number; edge: number },
  pen: Pen,
  size = 10,
): readonly Mark[] {
  const out = at.y < at.edge ? -1 : 1;
  const base = at.y + (out < 0 ? -5 : 5 + CAP_HEIGHT * size);
  let busyTo = Number.NEGATIVE_INFINITY;
  let row = 0;
  return stretches.flatMap(stretch => {
    const words = pen.print(stretch.length);
    const half = pen.measure(words, size, false) / 2;
    const middle = (stretch.from + stretch.to) / 2;
    row = middle - half < busyTo + 3 && row === 0 ? 1 : 0;
    busyTo = middle + half;
    return [
      ...extensions(stretch, at.edge, at.y, 'x'),
      line([stretch.from, at.y], [stretch.to, at.y]),
      text([middle, base + out * row * (size + 2)], words, { size }),
    ];
  });
}

/** Dimensions left or right of a drawing, on the line `x`; the figures stand upright, beyond the line. */
export function upright(
  stretches: readonly Stretch[],
  at: { x: number; edge: number },
  pen: Pen,
  size = 10,
): readonly Mark[] {
  const out = at.x < at.edge ? -1 : 1;
  return stretches.flatMap(stretch => [
    ...extensions(stretch, at.edge, at.x, 'y'),
    line([at.x, stretch.from], [at.x, stretch.to]),
    text([at.x + out * 4, (stretch.from + stretch.to) / 2 + (CAP_HEIGHT * size) / 2], pen.print(stretch.length), {
      size,
      align: out < 0 ? 'right' : 'left',
    }),
  ]);
}

/** How much room `upright` dimensions take beyond their line. */
export const roomFor = (lengths: readonly Length[], pen: Pen, size = 10): number =>
  5 + Math.max(0, ...lengths.map(length => pen.measure(pen.print(length), size, false)));

/** From beside the drawing to just past the dimension line, and a slanted tick where they cross. */
function extensions(stretch: Stretch, edge: number, at: number, axis: 'x' | 'y'): readonly Mark[] {
  const out = at < edge ? -1 : 1;
  const mark = (place: number): readonly Mark[] => {
    const [start, end] = [edge + out * 2, at + out * 3];
    return axis === 'x'
      ? [
          line([place, start], [place, end], WEIGHT.thin),
          line([place - 2.5, at + 2.5], [place + 2.5, at - 2.5], WEIGHT.edge),
        ]
      : [
          line([start, place], [end, place], WEIGHT.thin),
          line([at - 2.5, place + 2.5], [at + 2.5, place - 2.5], WEIGHT.edge),
        ];
  };
  return [...mark(stretch.from), ...mark(stretch.to)];
}
