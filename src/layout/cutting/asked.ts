import { type CutApart, type CutTree, cutTrees } from './cut-tree.ts';
import type { BinKind } from './problem.ts';
import type { Direction, OpenBin } from './rows.ts';
import { canReach, headOf, rowAround, type Saw } from './sawing.ts';

/** What the cuts of a bin ask of the saw and leave, without writing them down. Sizes are in the problem's units. */
export type Asked = {
  /** Is told of each cut that is no trim: its setting, and how often the direction has changed until it is made. */
  readonly cut: (direction: Direction, setting: number, stage: number) => void;
  /** Is told of each leftover that is clear of defects and trims. */
  readonly leftover: (length: number, width: number) => void;
};

/**
 * Tells of all cuts of a bin, as `sawingOrder` makes them and in no order: a search asks this of every bin that it tries,
 * and of few of them how they are sawn.
 */
export function askOf(saw: Saw, bin: OpenBin, kind: BinKind, stock: 'board' | 'sheet', asked: Asked): void {
  const trees = cutTrees(bin);
  const edge = kind.clear[0]?.across ?? 0;
  const width = stock === 'sheet' ? kind.width - edge : kind.width;
  for (let index = 0; index < kind.clear.length; index += 1) {
    const stretch = kind.clear[index];
    if (stretch === undefined) continue;
    const tree = trees[index];
    const reachesEnd = index === kind.clear.length - 1 && kind.endsClear;
    // What is clear up to the far trim is not parted from it: the trim falls off with the last leftover.
    const length = reachesEnd ? kind.length - stretch.along : stretch.length - saw.kerf;
    if (tree === undefined) asked.leftover(length, width);
    else askOfTree({ saw, asked }, tree, length, width, stock === 'board' ? edge : 0, 0, undefined);
  }
}

type Asking = { readonly saw: Saw; readonly asked: Asked };

function askOfTree(
  asking: Asking,
  tree: CutTree,
  length: number,
  width: number,
  edge: number,
  stage: number,
  last: Direction | undefined,
): void {
  const { saw } = asking;
  const row = tree.kind === 'apart' ? tree : rowAround(saw, { length, width }, tree, edge);
  if (row === undefined) return;
  if (row.direction === 'rip' && edge > 0) askOfRow(asking, row, length, width - edge, 0, stage, last);
  else askOfRow(asking, row, length, width, edge, stage, last);
}

function askOfRow(
  asking: Asking,
  row: CutApart,
  length: number,
  width: number,
  edge: number,
  stage: number,
  last: Direction | undefined,
): void {
  const { saw, asked } = asking;
  const { direction } = row;
  const crosscut = direction === 'crosscut';
  const own = direction === last ? stage : stage + 1;
  let extent = crosscut ? length : width;
  let parts = row.parts;
  for (;;) {
    const head = headOf(saw, direction, parts, extent);
    if (head === undefined) return;
    const size = head.size - saw.kerf;
    const across = (tree: CutTree, along: number, at: number, before: Direction | undefined): void =>
      crosscut
        ? askOfTree(asking, tree, along, width, edge, at, before)
        : askOfTree(asking, tree, length, along, edge, at, before);
    if (parts.length === 1 && (size >= extent || !canReach(saw, direction, size, extent))) {
      across(head.tree, extent, stage, last);
      return;
    }
    const rest = extent - size - saw.kerf;
    asked.cut(direction, size <= saw.reach[direction] ? size : Math.max(0, rest), own);
    across(head.tree, size, own, direction);
    stage = own;
    last = direction;
    parts = parts.filter(part => part !== head);
    const [only] = parts;
    if (rest <= 0) return;
    if (only === undefined) {
      if (crosscut) asked.leftover(rest, width);
      else asked.leftover(length, rest);
      return;
    }
    if (parts.length === 1 && only.size - saw.kerf >= rest) {
      across(only.tree, rest, stage, last);
      return;
    }
    extent = rest;
  }
}
