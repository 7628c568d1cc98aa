import { type CutApart, type CutPiece, type CutTree, cutTrees, type Part } from './cut-tree.ts';
import type { BinKind, ClearStretch } from './problem.ts';
import type { Direction, OpenBin } from './rows.ts';

/** A rectangle in a bin's own coordinates: true sizes in the problem's units. */
export type Box = ClearStretch;

/** A cut in the problem's units; see `Cut` of the shop plan. */
export type SawCut = {
  readonly direction: Direction;
  readonly setting: number;
  readonly workpiece: number;
  readonly from: Box;
  readonly falls: Side;
  readonly stays: Side;
  readonly trim: boolean;
};

/** What is on one side of the blade. A leftover that has a defect or a trimmed edge in it is `spoilt` and never kept. */
export type Side =
  | { readonly kind: 'workpiece'; readonly number: number; readonly at: Box }
  | { readonly kind: 'piece'; readonly piece: CutPiece; readonly at: Box }
  | { readonly kind: 'leftover'; readonly spoilt: boolean; readonly at: Box }
  | { readonly kind: 'nothing' };

/** What a bin is cut on: how the blade bites, and how far fence and stop reach. */
export type Saw = { readonly kerf: number; readonly reach: { readonly [D in Direction]: number } };

/** What is still to be done to a stretch of wood. */
type Plan =
  | { readonly kind: 'leftover'; readonly spoilt: boolean }
  /** Cut apart as the tree says; `edge` of the width comes off before its first rip. */
  | { readonly kind: 'tree'; readonly tree: CutTree; readonly edge: number }
  /** `amount`, the kerf included, comes off the near side first. */
  | { readonly kind: 'trimmed'; readonly direction: Direction; readonly amount: number; readonly after: Plan }
  /** A clear stretch of true length `size` is cut off before a defect. */
  | { readonly kind: 'parted'; readonly size: number; readonly falls: Plan; readonly after: Plan };

type Stretch = { readonly at: Box; readonly plan: Plan };
type Division = {
  readonly direction: Direction;
  readonly setting: number;
  readonly falls: Stretch | undefined;
  readonly stays: Stretch | undefined;
  readonly trim: boolean;
};

/**
 * The cuts of a filled bin in sawing order: a row of cuts in one direction is made in one go on the stretch that stays,
 * and what fell is cut further when the row before it is done, so that cuts at one setting come together. `sides` is all
 * that came of it.
 * Sheets are trimmed on one edge and one end first; their far sides need no trim, because every row ends with a cut.
 * Boards are trimmed on the end first, and each length that comes off them along its edge.
 */
export function sawingOrder(
  saw: Saw,
  bin: OpenBin,
  kind: BinKind,
  stock: 'board' | 'sheet',
): { readonly cuts: readonly SawCut[]; readonly sides: readonly Side[] } {
  const cuts: SawCut[] = [];
  let numbers = 0;
  const whole: Stretch = {
    at: { along: 0, across: 0, length: kind.length, width: kind.width },
    plan: planOf(saw, bin, kind, stock),
  };
  const waiting: { readonly number: number; readonly stretch: Stretch }[] = [{ number: 0, stretch: whole }];

  const side = (stretch: Stretch | undefined): Side => {
    if (stretch === undefined) return { kind: 'nothing' };
    if (divide(saw, stretch) === undefined) return finished(stretch);
    numbers += 1;
    return { kind: 'workpiece', number: numbers, at: stretch.at };
  };

  for (let at = 0; at < waiting.length; at += 1) {
    let workpiece = waiting[at];
    while (workpiece !== undefined) {
      const division = divide(saw, workpiece.stretch);
      if (division === undefined) break;
      const falls = side(division.falls);
      const stays = side(division.stays);
      const { direction, setting, trim } = division;
      cuts.push({ direction, setting, workpiece: workpiece.number, from: workpiece.stretch.at, falls, stays, trim });
      const fell = next(falls, division.falls);
      const stayed = next(stays, division.stays);
      const goesOn = stayed !== undefined && (trim || divide(saw, stayed.stretch)?.direction === direction);
      if (fell !== undefined) waiting.push(fell);
      if (stayed !== undefined && !goesOn) waiting.push(stayed);
      workpiece = goesOn ? stayed : undefined;
    }
  }
  // A piece that is as large as the bin falls off nothing.
  const sides = cuts.length === 0 ? [finished(whole)] : cuts.flatMap(cut => [cut.falls, cut.stays]);
  return { cuts, sides };
}

