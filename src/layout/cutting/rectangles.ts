import type { BinKind, ClearStretch } from './problem.ts';

/** Direction of a through cut, by the axis that it divides: a crosscut divides the length, a rip the width. */
export type Direction = 'crosscut' | 'rip';

/**
 * A rectangle of a bin that lies free, or that a piece was put into. It remembers how it was cut free: `stage` counts
 * the changes of direction so far and `last` is the direction of the cut that freed it.
 */
export type Rectangle = {
  readonly along: number;
  readonly across: number;
  readonly length: number;
  readonly width: number;
  readonly stage: number;
  readonly last: Direction | undefined;
  taken: Taken | undefined;
};

/** A piece in the corner of a rectangle, and the two rectangles that its through cuts leave. */
export type Taken = {
  readonly piece: number;
  readonly turned: boolean;
  readonly length: number;
  readonly width: number;
  readonly first: Direction;
  /** What the first cut leaves. */
  readonly rest: Rectangle | undefined;
  /** What the second cut leaves in the strip beside the piece. */
  readonly side: Rectangle | undefined;
};

/** A bin that is being filled. */
export type OpenBin = {
  readonly kind: number;
  readonly roots: readonly Rectangle[];
  readonly free: Rectangle[];
  /** Pieces in it by kind, in the order in which they were put in. */
  readonly pieces: number[];
  filled: number;
};

/** An empty bin. Where `first` is given its first cuts go in that direction. */
export function openBin(kind: number, bin: BinKind, first: Direction | undefined): OpenBin {
  // Stretches between defects were cut free by crosscuts.
  const last = bin.clear.length > 1 ? 'crosscut' : first;
  const roots = bin.clear.map(stretch => rectangle(stretch, last === undefined ? 0 : 1, last));
  return { kind, roots, free: [...roots], pieces: [], filled: 0 };
}

/** The stage in which the last cut around a piece of this size is made, when `first` is cut first. */
export function stageOf(free: Rectangle, length: number, width: number, first: Direction): number {
  const crosscuts = length < free.length;
  const rips = width < free.width;
  let { stage, last } = free;
  for (const direction of first === 'crosscut' ? CROSSCUT_FIRST : RIP_FIRST) {
    if (!(direction === 'crosscut' ? crosscuts : rips) || direction === last) continue;
    stage += 1;
    last = direction;
  }
  return stage;
}

const CROSSCUT_FIRST: readonly Direction[] = ['crosscut', 'rip'];
const RIP_FIRST: readonly Direction[] = ['rip', 'crosscut'];

/** Puts a piece into the free rectangle at `index` of a bin. */
export function put(
  bin: OpenBin,
  index: number,
  piece: { readonly kind: number; readonly turned: boolean; readonly length: number; readonly width: number },
  first: Direction,
): void {
  const free = bin.free[index];
  if (free === undefined) return;
  const { rest, side } = cutAround(free, piece.length, piece.width, first);
  free.taken = { piece: piece.kind, turned: piece.turned, length: piece.length, width: piece.width, first, rest, side };
  const last = bin.free.pop();
  if (last !== undefined && index < bin.free.length) bin.free[index] = last;
  if (rest !== undefined) bin.free.push(rest);
  if (side !== undefined) bin.free.push(side);
  bin.pieces.push(piece.kind);
  bin.filled += piece.length * piece.width;
}

function cutAround(
  free: Rectangle,
  length: number,
  width: number,
  first: Direction,
): { readonly rest: Rectangle | undefined; readonly side: Rectangle | undefined } {
  const { along, across } = free;
  const beyond = { along: along + length, across, length: free.length - length };
  const beside = { along, across: across + width, width: free.width - width };
  const crosscuts = beyond.length > 0;
  const rips = beside.width > 0;
  if (first === 'crosscut') {
    const one = crosscuts ? after(free, 'crosscut') : free;
    return {
      rest: crosscuts ? rectangle({ ...beyond, width: free.width }, one.stage, 'crosscut') : undefined,
      side: rips ? rectangle({ ...beside, length }, after(one, 'rip').stage, 'rip') : undefined,
    };
  }
  const one = rips ? after(free, 'rip') : free;
  return {
    rest: rips ? rectangle({ ...beside, length: free.length }, one.stage, 'rip') : undefined,
    side: crosscuts ? rectangle({ ...beyond, width }, after(one, 'crosscut').stage, 'crosscut') : undefined,
  };
}

const after = (
  free: { readonly stage: number; readonly last: Direction | undefined },
  direction: Direction,
): { readonly stage: number; readonly last: Direction } => ({
  stage: free.last === direction ? free.stage : free.stage + 1,
  last: direction,
});

const rectangle = (at: ClearStretch, stage: number, last: Direction | undefined): Rectangle => ({
  along: at.along,
  across: at.across,
  length: at.length,
  width: at.width,
  stage,
  last,
  taken: undefined,
});
