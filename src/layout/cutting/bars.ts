import type { Solver } from '../solver.ts';
import { type Bars, bestCuts, type Cuts } from './bar-pricing.ts';
import { solveUntil, wholeBins } from './column-generation.ts';
import { withoutSurplus } from './cover.ts';
import { type CutPiece, together } from './cut-tree.ts';
import type { Demand } from './demand.ts';
import { binOf, isSawable } from './fill.ts';
import type { Filling } from './first-plan.ts';
import { countsOf } from './patterns.ts';
import type { Looking } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import { type Direction, type OpenBin, piecesIn } from './rows.ts';

/**
 * Cuts pieces from bars of one kind, where no two of them fit beside each other, so that only lengths count. The linear
 * program over all ways to cut a bar proves how many are needed (P. C. Gilmore, R. E. Gomory, "A linear programming
 * approach to the cutting-stock problem", Operations Research 9 (1961) 849-859). Dives make whole bars of it: ways that
 * are cut whole times, or nearly, are kept, or else the one with the largest share, and the rest is priced anew, until
 * all is cut. Undefined where the pieces are cut in two directions, or from bars of several kinds.
 */
export function fewestBars(
  looking: Looking,
  demand: Demand,
  best: Filling,
  solver: Solver,
  looks: number,
): { readonly filling: Filling; readonly bound: number } | undefined {
  const bars = barsOf(looking.problem);
  if (bars === undefined || best.left.length > 0) return undefined;
  const mix = openMix(looking, bars, demand, solver, looking.looks + looks);
  try {
    for (const bin of best.bins) mix.add(countsOf(piecesIn(bin)));
    const bound = wholeBins(mix.generate(demand)?.bound ?? 0);
    let filling = best;
    for (let dives = 0; filling.bins.length > bound && !mix.isOver(); dives += 1) {
      const kept = dive(looking, mix, demand, filling.bins.length, dives === 0 ? 0 : NOISE);
      const dived = kept?.map(cuts => barOf(looking.problem, bars, cuts));
      if (dived !== undefined) filling = withoutSurplus(looking.problem, demand, dived);
    }
    return { filling, bound };
  } finally {
    mix.close();
  }
}

/** A share so large is taken for whole: that halves the time of a dive. */
const WHOLE = 0.75;
/** Dives after the first end elsewhere: to each share comes so much by chance. */
const NOISE = 0.4;
/** So many of the largest shares are chosen among. */
const CHOICES = 12;
/** The solver's answers are exact to about a millionth. */
const EPSILON = 1e-6;

/** The ways to cut fewer than `most` bars, one for each bar; undefined where this dive ends at as many, or in time. */
function dive({ chance }: Looking, mix: Mix, demand: Demand, most: number, noise: number): readonly Cuts[] | undefined {
  const left = [...demand];
  const kept: Cuts[] = [];
  const keep = (way: number, times: number): void => {
    mix.keep(way, times);
    const cuts = mix.ways[way] ?? new Map<number, number>();
    for (let time = 0; time < times; time += 1) kept.push(cuts);
    for (const [kind, count] of cuts) left[kind] = Math.max(0, (left[kind] ?? 0) - count * times);
  };
  while (left.some(count => count > 0)) {
    const mixed = mix.generate(left);
    if (mixed === undefined || wholeBins(mixed.cost) >= most) break;
    const shares: { readonly way: number; readonly key: number }[] = [];
    const before = kept.length;
    for (const [way, times] of mixed.open.entries()) {
      if (times >= WHOLE) keep(way, Math.max(1, Math.floor(times + EPSILON)));
      else if (times > EPSILON) shares.push({ way, key: times });
    }
    if (kept.length > before) continue;
    const [first] = shares
      .sort((one, two) => two.key - one.key)
      .slice(0, CHOICES)
      .map(({ way, key }) => ({ way, key: key + noise * chance() }))
      .sort((one, two) => two.key - one.key);
    if (first === undefined) break;
    keep(first.way, 1);
  }
  mix.release();
  return left.some(count => count > 0) || kept.length >= most ? undefined : kept;
}

/** A mix of ways to cut a bar that costs least, with fractions. */
type Mixed = {
  /** Bars, those that are kept included. */
  readonly cost: number;
  /** How often each way is cut beyond what is kept of it. */
  readonly open: readonly number[];
  /** No plan of what was asked for needs fewer. */
  readonly bound: number;
};

