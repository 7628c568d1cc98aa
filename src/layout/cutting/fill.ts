import { type CutApart, type CutTree, extent } from './cut-tree.ts';
import { canMeasure } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import { addRow, isOpen, isRow, newRow, type OpenBin, openBin, other, put, type Row, reorient } from './rows.ts';

/** A bin of a kind, cut as the trees of its clear stretches say. */
export function binOf(problem: CuttingProblem, kind: number, trees: readonly (CutTree | undefined)[]): OpenBin {
  const open = openBin(kind, problem, undefined);
  for (const [index, root] of open.roots.entries()) {
    const tree = trees[index];
    if (tree !== undefined) plant(problem, open, root, tree);
  }
  return open;
}

function plant(problem: CuttingProblem, bin: OpenBin, root: Row, tree: CutTree): void {
  if (tree.kind === 'piece') {
    const piece = problem.pieces[tree.piece];
    if (piece !== undefined) put(bin, root, piece, tree.piece, tree.turned, 'along');
    return;
  }
  if (tree.direction !== root.direction && isOpen(bin, root)) reorient(root);
  if (tree.direction === root.direction) fillRow(problem, bin, root, tree);
  else fillPart(problem, bin, root, tree, extent(tree, root.direction));
}

function fillRow(problem: CuttingProblem, bin: OpenBin, row: Row, tree: CutApart): void {
  for (const part of tree.parts) fillPart(problem, bin, row, part.tree, part.size);
}

function fillPart(problem: CuttingProblem, bin: OpenBin, row: Row, tree: CutTree, size: number): void {
  const across = other(row.direction);
  if (tree.kind === 'piece') {
    bin.filled += problem.pieces[tree.piece]?.area ?? 0;
    bin.count += 1;
  }
  if (tree.kind === 'piece' && extent(tree, across) === row.breadth && extent(tree, row.direction) === size) {
    row.left -= size;
    row.parts.push({ kind: tree.piece, turned: tree.turned, size });
    return;
  }
  const strip = newRow(across, size, row.breadth, row.stage + 1, row, size);
  row.left -= size;
  row.parts.push(strip);
  addRow(bin.rows, strip);
  if (tree.kind === 'apart') fillRow(problem, bin, strip, tree);
  else {
    const along = extent(tree, across);
    strip.left -= along;
    strip.parts.push({ kind: tree.piece, turned: tree.turned, size: along });
  }
}

/** Whether the saw can follow it: no leftover is too thin to come off, and fence or stop can measure every piece. */
export function isSawable(problem: CuttingProblem, bin: OpenBin): boolean {
  const reach = problem.bins[bin.kind]?.reach;
  return bin.rows.every(
    row =>
      (row.left === 0 || row.left >= problem.leastSkim) &&
      row.parts.every(part => {
        if (isRow(part) || reach === undefined) return reach !== undefined;
        const [along, across] = [reach[row.direction], reach[other(row.direction)]];
        return canMeasure(along, part.size) && canMeasure(across, row.breadth);
      }),
  );
}
