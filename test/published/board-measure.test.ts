import { describe, expect, it } from 'vitest';
import { boardFeet, netBoardFeet, surfaceMeasure } from '../../src/layout/buying/board-feet.ts';
import { length } from '../support/length.ts';

const board = (width: string, long: string) => ({ width: length(width), length: length(long) });

// Hardwood grading rules (NHLA), as a trade page summarises them: surface measure = width in inches × length in whole
// feet / 12, rounded to the whole for each board; board feet = surface measure × thickness, under 1 in counted as 1 in.
describe('hardwood board measure', () => {
  it.each([
    { width: '6 7/16', long: `10' 9"`, sm: 5, why: 'the rule’s own example: 5.36, the 9 in do not count' },
    { width: '6', long: `8'`, sm: 4, why: 'comes out whole' },
    { width: '8', long: `12'`, sm: 8, why: 'comes out whole' },
    { width: '7', long: `8'`, sm: 5, why: '4.67 goes up' },
    { width: '5', long: `8'`, sm: 3, why: '3.33 goes down' },
    { width: '9', long: `10'`, sm: 8, why: '7.5: the first exact half goes up' },
  ])('$width in × $long measures $sm ft²: $why', ({ width, long, sm }) => {
    expect(surfaceMeasure([board(width, long)])).toBe(sm);
  });

  it('rounds exact halves up and down in turn, so that two of 7.5 are 15', () => {
    const half = board('9', `10'`);
    expect(surfaceMeasure([half, half])).toBe(15);
    expect(surfaceMeasure([half, board('6', `8'`), half, half])).toBe(8 + 4 + 7 + 8);
  });

  it.each([
    { boards: [board('6', `8'`)], thickness: '1', feet: 4, why: '4/4' },
    { boards: [board('8', `12'`)], thickness: '1', feet: 8, why: '4/4' },
    { boards: [board('9', `10'`), board('9', `10'`)], thickness: '2', feet: 30, why: '8/4: 15 ft² × 2, twice 15' },
    { boards: [board('6', `8'`)], thickness: '3/4', feet: 4, why: 'under 1 in is counted as 1 in' },
    { boards: [board('6', `8'`)], thickness: '1 1/4', feet: 5, why: '5/4' },
    { boards: [board('5', `8'`)], thickness: '1 1/2', feet: 5, why: '6/4: 4.5 to the whole' },
  ])('$thickness in thick, $why: $feet board feet', ({ boards, thickness, feet }) => {
    expect(boardFeet(boards, length(thickness))).toBe(feet);
  });
});

// NIST Handbook 130: a board foot is 1 ft × 1 ft × 1 in, 144 in³.
describe('board feet of pieces', () => {
  it.each([
    { pieces: [board('12', '12')], thickness: '1', feet: 1, why: 'the definition' },
    { pieces: [board('6', '24')], thickness: '1', feet: 1, why: 'another shape of 144 in³' },
    {
      pieces: [board('2 1/4', '31'), board('2 1/4', '31')],
      thickness: '1',
      feet: (2 * 2.25 * 31) / 144,
      why: 'stiles',
    },
    { pieces: [board('12', '12')], thickness: '1/2', feet: 1, why: 'under 1 in is counted as 1 in' },
    { pieces: [board('12', '12')], thickness: '2', feet: 2, why: '8/4' },
  ])('$why: $feet', ({ pieces, thickness, feet }) => {
    expect(netBoardFeet(pieces, length(thickness))).toBeCloseTo(feet, 12);
  });
});