const next = (
  side: Side,
  stretch: Stretch | undefined,
): { readonly number: number; readonly stretch: Stretch } | undefined =>
  side.kind === 'workpiece' && stretch !== undefined ? { number: side.number, stretch } : undefined;

function finished({ at, plan }: Stretch): Side {
  if (plan.kind === 'tree' && plan.tree.kind === 'piece') return { kind: 'piece', piece: plan.tree, at };
  return { kind: 'leftover', spoilt: plan.kind === 'leftover' && plan.spoilt, at };
}

/** Trims, and the clear stretches between defects, around the trees of a bin. */
function planOf(saw: Saw, bin: OpenBin, kind: BinKind, stock: 'board' | 'sheet'): Plan {
  const edge = kind.clear[0]?.across ?? 0;
  const trees = cutTrees(bin);
  let plan: Plan = { kind: 'leftover', spoilt: true };
  for (let index = kind.clear.length - 1; index >= 0; index -= 1) {
    const stretch = kind.clear[index];
    const before = kind.clear[index - 1];
    if (stretch === undefined) continue;
    const tree = trees[index];
    const own: Plan =
      tree === undefined
        ? { kind: 'leftover', spoilt: false }
        : { kind: 'tree', tree, edge: stock === 'board' ? edge : 0 };
    const reachesEnd = index === kind.clear.length - 1 && kind.endsClear;
    const after = reachesEnd
      ? own
      : { kind: 'parted' as const, size: stretch.length - saw.kerf, falls: own, after: plan };
    // What the cut before left standing begins one kerf behind the stretch before it.
    const from = before === undefined ? 0 : before.along + before.length;
    plan = trimmed('crosscut', stretch.along - from, after);
  }
  return stock === 'sheet' ? trimmed('rip', edge, plan) : plan;
}

const trimmed = (direction: Direction, amount: number, after: Plan): Plan =>
  amount > 0 ? { kind: 'trimmed', direction, amount, after } : after;

/** The next cut of a stretch; undefined where there is none to make. */
function divide(saw: Saw, { at, plan }: Stretch): Division | undefined {
  switch (plan.kind) {
    case 'leftover':
      return undefined;
    case 'trimmed':
      return trim(saw, at, plan.direction, plan.amount, plan.after);
    case 'parted':
      return { ...cut(saw, at, 'crosscut', plan.size, plan.falls, () => plan.after), trim: true };
    case 'tree':
      return divideTree(saw, at, plan.tree, plan.edge);
  }
}

/** The near side comes off. The rest is held against the fence where it reaches so far: a sliver there is no guide. */
function trim(saw: Saw, at: Box, direction: Direction, amount: number, after: Plan): Division {
  const [waste, rest] = split(saw, at, direction, amount - saw.kerf);
  const off = waste === undefined ? undefined : { at: waste, plan: { kind: 'leftover', spoilt: true } as const };
  const kept = rest === undefined ? undefined : { at: rest, plan: after };
  const keeps = extentOf(at, direction) - amount;
  return keeps <= saw.reach[direction]
    ? { direction, setting: keeps, falls: kept, stays: off, trim: true }
    : { direction, setting: Math.max(0, amount - saw.kerf), falls: off, stays: kept, trim: true };
}

