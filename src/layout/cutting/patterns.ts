import type { Demand } from './bound.ts';
import { pick } from './chance.ts';
import { type CutTree, cutTrees } from './cut-tree.ts';
import { type Filling, placeInEmpty } from './first-plan.ts';
import { FITS, findPlace, type Looking, place, type Rule, SPLITS } from './placing.ts';
import { type OpenBin, openBin, piecesIn } from './rows.ts';

/** A way to cut a bin of a kind: how many pieces of each kind come out, and the tree of each clear stretch. */
export type Pattern = {
  readonly bin: number;
  readonly counts: ReadonlyMap<number, number>;
  readonly trees: readonly (CutTree | undefined)[];
};

/** Patterns to start from: the bins of a filling. */
export const patternsOf = (filling: Filling): readonly Pattern[] =>
  filling.bins.map(bin => ({ bin: bin.kind, counts: countsOf(piecesIn(bin)), trees: cutTrees(bin) }));

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
    const where = placeInEmpty(looking, piece, index, { fit: 'area', split: 'shorter' }, undefined);
    if (where === undefined) continue;
    place(where, piece, kind);
    return patternsOf({ bins: [where.bin], left: [] });
  }
  return [];
}

/** A bin is filled so often in search of patterns that are worth more than they cost, and so many of those are kept. */
const TRIES = 40;
const KEPT = 12;

/**
 * Patterns worth more at these prices than `costs` of their bins: each bin is filled with the pieces that are worth most
 * for their area, with some noise. That finds most patterns in a hundredth of the time that it takes to find the best one.
 */
export function likelyPatterns(
  looking: Looking,
  demand: Demand,
  costs: readonly number[],
  prices: readonly number[],
): readonly Pattern[] {
  const found = new Map<string, { readonly bin: OpenBin; readonly worth: number }>();
  for (const [kind, bin] of looking.problem.bins.entries()) {
    for (let time = 0; bin.available > 0 && time < TRIES; time += 1) {
      const open = openBin(kind, bin, undefined);
      const worth = fillByPrice(looking, open, demand, prices) - (costs[kind] ?? 0);
      if (worth > LEAST_WORTH)
        found.set(`${kind} ${piecesIn(open).sort((one, two) => one - two)}`, { bin: open, worth });
    }
  }
  const best = [...found.values()].sort((one, two) => two.worth - one.worth).slice(0, KEPT);
  return patternsOf({ bins: best.map(({ bin }) => bin), left: [] });
}

const LEAST_WORTH = 1e-6;

function fillByPrice(looking: Looking, bin: OpenBin, demand: Demand, prices: readonly number[]): number {
  const { problem, chance } = looking;
  const rule: Rule = {
    fit: FITS[pick(chance, FITS.length)] ?? 'area',
    split: SPLITS[pick(chance, SPLITS.length)] ?? 'shorter',
  };
  const noise = chance() * 0.3;
  const order = problem.pieces
    .flatMap((piece, kind) => {
      const price = (demand[kind] ?? 0) > 0 ? (prices[kind] ?? 0) : 0;
      return price > 0 ? [{ piece, kind, key: (price / piece.area) * (1 - noise * chance()) }] : [];
    })
    .sort((one, two) => two.key - one.key || one.kind - two.kind);
  let worth = 0;
  for (const { piece, kind } of order) {
    if (piece.area > (problem.bins[bin.kind]?.area ?? 0) - bin.filled) continue;
    for (let copies = demand[kind] ?? 0; copies > 0; copies -= 1) {
      const where = findPlace(looking, piece, [bin], 0, rule);
      if (where === undefined) break;
      place(where, piece, kind);
      worth += prices[kind] ?? 0;
    }
  }
  return worth;
}
