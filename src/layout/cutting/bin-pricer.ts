import { type CutTree, piecesOf } from './cut-tree.ts';
import type { Demand } from './demand.ts';
import { freeStretchOf, priceFree } from './free-pricing.ts';
import { countsOf, type Pattern } from './patterns.ts';
import type { Looking } from './placing.ts';
import type { Rounding } from './points.ts';
import { price } from './pricing.ts';
import type { BinKind, ClearStretch, CuttingProblem } from './problem.ts';
import { BOTH, type Direction } from './rows.ts';
import { stretchOf } from './stretch.ts';

/** The best patterns of a kind of bin at given prices. */
export type Best = {
  /** No way to cut a bin of this kind is worth more. */
  readonly most: number;
  readonly patterns: readonly { readonly value: number; readonly pattern: () => Pattern }[];
};

/** Looks for the best patterns of each kind of bin at given prices. */
export type Pricer = {
  readonly rounding: Rounding;
  /** What asking once takes, in looks. */
  readonly looks: number;
  readonly best: (prices: ArrayLike<number>) => readonly Best[];
};

/** A pricer for a budget of so many looks; undefined where pieces are too small or too many for its points. */
export function openPricer(looking: Looking, demand: Demand, rounding: Rounding, budget: number): Pricer | undefined {
  const { problem } = looking;
  const stretches = problem.bins.reduce((total, bin) => total + bin.clear.length * waysOf(bin).length, 0);
  const work = Math.min(WORK_MAX, Math.max(WORK_LEAST, (budget * PLACES_A_LOOK) / (PRICINGS * stretches)));
  const bins = problem.bins.map(bin =>
    waysOf(bin).map(first => bin.clear.map(clear => stretchPricer(problem, demand, clear, first, rounding, work))),
  );
  if (bins.flat(2).some(pricer => pricer === undefined)) return undefined;
  const looks = bins.flat(2).reduce((total, pricer) => total + (pricer?.looks ?? 0), 0);
  looking.looks += LOOKS_TO_OPEN * looks;
  const best = (prices: ArrayLike<number>): readonly Best[] =>
    bins.map((ways, bin) => {
      const found = ways.map(way => {
        const priced = way.flatMap(pricer => pricer?.price(prices) ?? []);
        return {
          value: priced.reduce((total, each) => total + each.value, 0),
          pattern: () => ({
            bin,
            counts: countsOf(priced.flatMap(each => each.kinds())),
            trees: priced.map(each => each.tree()),
          }),
        };
      });
      return { most: Math.max(...found.map(each => each.value)), patterns: found };
    });
  return { rounding, looks, best };
}

/** The best way to cut one clear stretch at given prices. */
type StretchPricer = {
  /** What pricing once takes, in looks. */
  readonly looks: number;
  readonly price: (prices: ArrayLike<number>) => {
    readonly value: number;
    readonly kinds: () => readonly number[];
    readonly tree: () => CutTree | undefined;
  };
};

/** What pricing a stretch once may look at, and how often a budget should pay it. */
const WORK_MAX = 1_500_000;
const WORK_LEAST = 30_000;
const PRICINGS = 30;

/** What lies between defects is cut free by crosscuts, whatever comes after. */
const waysOf = (bin: BinKind): readonly Direction[] => (bin.clear.length > 1 ? CROSSCUT : BOTH);

const CROSSCUT: readonly Direction[] = ['crosscut'];

function stretchPricer(
  problem: CuttingProblem,
  demand: Demand,
  clear: ClearStretch,
  first: Direction,
  rounding: Rounding,
  work: number,
): StretchPricer | undefined {
  // What nobody asks for fits nowhere.
  const pieces = problem.pieces.map((piece, kind) =>
    (demand[kind] ?? 0) > 0 ? piece : { ...piece, length: Number.POSITIVE_INFINITY },
  );
  if (rounding === 'down' && problem.stages > 3) {
    const stretch = freeStretchOf(pieces, clear);
    if (stretch === undefined) return undefined;
    const { count } = stretch.along;
    const looks = (count * stretch.across.count * (count + stretch.across.count)) / (2 * PLACES_A_LOOK);
    return { looks, price: prices => ({ ...priceFree(stretch, prices), tree: () => undefined }) };
  }
  const stretch = stretchOf(pieces, clear, first, rounding, work);
  if (stretch === undefined) return undefined;
  const stages = problem.stages === 2 ? 2 : 3;
  return {
    looks: (stretch.strips * stretch.cross.count * stretch.lies.length) / PLACES_A_LOOK,
    price: prices => {
      const { value, tree } = price(stretch, stages, prices);
      return { value, tree, kinds: () => kindsIn(tree()) };
    },
  };
}

/** Opening a pricer takes so many times what pricing takes. */
const LOOKS_TO_OPEN = 10;
/** Pricing looks at so many places in the time of one look of the search. */
const PLACES_A_LOOK = 5;
const kindsIn = (tree: CutTree | undefined): readonly number[] => (tree === undefined ? [] : piecesOf(tree));
