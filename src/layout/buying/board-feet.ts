import { INCH, type Length, longest, times } from '../../units/length.ts';

export type BoardSize = { readonly width: Length; readonly length: Length };

/**
 * Surface measure of a tally in ft²: for each board its width in inches × its length in whole feet / 12, to the nearest
 * whole (hardwood grading rules: NHLA, as a trade page summarises them). An exact half goes up and down in turn, so that
 * neither side of the sale gains by it (from memory of the rule book).
 */
export function surfaceMeasure(boards: readonly BoardSize[]): number {
  let total = 0;
  let up = true;
  for (const board of boards) {
    const twelfths = board.width * Math.floor(board.length / FOOT);
    const whole = Math.floor(twelfths / FOOT);
    const twice = 2 * (twelfths - whole * FOOT);
    const half = twice === FOOT;
    total += whole + (twice > FOOT || (half && up) ? 1 : 0);
    if (half) up = !up;
  }
  return total;
}

/** Board feet of a tally: surface measure × thickness, to the nearest whole; what is under 1 in counts as 1 in. */
export const boardFeet = (boards: readonly BoardSize[], thickness: Length): number =>
  Math.round((surfaceMeasure(boards) * countedThickness(thickness)) / INCH);

/**
 * Board feet of pieces as they are, unrounded: 1 ft × 1 ft × 1 in, that is 144 in³ (NIST Handbook 130). The thickness is
 * that of the board the pieces come from.
 */
export function netBoardFeet(pieces: readonly BoardSize[], thickness: Length): number {
  const inches = (length: Length): number => length / INCH;
  const area = pieces.reduce((sum, piece) => sum + inches(piece.width) * inches(piece.length), 0);
  return (area * inches(countedThickness(thickness))) / 144;
}

export const countedThickness = (thickness: Length): Length => longest(INCH, thickness);

const FOOT = times(12, INCH);
