import { pick } from './chance.ts';
import { COST_EPSILON, costOfBins, placeInEmpty } from './first-plan.ts';
import { FITS, findPlace, type Looking, type Place, place, type Rule, SPLITS } from './placing.ts';
import type { PieceKind } from './problem.ts';
import { copyBin, type OpenBin, piecesIn, takeOut } from './rows.ts';

/** Bins on the bench, and pieces that lie beside them. */
export type Attempt = { readonly bins: readonly OpenBin[]; readonly left: readonly number[] };

/** What the bins of an attempt may cost together, and how many of each kind there are for it. */
export type Allowance = { readonly cost: number; readonly supply: readonly number[] };

/** A try takes pieces out of up to so many bins, and now and then all pieces of one. Both figures did best in the bench. */
const BINS_RUINED = 5;
const ALL_OUT = 0.3;
/** What a try and a piece cost beside the rows that are looked at, in looks. */
const LOOKS_A_TRY = 100;
const LOOKS_A_PIECE = 10;

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
  const left: number[] = [];
  for (const kind of shuffled(looking, out)) {
    const piece = problem.pieces[kind];
    if (piece === undefined) continue;
    looking.looks += LOOKS_A_PIECE;
    const where = findPlace(looking, piece, bins, 0, rule);
    if (where !== undefined) {
      place(ownPlace(where, bins, own), piece, kind);
      continue;
    }
    const opened = openFor(looking, piece, bins, rule, allowance);
    if (opened === undefined) left.push(kind);
    else {
      place(opened, piece, kind);
      bins.push(opened.bin);
      own.add(opened.bin);
    }
  }
  return { bins, left };
}

/** The place in a copy of the bin, where the bin is still the one that the attempt before this one knows. */
function ownPlace(where: Place, bins: OpenBin[], own: Set<OpenBin>): Place {
  if (own.has(where.bin)) return where;
  const copy = copyBin(where.bin);
  bins[bins.indexOf(where.bin)] = copy;
  own.add(copy);
  return { ...where, bin: copy, row: copy.rows[where.row.at] ?? where.row };
}

/** A place in a new bin of one of the kinds that there still are and that the allowance still pays. */
function openFor(
  looking: Looking,
  piece: PieceKind,
  bins: readonly OpenBin[],
  rule: Rule,
  allowance: Allowance,
): Place | undefined {
  const { problem, chance } = looking;
  const spent = costOfBins(problem, bins);
  const kinds = problem.bins.length;
  const from = kinds === 1 || chance() < 0.5 ? 0 : pick(chance, kinds);
  for (let step = 0; step < kinds; step += 1) {
    const kind = (from + step) % kinds;
    if (spent + (problem.bins[kind]?.cost ?? 0) > allowance.cost + COST_EPSILON) continue;
    const used = bins.reduce((count, bin) => count + (bin.kind === kind ? 1 : 0), 0);
    if (used >= (allowance.supply[kind] ?? 0)) continue;
    const where = placeInEmpty(looking, piece, kind, rule, undefined);
    if (where !== undefined) return where;
  }
  return undefined;
}

/** Largest first by one measure or another, with some noise. */
function shuffled({ problem, chance }: Looking, kinds: readonly number[]): readonly number[] {
  const measure = MEASURES[pick(chance, MEASURES.length)] ?? MEASURES[0];
  const noise = chance() * NOISE;
  const keys = kinds.map(kind => {
    const piece = problem.pieces[kind];
    return { kind, key: (piece === undefined ? 0 : measure(piece)) * (1 - noise * chance()) };
  });
  return keys.sort((one, two) => two.key - one.key || one.kind - two.kind).map(({ kind }) => kind);
}

const NOISE = 0.5;
const MEASURES: readonly [(piece: PieceKind) => number, ...((piece: PieceKind) => number)[]] = [
  piece => piece.area,
  piece => piece.length,
  piece => piece.width,
  piece => Math.max(piece.length, piece.width),
];
