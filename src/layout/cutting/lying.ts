import type { CutPiece } from './cut-tree.ts';
import { canMeasure } from './placing.ts';
import type { CuttingProblem } from './problem.ts';

/** A kind of piece as it lies in the bin. `twin` is the number of the other way to lie, or its own. */
export type Lying = {
  readonly kind: number;
  readonly turned: boolean;
  readonly length: number;
  readonly width: number;
  readonly twin: number;
};

/** Every way in which a piece comes out of the first clear stretch of a kind of bin; fence and stop must measure it. */
export function lyingIn({ bins, pieces }: CuttingProblem, bin: number): readonly Lying[] {
  const kindOfBin = bins[bin];
  const [stretch] = kindOfBin?.clear ?? [];
  const lying: Lying[] = [];
  if (kindOfBin === undefined || stretch === undefined) return lying;
  const { reach } = kindOfBin;
  for (const [kind, piece] of pieces.entries()) {
    const ways = piece.turns && piece.length !== piece.width ? [false, true] : [false];
    const able = ways.flatMap(turned => {
      const [length, width] = turned ? [piece.width, piece.length] : [piece.length, piece.width];
      const measured = canMeasure(reach.crosscut, length) && canMeasure(reach.rip, width);
      return measured && length <= stretch.length && width <= stretch.width ? [{ kind, turned, length, width }] : [];
    });
    const first = lying.length;
    for (const [at, way] of able.entries()) lying.push({ ...way, twin: first + (able.length - 1 - at) });
  }
  return lying;
}

export const pieceOf = ({ kind, turned, length, width }: Lying): CutPiece => ({
  kind: 'piece',
  piece: kind,
  turned,
  length,
  width,
});
