import type { CuttingProblem, PieceKind } from './problem.ts';

/** Direction of a through cut, by the axis that it divides: a crosscut divides the length, a rip the width. */
export type Direction = 'crosscut' | 'rip';
export const BOTH: readonly Direction[] = ['crosscut', 'rip'];

/**
 * A stretch of wood that is cut in one direction into parts side by side, with what is left of it at the end. A part is
 * a piece, or a stretch that is cut on in the other direction. Sizes include one kerf each. The order of the parts
 * makes no difference to what fits, so a part can be taken out of a row, and what it took is left at the end again.
 */
export type Row = {
  direction: Direction;
  /** Extent across the direction, the same for all its parts. */
  breadth: number;
  /** What is left in the direction. */
  left: number;
  /** How many times the direction has changed when this row is cut. */
  readonly stage: number;
  readonly parent: Row | undefined;
  /** What it takes of its parent's direction. */
  size: number;
  /** Whether it is cut off as large as it is, because that is set anyway; else only as large as its parts need. */
  roomy: boolean;
  readonly parts: (Row | Piece)[];
  /** Its place among the rows of its bin. */
  at: number;
};

/** A piece in a row; its size across the row's direction is the row's breadth. */
export type Piece = { readonly kind: number; readonly turned: boolean; readonly size: number };

/** What a bin asks of the saw and leaves for the rack. */
export type Handling = {
  /** Settings of fence and stop of its cuts, trims left out, each once: see `settingKey`. */
  readonly settings: readonly number[];
  /** How many cuts it takes, trims left out. */
  readonly cuts: number;
  /** Area of the largest leftover that is worth keeping, as a share of a bin. */
  readonly remnant: number;
  /** Whether its first cut goes the way in which a whole board or sheet is hard to guide. */
  readonly awkward: boolean;
  /** Kinds of stiles that come in an odd number, so that one is parted from its fellow. */
  readonly odd: number;
};

/**
 * One number for a direction and a distance in nanometres, the same for all wood of a job. What a first cut is set to has
 * another number beside it: whole boards and sheets are broken down before what comes off them is cut on.
 */
export const settingKey = (direction: Direction, setting: number, first: boolean): number =>
  4 * setting + (direction === 'rip' ? 2 : 0) + (first ? 1 : 0);

export const isOfFirstCut = (key: number): boolean => key % 2 === 1;

/** A bin that is being filled, with a row for each of its clear stretches. */
export type OpenBin = {
  readonly kind: number;
  readonly roots: readonly Row[];
  /** All rows of it, roots first. */
  rows: Row[];
  /** Area of the pieces in it, and how many they are. */
  filled: number;
  count: number;
  /** Whether the direction of the first cuts is given. */
  readonly fixed: boolean;
  /** What it asks of the saw, once that is worked out. A bin is asked when it is not changed any more. */
  handling: Handling | undefined;
  /** The kinds of pieces that no place was found for, 31 in a number. */
  readonly full: number[];
};

const BITS = 31;

/** Whether it is known that the bin has no place for a kind of piece, until something is taken out of it. */
export const isFull = (bin: OpenBin, kind: number): boolean =>
  (((bin.full[(kind / BITS) | 0] ?? 0) >>> (kind % BITS)) & 1) === 1;

export function setFull({ full }: OpenBin, kind: number): void {
  const at = (kind / BITS) | 0;
  full[at] = (full[at] ?? 0) | (1 << (kind % BITS));
}

/** An empty bin. Where `first` is given its first cuts go in that direction, else as the first piece has it. */
export function openBin(kind: number, { bins, pieces }: CuttingProblem, first: Direction | undefined): OpenBin {
  const bin = bins[kind];
  if (bin === undefined) throw new RangeError('a bin of no kind');
  // Stretches between defects are cut free by crosscuts.
  const direction = bin.clear.length > 1 ? 'crosscut' : (first ?? 'crosscut');
  const roots = bin.clear.map(stretch =>
    direction === 'crosscut'
      ? newRow(direction, stretch.width, stretch.length, 1, undefined, 0)
      : newRow(direction, stretch.length, stretch.width, 1, undefined, 0),
  );
  const rows: Row[] = [];
  for (const root of roots) addRow(rows, root);
  const fixed = bin.clear.length > 1 || first !== undefined;
  return {
    kind,
    roots,
    rows,
    filled: 0,
    count: 0,
    fixed,
    handling: undefined,
    full: new Array<number>(Math.ceil(pieces.length / BITS)).fill(0),
  };
}

export const newRow = (
  direction: Direction,
  breadth: number,
  left: number,
  stage: number,
  parent: Row | undefined,
  size: number,
): Row => ({ direction, breadth, left, stage, parent, size, roomy: false, parts: [], at: 0 });

export const isRow = (part: Row | Piece): part is Row => 'parts' in part;

