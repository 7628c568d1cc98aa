import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Blade, cutNumbers } from '../../../src/render/drawings/cut-numbers.ts';
import { type Box, lettered, type Pen } from '../../../src/render/drawings/pen.ts';
import type { Mark } from '../../../src/render/figure.ts';
import { law, RUNS } from '../../support/runs.ts';
import { FONTS } from '../../support/typeset.ts';

const pen: Pen = { measure: FONTS.measure, print: String };
const FIELD: Box = { x: 0, y: 5, width: 540, height: 130 };
const ROOM = { field: FIELD, busy: [{ x: 460, y: 5, width: 70, height: 6 }] };

/** A board that is sawn again and again, down to pieces of a few points, each with a code that may be as large as it. */
const aPlan = fc
  .array(fc.record({ which: fc.nat(), isRip: fc.boolean(), share: fc.double({ min: 0.05, max: 0.95, noNaN: true }) }), {
    minLength: 1,
    maxLength: 60,
  })
  .map(cuts => {
    const pieces: Box[] = [{ x: 7, y: 12, width: 526, height: 116 }];
    const blades = cuts.map(({ which, isRip, share }, index): Blade => {
      const [{ x, y, width, height }] = pieces.splice(which % pieces.length, 1) as [Box];
      const [right, down] = isRip ? [0, height * share] : [width * share, 0];
      pieces.push(isRip ? { x, y, width, height: down } : { x, y, width: right, height }, {
        x: x + right,
        y: y + down,
        width: width - right,
        height: height - down,
      });
      const from = [x + right, y + down] as const;
      return { number: index + 1, from, to: isRip ? [x + width, from[1]] : [from[0], y + height] };
    });
    const codes = pieces.flatMap((piece, index) => {
      const code = `B${index}.1-SL`;
      const turn = FONTS.measure(code, 9, true) > piece.width ? 90 : 0;
      const [long, high] = turn === 0 ? [piece.width, piece.height] : [piece.height, piece.width];
      return long > FONTS.measure(code, 9, true) && high > 9 ? [lettered(piece, code, { turn, bold: true })] : [];
    });
    return { blades, codes };
  });

type Lettering = Extract<Mark, { kind: 'text' }>;
const isLettering = (mark: Mark): mark is Lettering => mark.kind === 'text';

/** Ink as an eye sees it: capitals and figures stand on the line. */
function inkOf({ x, y, text, size, bold = false, turn = 0 }: Lettering): Box {
  const [long, high] = [FONTS.measure(text, size, bold), 0.7 * size];
  return turn === 90
    ? { x: x - high, y: y - long / 2, width: high, height: long }
    : { x: x - long / 2, y: y - high, width: long, height: high };
}

const gapBetween = (one: Box, other: Box): number =>
  Math.max(
    one.x - other.x - other.width,
    other.x - one.x - one.width,
    one.y - other.y - other.height,
    other.y - one.y - one.height,
  );

describe('the numbers of cuts', () => {
  it('touch no code and no other number, and stay on the drawing, whatever the plan', () => {
    law(
      [aPlan],
      ({ blades, codes }) => {
        const { marks, bottom } = cutNumbers(blades, codes, ROOM, pen);
        const numbers = marks.filter(isLettering);
        expect(numbers.map(({ text }) => Number(text)).sort((a, b) => a - b)).toEqual(
          blades.map(({ number }) => number),
        );
        const inks = numbers.map(inkOf);
        const others = [...codes.filter(isLettering).map(inkOf), ...ROOM.busy];
        for (const [index, ink] of inks.entries()) {
          for (const other of [...others, ...inks.slice(index + 1)])
            expect(gapBetween(ink, other)).toBeGreaterThan(0.9);
          expect(ink.x).toBeGreaterThanOrEqual(FIELD.x);
          expect(ink.x + ink.width).toBeLessThanOrEqual(FIELD.width);
          expect(ink.y).toBeGreaterThanOrEqual(FIELD.y);
          expect(ink.y + ink.height).toBeLessThanOrEqual(bottom);
        }
      },
      RUNS / 10,
    );
  });

  it('are tied to their cut by a leader where they do not stand on it', () => {
    law(
      [aPlan],
      ({ blades, codes }) => {
        const { marks } = cutNumbers(blades, codes, ROOM, pen);
        const leaders = marks.flatMap(mark => (mark.kind === 'line' ? [mark] : []));
        for (const number of marks.filter(isLettering)) {
          const blade = blades.find(each => `${each.number}` === number.text);
          const centre = [number.x, number.y - 0.35 * number.size] as const;
          const isOn = (x: number, y: number) =>
            blade !== undefined &&
            x >= blade.from[0] - 0.01 &&
            x <= blade.to[0] + 0.01 &&
            y >= blade.from[1] - 0.01 &&
            y <= blade.to[1] + 0.01;
          const led = leaders.some(
            ({ x1, y1, x2, y2 }) => isOn(x1, y1) && Math.hypot(x2 - centre[0], y2 - centre[1]) < 0.01,
          );
          expect(isOn(...centre) || led, number.text).toBe(true);
        }
      },
      RUNS / 10,
    );
  });

  it('stand in a ring at the cut’s beginning where nothing is in the way', () => {
    const { marks, bottom } = cutNumbers([{ number: 7, from: [100, 40], to: [100, 90] }], [], ROOM, pen);
    expect(marks).toMatchObject([
      { kind: 'circle', x: 100, y: 40 },
      { kind: 'text', x: 100, text: '7' },
    ]);
    expect(bottom).toBe(135);
  });
});
