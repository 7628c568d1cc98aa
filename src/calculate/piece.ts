import { type Density, kg } from '../units/mass.ts';
import type { Part } from './door-set.ts';
import { fact, input, lengthInput, product } from './formula.ts';

/** A part before it has a code: `mark` is what tells it from the other parts of its door. */
export type Piece = Omit<Part, 'code' | 'barcode' | 'door'> & { readonly mark: string };

/**
 * A piece with its mass: length · width · thickness · density. Tongues count at the full thickness, grooves and rabbets
 * as wood: the mass errs by some percent on the heavy side, which is the safe one for hinges and hands.
 */
export function weighed(piece: Omit<Piece, 'mass'>, density: Density): Piece {
  const mass = fact(
    'mass',
    'kg',
    product(
      lengthInput('L', piece.length.value),
      lengthInput('B', piece.width.value),
      lengthInput('t', piece.thickness),
      input('ρ', 'kg/m³', density),
    ),
  );
  return { ...piece, mass: kg(mass.value.value), workings: [...piece.workings, mass] };
}