/** The direction of a root without parts is still open. */
export const isOpen = (bin: OpenBin, row: Row): boolean =>
  row.parent === undefined && !bin.fixed && row.parts.length === 0;

/** Turns a root without parts into the other direction. */
export function reorient(row: Row): void {
  row.direction = row.direction === 'rip' ? 'crosscut' : 'rip';
  [row.breadth, row.left] = [row.left, row.breadth];
}

/**
 * Puts a piece at the end of a row: `along` in its direction, or, first cut `across` it, with the rest of the row
 * for itself and its neighbours in the other direction.
 */
export function put(
  bin: OpenBin,
  row: Row,
  piece: PieceKind,
  kind: number,
  turned: boolean,
  way: 'along' | 'across',
): void {
  if (way === 'across' && isOpen(bin, row)) {
    reorient(row);
    putAlong(bin, row, piece, kind, turned);
  } else if (way === 'along') putAlong(bin, row, piece, kind, turned);
  else {
    const strip = newRow(other(row.direction), row.left, row.breadth, row.stage + 1, row, row.left);
    row.left = 0;
    row.parts.push(strip);
    addRow(bin.rows, strip);
    putAlong(bin, strip, piece, kind, turned);
  }
  bin.filled += piece.area;
  bin.count += 1;
}

function putAlong(bin: OpenBin, row: Row, piece: PieceKind, kind: number, turned: boolean): void {
  const crosscut = (row.direction === 'crosscut') !== turned;
  const along = crosscut ? piece.length : piece.width;
  const across = crosscut ? piece.width : piece.length;
  row.left -= along;
  if (across === row.breadth) {
    row.parts.push({ kind, turned, size: along });
    return;
  }
  const strip = newRow(other(row.direction), along, row.breadth - across, row.stage + 1, row, along);
  strip.parts.push({ kind, turned, size: across });
  row.parts.push(strip);
  addRow(bin.rows, strip);
}

/** Puts a piece into a new strip of a row that is wider than the piece and stays so: it is cut at a setting that there is. */
export function putInStrip(
  bin: OpenBin,
  row: Row,
  size: number,
  piece: PieceKind,
  kind: number,
  turned: boolean,
): void {
  const strip = newRow(other(row.direction), size, row.breadth, row.stage + 1, row, size);
  strip.roomy = true;
  row.left -= size;
  row.parts.push(strip);
  addRow(bin.rows, strip);
  putAlong(bin, strip, piece, kind, turned);
  bin.filled += piece.area;
  bin.count += 1;
}

export function addRow(rows: Row[], row: Row): void {
  row.at = rows.length;
  rows.push(row);
}

export const other = (direction: Direction): Direction => (direction === 'rip' ? 'crosscut' : 'rip');

/** Takes a part out of its row and adds the kinds of its pieces to `out`. A row that is empty then goes too. */
export function takeOut(bin: OpenBin, row: Row, index: number, pieces: readonly PieceKind[], out: number[]): void {
  const part = row.parts[index];
  if (part === undefined) return;
  const from = out.length;
  collect(part, out);
  for (let at = from; at < out.length; at += 1) bin.filled -= pieces[out[at] ?? 0]?.area ?? 0;
  bin.count -= out.length - from;
  remove(row, index);
  bin.full.fill(0);
  bin.rows = [];
  for (const root of bin.roots) listRows(root, bin.rows);
}

function remove(row: Row, index: number): void {
  row.left += row.parts[index]?.size ?? 0;
  row.parts.splice(index, 1);
  if (row.parts.length === 0 && row.parent !== undefined) remove(row.parent, row.parent.parts.indexOf(row));
}

function collect(part: Row | Piece, out: number[]): void {
  if (!isRow(part)) out.push(part.kind);
  else for (const each of part.parts) collect(each, out);
}

function listRows(row: Row, rows: Row[]): void {
  addRow(rows, row);
  for (const part of row.parts) if (isRow(part)) listRows(part, rows);
}

/** The kinds of the pieces in a bin. */
export function piecesIn(bin: OpenBin): number[] {
  const kinds: number[] = [];
  for (const root of bin.roots) collect(root, kinds);
  return kinds;
}

/** A copy that shares nothing with the bin. Its rows stand in the same places. */
export function copyBin(bin: OpenBin): OpenBin {
  const rows: Row[] = new Array(bin.rows.length);
  const roots = bin.roots.map(root => copyRow(root, undefined, rows));
  const { kind, filled, count, fixed, full } = bin;
  return { kind, roots, rows, filled, count, fixed, handling: undefined, full: full.slice() };
}

function copyRow(row: Row, parent: Row | undefined, rows: Row[]): Row {
  const { direction, breadth, left, stage, size, roomy, at } = row;
  const copy: Row = { direction, breadth, left, stage, parent, size, roomy, parts: [], at };
  rows[at] = copy;
  for (const part of row.parts) copy.parts.push(isRow(part) ? copyRow(part, copy, rows) : part);
  return copy;
}
