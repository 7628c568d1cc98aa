import { type Direction, isRow, type OpenBin, type Piece, type Row } from './rows.ts';

/**
 * How a stretch of wood is divided: it is a piece, or it is cut in one direction into parts that lie side by side, with
 * what is left over at the end. Neighbouring cuts of one direction are always one `CutApart`, so that leftovers meet.
 * Sizes include one kerf each.
 */
export type CutTree = CutPiece | CutApart;
export type CutPiece = {
  readonly kind: 'piece';
  readonly piece: number;
  readonly turned: boolean;
  readonly length: number;
  readonly width: number;
};
export type CutApart = { readonly kind: 'apart'; readonly direction: Direction; readonly parts: readonly Part[] };

/** `size` is measured in the direction of its `CutApart`. */
export type Part = { readonly tree: CutTree; readonly size: number };

/** A tree for each clear stretch of the bin; undefined where nothing is cut from it. */
export const cutTrees = (bin: OpenBin): readonly (CutTree | undefined)[] =>
  bin.roots.map(root => (root.parts.length === 0 ? undefined : treeOf(root)));

function treeOf(row: Row): CutTree {
  return apart(
    row.direction,
    row.parts.map(part => {
      const tree = isRow(part) ? treeOf(part) : pieceOf(row, part);
      return { tree, size: isRow(part) && part.roomy ? part.size : extent(tree, row.direction) };
    }),
  );
}

function pieceOf(row: Row, piece: Piece): CutPiece {
  const { kind, turned, size } = piece;
  return row.direction === 'crosscut'
    ? { kind: 'piece', piece: kind, turned, length: size, width: row.breadth }
    : { kind: 'piece', piece: kind, turned, length: row.breadth, width: size };
}

/** Parts in a row. A part that is itself divided in the same direction gives its parts to the row. */
export function apart(direction: Direction, parts: readonly Part[]): CutTree {
  const whole: Part[] = [];
  const roomy: Part[] = [];
  const take = (part: Part): void => {
    const { tree, size } = part;
    if (tree.kind === 'apart' && tree.direction === direction) for (const each of tree.parts) take(each);
    else if (size > extent(tree, direction)) roomy.push(part);
    else whole.push(part);
  };
  for (const part of parts) take(part);
  const [only] = whole;
  if (whole.length === 1 && roomy.length === 0 && only !== undefined) return only.tree;
  // Longest first, and equal settings side by side. What has room to spare comes last: where the row is full, its own
  // size need not be set.
  return { kind: 'apart', direction, parts: [...whole.sort(longestFirst), ...roomy.sort(longestFirst)] };
}

const longestFirst = (one: Part, two: Part): number => two.size - one.size;

/** What a tree needs in a direction. */
export function extent(tree: CutTree, direction: Direction): number {
  if (tree.kind === 'piece') return direction === 'crosscut' ? tree.length : tree.width;
  if (tree.direction === direction) return tree.parts.reduce((total, part) => total + part.size, 0);
  return tree.parts.reduce((largest, part) => Math.max(largest, extent(part.tree, direction)), 0);
}

/** Trees in a row, none with more room than it needs. */
export const together = (direction: Direction, trees: readonly CutTree[]): CutTree =>
  apart(
    direction,
    trees.map(tree => ({ tree, size: extent(tree, direction) })),
  );

/** The kinds of the pieces of a tree, in the order in which they are cut. */
export const piecesOf = (tree: CutTree): readonly number[] =>
  tree.kind === 'piece' ? [tree.piece] : tree.parts.flatMap(part => piecesOf(part.tree));
