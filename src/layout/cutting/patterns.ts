import { pick } from './chance.ts';
import { type CutTree, cutTrees } from './cut-tree.ts';
import type { Demand } from './demand.ts';
import { type Filling, placeInEmpty } from './first-plan.ts';
import { FITS, findPlace, type Looking, place, type Rule, SPLITS } from './placing.ts';
import type { CuttingProblem, PieceKind } from './problem.ts';
import { isRow, type OpenBin, openBin, piecesIn, takeOut } from './rows.ts';

/** A way to cut a bin of a kind: how many pieces of each kind come out, and the tree of each clear stretch. */
export type Pattern = {
  readonly bin: number;
  readonly counts: ReadonlyMap<number, number>;
  readonly trees: readonly (CutTree | undefined)[];
};

/** The bins of a filling as patterns. */
export const patternsOf = (filling: Filling): readonly Pattern[] =>
  filling.bins.map(bin => ({ bin: bin.kind, counts: countsOf(piecesIn(bin)), trees: cutTrees(bin) }));

/** Different patterns to start from: bins of a filling, and of each kind of piece one alone. */
export function startingPatterns(looking: Looking, demand: Demand, { bins }: Filling): readonly Pattern[] {
  const supply = looking.problem.bins.map(bin => bin.available);
  const different = new Map<string, OpenBin>();
  for (const bin of bins) {
    if (different.size >= STARTING_FOR_A_KIND * demand.length) break;
    const name = contentsOf(bin);
    if (!different.has(name)) different.set(name, bin);
  }
  return [
    ...patternsOf({ bins: [...different.values()], left: [] }),
    ...demand.flatMap((count, kind) => (count > 0 ? singles(looking, kind, supply) : [])),
  ];
}

/** More patterns to start from make the first programs slower than they make them better. */
const STARTING_FOR_A_KIND = 2;

/** One name for all bins of a kind with the same pieces. */
export const contentsOf = (bin: OpenBin): string => `${bin.kind} ${piecesIn(bin).sort((one, two) => one - two)}`;

export function countsOf(kinds: readonly number[]): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const kind of kinds) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return counts;
}

/** Patterns of a single piece: in the first kind of bin that is left for it. */
export function singles(looking: Looking, kind: number, supply: readonly number[]): readonly Pattern[] {
  const piece = looking.problem.pieces[kind];
  for (const [index, left] of supply.entries()) {
    if (piece === undefined || left <= 0) continue;
    // A place that is passed over by chance would leave a piece that cannot be cut at all.
    const where = placeInEmpty({ ...looking, blinks: 0 }, kind, index, { fit: 'area', split: 'shorter' }, undefined);
    if (where === undefined) continue;
    place(where, piece, kind);
    return patternsOf({ bins: [where.bin], left: [] });
  }
  return [];
}

/** A bin is filled so often in search of patterns that are worth more than they cost, and so many of those are kept. */
const TRIES = 12;
const KEPT = 12;

/**
 * Patterns worth more at these prices than `costs` of their bins: each bin is filled with the pieces that are worth most
 * for their area, with some noise. That finds most patterns in a hundredth of the time that it takes to find the best one.
 */
export function likelyPatterns(
  looking: Looking,
  demand: Demand,
  costs: readonly number[],
  prices: ArrayLike<number>,
): readonly Pattern[] {
  const found = new Map<string, { readonly bin: OpenBin; readonly worth: number }>();
  for (const [kind, bin] of looking.problem.bins.entries()) {
    for (let time = 0; bin.available > 0 && time < TRIES; time += 1) {
      const open = openBin(kind, looking.problem, undefined);
      fillByPrice(looking, open, demand, prices);
      const worth = worthOf(piecesIn(open), prices) - (costs[kind] ?? 0);
      if (worth > LEAST_WORTH) found.set(contentsOf(open), { bin: open, worth });
    }
  }
  const best = [...found.values()].sort((one, two) => two.worth - one.worth).slice(0, KEPT);
  return patternsOf({ bins: best.map(({ bin }) => bin), left: [] });
}

/**
 * Takes out of a bin what is more than is asked for, and fills the room with the pieces that are worth most; whether
 * anything was too many.
 */
export function keepWithin(looking: Looking, demand: Demand, bin: OpenBin, prices: ArrayLike<number>): boolean {
  const rest = [...demand];
  for (const kind of piecesIn(bin)) rest[kind] = (rest[kind] ?? 0) - 1;
  if (rest.every(count => count >= 0)) return false;
  takeOutSurplus(
    looking.problem,
    bin,
    rest.map(count => -count),
  );
  fillByPrice(
    looking,
    bin,
    rest.map(count => Math.max(0, count)),
    prices,
  );
  return true;
}

/** Takes out pieces of which there are too many, and counts them off `surplus`. */
export function takeOutSurplus(problem: CuttingProblem, bin: OpenBin, surplus: number[]): void {
  for (const row of [...bin.rows]) {
    for (let at = row.parts.length - 1; at >= 0; at -= 1) {
      const part = row.parts[at];
      if (part === undefined || isRow(part) || (surplus[part.kind] ?? 0) <= 0) continue;
      surplus[part.kind] = (surplus[part.kind] ?? 0) - 1;
      takeOut(bin, row, at, problem.pieces, []);
    }
  }
}

const LEAST_WORTH = 1e-6;
/** What it takes to put a kind in its place in the order, in looks. */
const LOOKS_A_KIND = 12;

function fillByPrice(looking: Looking, bin: OpenBin, demand: Demand, prices: ArrayLike<number>): void {
  const { problem, chance } = looking;
  const rule: Rule = {
    fit: FITS[pick(chance, FITS.length)] ?? 'area',
    split: SPLITS[pick(chance, SPLITS.length)] ?? 'shorter',
  };
  const noise = chance() * 0.3;
  const keys = new Float64Array(problem.pieces.length);
  const order: number[] = [];
  for (let kind = 0; kind < keys.length; kind += 1) {
    const price = (demand[kind] ?? 0) > 0 ? (prices[kind] ?? 0) : 0;
    if (price <= 0) continue;
    keys[kind] = (price / (problem.pieces[kind]?.area ?? 1)) * (1 - noise * chance());
    order.push(kind);
  }
  order.sort((one, two) => (keys[two] ?? 0) - (keys[one] ?? 0) || one - two);
  looking.looks += LOOKS_A_KIND * order.length;
  const area = problem.bins[bin.kind]?.area ?? 0;
  const missed: PieceKind[] = [];
  for (const kind of order) {
    const piece = problem.pieces[kind];
    if (piece === undefined || piece.area > area - bin.filled) continue;
    // Where a smaller piece found no place, a larger one need not look.
    if (missed.some(({ length, width }) => piece.length >= length && piece.width >= width)) continue;
    for (let copies = demand[kind] ?? 0; copies > 0; copies -= 1) {
      const where = findPlace(looking, kind, [bin], 0, rule);
      if (where === undefined) {
        missed.push(piece);
        break;
      }
      place(where, piece, kind);
    }
  }
}

const worthOf = (kinds: readonly number[], prices: ArrayLike<number>): number =>
  kinds.reduce((worth, kind) => worth + (prices[kind] ?? 0), 0);
