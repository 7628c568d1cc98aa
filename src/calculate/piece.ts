import { type Density, kg } from '../units/mass.ts';
import type { Part, Rectangle, Role } from './door-set.ts';
import { type Fact, fact, input, lengthInput, product, sum } from './formula.ts';
import { onceForEach } from './once-for.ts';

/** A part before it has a code: `mark` is what tells it from the other parts of its door. */
export type Piece = Omit<Part, 'code' | 'barcode' | 'door'> & { readonly mark: string };

/**
 * A piece with its mass: length · width · thickness · density. Tongues count at the full thickness, grooves and rabbets
 * as wood: the mass errs by some percent on the heavy side, which is the safe one for hinges and hands. Written out
 * field by field, since all that was ever made of a piece would be copied with the rest.
 */
export function weighed(piece: Omit<Piece, 'mass'>, density: Density): Piece {
  const { mark, role, stock, length, width, thickness, shoulder, place, make, workings } = piece;
  const mass = fact(MASS, { L: length.value, B: width.value, t: thickness, ρ: density });
  return {
    mark,
    role,
    stock,
    length,
    width,
    thickness,
    shoulder,
    place,
    make,
    mass: kg(mass.value.value),
    // A spread would leave room for sixteen more, which each piece would keep.
    workings: workings.concat([mass]),
  };
}

/** A piece that is cut as another one, for another place: its numbers are shared. */
export const sameAs = (piece: Piece, mark: string, role: Role, place: Rectangle): Piece => ({
  mark,
  role,
  stock: piece.stock,
  length: piece.length,
  width: piece.width,
  thickness: piece.thickness,
  shoulder: piece.shoulder,
  place,
  make: piece.make,
  mass: piece.mass,
  workings: piece.workings,
});

const MASS: Fact<'L' | 'B' | 't' | 'ρ'> = {
  of: 'mass',
  unit: 'kg',
  formula: product(lengthInput('L'), lengthInput('B'), lengthInput('t'), input('ρ', 'kg/m³')),
};

/** What pieces weigh together, by their marks with blanks between them. */
export const sumOfMasses = (marks: string): Fact<string> => ({
  of: 'door-mass',
  unit: 'kg',
  formula: sum(...marks.split(' ').map(mark => input(massOf(mark), 'kg'))),
});

/** The symbol of a piece's mass. */
export const massOf = onceForEach((mark: string) => `m(${mark})`);