function divideTree(saw: Saw, at: Box, tree: CutTree, edge: number): Division | undefined {
  const row = tree.kind === 'apart' ? tree : rowAround(saw, at, tree, edge);
  if (row === undefined) return undefined;
  if (row.direction === 'rip' && edge > 0) return trim(saw, at, 'rip', edge, { kind: 'tree', tree, edge: 0 });
  const { direction } = row;
  const extent = extentOf(at, direction);
  const head = headOf(saw, direction, row.parts, extent);
  if (head === undefined) return undefined;
  // What fills the stretch needs no cut, and what cannot be measured is freed piece by piece.
  const fills = head.size - saw.kerf >= extent || !canReach(saw, direction, head.size - saw.kerf, extent);
  if (row.parts.length === 1 && fills) return divideTree(saw, at, head.tree, edge);
  const tail = row.parts.filter(part => part !== head);
  return cut(saw, at, direction, head.size - saw.kerf, { kind: 'tree', tree: head.tree, edge }, stays =>
    planOfTail(saw, stays, direction, tail, edge),
  );
}

/** The part that is cut off first: the first that fence or stop can measure. */
export const headOf = (saw: Saw, direction: Direction, parts: readonly Part[], extent: number): Part | undefined =>
  parts.find(part => canReach(saw, direction, part.size - saw.kerf, extent)) ?? parts[0];

export const canReach = (saw: Saw, direction: Direction, size: number, extent: number): boolean =>
  size <= saw.reach[direction] || extent - size - saw.kerf <= saw.reach[direction];

/** The row that frees a piece of what lies around it; undefined where nothing does. Boards are crosscut first. */
export function rowAround(
  saw: Saw,
  at: { readonly length: number; readonly width: number },
  piece: CutPiece,
  edge: number,
): CutApart | undefined {
  const beyond = at.length - (piece.length - saw.kerf);
  const beside = at.width - (piece.width - saw.kerf);
  if (beyond <= 0 && beside <= 0) return undefined;
  // The larger leftover stays whole.
  const crosscut = beyond > 0 && (edge > 0 || beyond * at.width >= beside * at.length);
  return crosscut
    ? { kind: 'apart', direction: 'crosscut', parts: [{ tree: piece, size: piece.length }] }
    : { kind: 'apart', direction: 'rip', parts: [{ tree: piece, size: piece.width }] };
}

function planOfTail(saw: Saw, stays: Box, direction: Direction, tail: readonly Part[], edge: number): Plan {
  const [only] = tail;
  if (only === undefined) return { kind: 'leftover', spoilt: false };
  const fills = tail.length === 1 && only.size - saw.kerf >= extentOf(stays, direction);
  return { kind: 'tree', tree: fills ? only.tree : { kind: 'apart', direction, parts: tail }, edge };
}

/** Cuts `size` off the near side, measured from whichever side the fence or stop can reach. */
function cut(saw: Saw, at: Box, direction: Direction, size: number, near: Plan, far: (stays: Box) => Plan): Division {
  const [nearBox, farBox] = split(saw, at, direction, size);
  const one = nearBox === undefined ? undefined : { at: nearBox, plan: near };
  const two = farBox === undefined ? undefined : { at: farBox, plan: far(farBox) };
  if (size <= saw.reach[direction]) return { direction, setting: size, falls: one, stays: two, trim: false };
  const setting = farBox === undefined ? 0 : extentOf(farBox, direction);
  return { direction, setting, falls: two, stays: one, trim: false };
}

/** The two sides of a blade that begins `size` from the near side; a side without width is undefined. */
function split(
  saw: Saw,
  at: Box,
  direction: Direction,
  size: number,
): readonly [near: Box | undefined, far: Box | undefined] {
  const extent = extentOf(at, direction);
  const start = size + saw.kerf;
  const near = size <= 0 ? undefined : piece(at, direction, 0, size);
  return [near, start >= extent ? undefined : piece(at, direction, start, extent - start)];
}

const extentOf = (at: Box, direction: Direction): number => (direction === 'crosscut' ? at.length : at.width);

const piece = (at: Box, direction: Direction, from: number, size: number): Box =>
  direction === 'crosscut'
    ? { ...at, along: at.along + from, length: size }
    : { ...at, across: at.across + from, width: size };
