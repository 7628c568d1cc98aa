import { pick } from './chance.ts';
import { COST_EPSILON, placeInEmpty } from './first-plan.ts';
import { shuffled } from './noisy-order.ts';
import { FITS, findPlace, type Looking, type Place, place, type Rule, SPLITS } from './placing.ts';
import type { PieceKind } from './problem.ts';
import { copyBin, isOpen, type OpenBin, piecesIn, put, putInStrip, type Row, reorient, takeOut } from './rows.ts';

/** Bins on the bench, and pieces that lie beside them. */
export type Attempt = { readonly bins: readonly OpenBin[]; readonly left: readonly number[] };

/** What the bins of an attempt may cost together, and how many of each kind there are for it. */
export type Allowance = {
  readonly cost: number;
  readonly supply: readonly number[];
  /** Whether a try is worth nothing once a piece finds no place: it ends there. */
  readonly whole?: boolean;
  /** How large a strip of a row that divides a whole bin should be, for a piece of a size; the piece's own where undefined. */
  readonly widen?: ((row: Row, size: number) => number) | undefined;
};

/** A try takes pieces out of up to so many bins, and now and then all pieces of one. Both figures did best in the bench. */
const BINS_RUINED = 5;
const ALL_OUT = 0.5;
/** What a try, a piece that is put somewhere, and a row that is copied cost beside the looking, in looks. */
const LOOKS_A_TRY = 50;
const LOOKS_A_PIECE = 6;
const LOOKS_A_COPY = 18;

/**
 * One try of ruin and recreate: takes pieces out of a few bins and puts them and what lay beside back, in an order and by
 * a rule of chance. The bins of `attempt` are not touched; those that differ are copies. After G. Schrimpf et al.,
 * "Record breaking optimization results using the ruin and recreate principle", J. Comput. Phys. 159 (2000) 139-171.
 */
export function ruinAndRecreate(looking: Looking, attempt: Attempt, allowance: Allowance): Attempt {
  const bins = [...attempt.bins];
  const out = [...attempt.left];
  looking.looks += LOOKS_A_TRY;
  const own = new Set<OpenBin>();
  ruin(looking, bins, own, out);
  return recreate(looking, bins, own, out, allowance);
}

/** A try that takes out the same strip of whole bins wherever it is, so that its setting is not made any more. */
export function withoutStrip(looking: Looking, attempt: Attempt, allowance: Allowance): Attempt {
  const { chance, problem } = looking;
  const bins = [...attempt.bins];
  const out = [...attempt.left];
  looking.looks += LOOKS_A_TRY;
  const own = new Set<OpenBin>();
  const roots = bins[pick(chance, bins.length)]?.roots ?? [];
  const root = roots[pick(chance, roots.length)];
  const part = root?.parts[pick(chance, root.parts.length)];
  if (root === undefined || part === undefined) return attempt;
  const { direction } = root;
  const { size } = part;
  const first = pick(chance, bins.length);
  let ruined = 0;
  for (let step = 0; step < bins.length && ruined < STRIPS_RUINED; step += 1) {
    const at = (first + step) % bins.length;
    const bin = bins[at];
    if (bin === undefined || !bin.roots.some(each => each.direction === direction && hasPart(each, size))) continue;
    looking.looks += LOOKS_A_COPY * bin.rows.length;
    const copy = copyBin(bin);
    for (const each of copy.roots)
      for (let index = each.parts.length - 1; index >= 0; index -= 1)
        if (each.direction === direction && each.parts[index]?.size === size)
          takeOut(copy, each, index, problem.pieces, out);
    ruined += 1;
    bins[at] = copy;
    own.add(copy);
  }
  // What is taken out wants room that others have, too.
  ruin(looking, bins, own, out);
  return recreate(
    looking,
    bins.filter(bin => bin.count > 0),
    own,
    out,
    allowance,
  );
}

const STRIPS_RUINED = 4;

const hasPart = (row: Row, size: number): boolean => row.parts.some(part => part.size === size);

/** Puts what lies beside into the bins or into new ones, largest first, as many as there are. */
export function recreateAll(looking: Looking, attempt: Attempt): Attempt {
  const supply = looking.problem.bins.map(bin => bin.available);
  const bins = [...attempt.bins];
  return recreate(looking, bins, new Set(bins), attempt.left, { cost: Number.POSITIVE_INFINITY, supply });
}

function ruin(looking: Looking, bins: OpenBin[], own: Set<OpenBin>, out: number[]): void {
  const { chance } = looking;
  const count = Math.min(bins.length, 1 + pick(chance, BINS_RUINED));
  for (let time = 0; time < count; time += 1) {
    const at = pick(chance, bins.length);
    const bin = bins[at];
    if (bin === undefined || own.has(bin)) continue;
    if (chance() < ALL_OUT) {
      out.push(...piecesIn(bin));
      bins.splice(at, 1);
      continue;
    }
    looking.looks += LOOKS_A_COPY * bin.rows.length;
    const copy = copyBin(bin);
    takeOutSome(looking, copy, out);
    if (copy.count === 0) bins.splice(at, 1);
    else {
      bins[at] = copy;
      own.add(copy);
    }
  }
}