type Mix = {
  readonly ways: readonly Cuts[];
  readonly add: (cuts: Cuts) => void;
  /** Mixes anew, with all the ways that make it cheaper where so much is left to cut; undefined where time is over. */
  readonly generate: (left: Demand) => Mixed | undefined;
  readonly keep: (way: number, times: number) => void;
  readonly release: () => void;
  readonly isOver: () => boolean;
  readonly close: () => void;
};

function openMix(looking: Looking, bars: OneWay, demand: Demand, solver: Solver, until: number): Mix {
  const program = solver.open(demand.map(least => ({ least, most: Number.POSITIVE_INFINITY })));
  const ways: Cuts[] = [];
  const kept: number[] = [];
  const isOver = (): boolean => looking.looks >= until;
  const add = (cuts: Cuts): void => {
    program.add({ cost: 1, most: Number.POSITIVE_INFINITY, rows: [...cuts.keys()], values: [...cuts.values()] });
    ways.push(cuts);
    kept.push(0);
  };
  const generate = (left: Demand): Mixed | undefined => {
    for (;;) {
      const solution = solveUntil(looking, program, until);
      if (solution === undefined) return undefined;
      const { most, cuts, looks } = bestCuts(bars, solution.prices, left);
      looking.looks += looks;
      const sawable = cuts.filter(each => isSawable(looking.problem, barOf(looking.problem, bars, each)));
      for (const each of sawable) add(each);
      if (sawable.length > 0 && !isOver()) continue;
      const worth = left.reduce((total, count, kind) => total + count * Math.max(0, solution.prices[kind] ?? 0), 0);
      const open = kept.map((times, way) => (solution.columns[way] ?? 0) - times);
      return { cost: solution.cost, open, bound: worth / Math.max(1, most) };
    }
  };
  const keep = (way: number, times: number): void => {
    kept[way] = (kept[way] ?? 0) + times;
    program.limit(way, kept[way] ?? 0, Number.POSITIVE_INFINITY);
  };
  const release = (): void => {
    for (const [way, times] of kept.entries()) if (times > 0) program.limit(way, 0, Number.POSITIVE_INFINITY);
    kept.fill(0);
  };
  return { ways, add, generate, keep, release, isOver, close: program.close };
}

/** Bars are cut in one direction. */
type OneWay = Bars & { readonly direction: Direction };

/** Larger tables, of kinds and places, take longer to fill than they save. */
const TABLE_MAX = 20_000_000;

function barsOf({ pieces, bins }: CuttingProblem): OneWay | undefined {
  const [bin] = bins;
  const [clear] = bin?.clear ?? [];
  if (bin === undefined || clear === undefined || bins.length > 1 || bin.clear.length > 1) return undefined;
  if (bin.available !== Number.POSITIVE_INFINITY) return undefined;
  const turns = pieces.some(piece => piece.turns && piece.width <= clear.length && piece.length <= clear.width);
  if (turns) return undefined;
  const fitOnce = (sizes: readonly number[], whole: number): boolean => 2 * Math.min(...sizes) > whole;
  const lengths = pieces.map(piece => piece.length);
  const widths = pieces.map(piece => piece.width);
  const bars: OneWay | undefined = fitOnce(widths, clear.width)
    ? { direction: 'crosscut', whole: clear.length, sizes: lengths }
    : fitOnce(lengths, clear.length)
      ? { direction: 'rip', whole: clear.width, sizes: widths }
      : undefined;
  return bars !== undefined && bars.whole * pieces.length <= TABLE_MAX ? bars : undefined;
}

function barOf(problem: CuttingProblem, { direction }: OneWay, cuts: Cuts): OpenBin {
  const trees = [...cuts].flatMap(([kind, count]) => new Array<CutPiece>(count).fill(pieceOf(problem, kind)));
  return binOf(problem, 0, [together(direction, trees)]);
}

const pieceOf = ({ pieces }: CuttingProblem, piece: number): CutPiece => ({
  kind: 'piece',
  piece,
  turned: false,
  length: pieces[piece]?.length ?? 0,
  width: pieces[piece]?.width ?? 0,
});
