import type { CutPiece } from './cut-tree.ts';
import { canMeasure } from './placing.ts';
import type { CuttingProblem, PieceKind } from './problem.ts';

/** A kind of piece as it lies in a stretch. */
export type Lie = {
  readonly kind: number;
  readonly turned: boolean;
  readonly length: number;
  readonly width: number;
};

/** The ways in which pieces may lie in a stretch. */
export const waysToFit = (
  pieces: readonly PieceKind[],
  stretch: { readonly length: number; readonly width: number },
): readonly Lie[] =>
  pieces
    .flatMap((piece, kind) => [
      { kind, turned: false, length: piece.length, width: piece.width },
      ...(piece.turns ? [{ kind, turned: true, length: piece.width, width: piece.length }] : []),
    ])
    .filter(lie => lie.length <= stretch.length && lie.width <= stretch.width);

/** `twin` is the number of the other way in which the same piece may lie, or its own. */
export type Lying = Lie & { readonly twin: number };

/**
 * Whether all bins are of one kind, and each is one stretch of which a blade can take off as little as it likes: where
 * pieces lie in one of them is then all there is to know of a plan.
 */
export const isPlain = ({ bins, leastSkim }: CuttingProblem): boolean =>
  bins.length === 1 && bins[0]?.clear.length === 1 && leastSkim === 0;

/** Every different way in which a piece comes out of a plain bin: fence and stop must measure it. */
export function lyingIn({ bins, pieces }: CuttingProblem): readonly Lying[] {
  const [bin] = bins;
  const [stretch] = bin?.clear ?? [];
  if (bin === undefined || stretch === undefined) return [];
  const ways = waysToFit(pieces, stretch).filter(
    ({ turned, length, width }) =>
      !(turned && length === width) && canMeasure(bin.reach.crosscut, length) && canMeasure(bin.reach.rip, width),
  );
  return ways.map((way, at) => ({
    ...way,
    twin: [at - 1, at + 1].find(beside => ways[beside]?.kind === way.kind) ?? at,
  }));
}

export const pieceOf = ({ kind, turned, length, width }: Lie): CutPiece => ({
  kind: 'piece',
  piece: kind,
  turned,
  length,
  width,
});