function takeOutSome(looking: Looking, bin: OpenBin, out: number[]): void {
  const { chance, problem } = looking;
  const times = 1 + pick(chance, 3);
  for (let time = 0; time < times; time += 1) {
    const rows = bin.rows.filter(row => row.parts.length > 0);
    const row = rows[pick(chance, rows.length)];
    if (row === undefined) return;
    takeOut(bin, row, pick(chance, row.parts.length), problem.pieces, out);
  }
}

function recreate(
  looking: Looking,
  bins: OpenBin[],
  own: Set<OpenBin>,
  out: readonly number[],
  allowance: Allowance,
): Attempt {
  const { problem, chance } = looking;
  const rule: Rule = {
    fit: FITS[pick(chance, FITS.length)] ?? 'area',
    split: SPLITS[pick(chance, SPLITS.length)] ?? 'shorter',
  };
  const stock = stockOf(looking, bins, allowance);
  const left: number[] = [];
  // What found no place finds none later in the same try, and no more do others of its size.
  const tooMany = new Set<number>();
  for (const kind of shuffled(looking, out)) {
    const piece = problem.pieces[kind];
    if (piece === undefined) continue;
    looking.looks += LOOKS_A_PIECE;
    if (tooMany.has(kind)) {
      left.push(kind);
      continue;
    }
    const where = findPlace(looking, kind, bins, 0, rule);
    if (where !== undefined) {
      putAt(ownPlace(looking, where, bins, own), piece, kind, allowance);
      continue;
    }
    const opened = openFor(looking, kind, stock, rule, allowance);
    if (opened === undefined) {
      left.push(kind);
      if (allowance.whole === true) break;
      tooMany.add(kind);
    } else {
      putAt(opened, piece, kind, allowance);
      bins.push(opened.bin);
      own.add(opened.bin);
      stock.spent += problem.bins[opened.bin.kind]?.cost ?? 0;
      stock.used[opened.bin.kind] = (stock.used[opened.bin.kind] ?? 0) + 1;
    }
  }
  return { bins, left };
}

function putAt(where: Place, piece: PieceKind, kind: number, { widen }: Allowance): void {
  const { bin, row, turned, way } = where;
  const opens = way === 'across' && isOpen(bin, row);
  if (widen === undefined || row.parent !== undefined || (way === 'across' && !opens)) {
    place(where, piece, kind);
    return;
  }
  if (opens) reorient(row);
  const size = (row.direction === 'crosscut') !== turned ? piece.length : piece.width;
  const wide = widen(row, size);
  if (wide > size) putInStrip(bin, row, wide, piece, kind, turned);
  else put(bin, row, piece, kind, turned, 'along');
}

/** What the bins of a try cost so far, and how many of each kind they are. */
type Taken = { spent: number; readonly used: number[] };

function stockOf({ problem }: Looking, bins: readonly OpenBin[], allowance: Allowance): Taken {
  const used = new Array<number>(allowance.supply.length).fill(0);
  for (let at = 0; at < bins.length; at += 1) {
    const kind = bins[at]?.kind ?? 0;
    used[kind] = (used[kind] ?? 0) + 1;
  }
  let spent = 0;
  for (const [kind, count] of used.entries()) spent += count * (problem.bins[kind]?.cost ?? 0);
  return { spent, used };
}

/** The place in a copy of the bin, where the bin is still the one that the attempt before this one knows. */
function ownPlace(looking: Looking, where: Place, bins: OpenBin[], own: Set<OpenBin>): Place {
  if (own.has(where.bin)) return where;
  looking.looks += LOOKS_A_COPY * where.bin.rows.length;
  const copy = copyBin(where.bin);
  bins[bins.indexOf(where.bin)] = copy;
  own.add(copy);
  return { ...where, bin: copy, row: copy.rows[where.row.at] ?? where.row };
}

/** A place in a new bin of one of the kinds that there still are and that the allowance still pays. */
function openFor(
  looking: Looking,
  piece: number,
  { spent, used }: Taken,
  rule: Rule,
  allowance: Allowance,
): Place | undefined {
  const { problem, chance } = looking;
  const kinds = problem.bins.length;
  const from = kinds === 1 || chance() < 0.5 ? 0 : pick(chance, kinds);
  for (let step = 0; step < kinds; step += 1) {
    const kind = (from + step) % kinds;
    if (spent + (problem.bins[kind]?.cost ?? 0) > allowance.cost + COST_EPSILON) continue;
    if ((used[kind] ?? 0) >= (allowance.supply[kind] ?? 0)) continue;
    const where = placeInEmpty(looking, piece, kind, rule, looking.easy ? problem.bins[kind]?.easy : undefined);
    if (where !== undefined) return where;
  }
  return undefined;
}
