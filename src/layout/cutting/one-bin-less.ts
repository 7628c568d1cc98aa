import type { Solver } from '../solver.ts';
import { between, cuttable, GAIN, limitPrice, solveUntil, worthOf } from './column-generation.ts';
import { type Pool, withoutSurplus } from './cover.ts';
import { areUnlike, type Demand, piecesAsked } from './demand.ts';
import { openDemandPricers } from './demand-pricing.ts';
import { binOf } from './fill.ts';
import { COST_EPSILON, costOfBins, type Filling } from './first-plan.ts';
import { type Master, openMaster } from './master.ts';
import { type Pattern, startingPatterns } from './patterns.ts';
import type { Looking } from './placing.ts';

/**
 * Whether looking for one bin less by `oneBinLess` is worth so many looks: where a few pieces fill a bin, there are few ways
 * to fill it well, and a linear program over them finds what no repair of a plan does.
 */
export function suitsOneBinLess({ problem }: Looking, demand: Demand, start: Filling, looks: number): boolean {
  if (start.left.length > 0 || demand.length > KINDS_MAX || start.bins.length > BINS_MAX) return false;
  if (piecesAsked(demand) > PIECES_A_BIN * start.bins.length) return false;
  const pricers = problem.bins.map((_, bin) => openDemandPricers(problem, demand, bin));
  const once = pricers.flat().reduce((sum, pricer) => sum + pricer.looks, 0);
  const least = Math.max(LOOKS_A_KIND * demand.length, PRICINGS_LEAST * once);
  return looks >= least && pricers.every(each => each.length > 0);
}

/** Whether pieces are unlike, and so many fill a bin that no pattern is ever better than any number of others. */
export const isCrowded = (demand: Demand, start: Filling): boolean =>
  piecesAsked(demand) > PIECES_A_BIN * start.bins.length && areUnlike(demand);

/** A program of more rows or bins takes too long to solve so often. */
const KINDS_MAX = 200;
const BINS_MAX = 100;
/** Of more pieces in a bin there are too many good ways, and ruin and recreate finds them sooner. */
const PIECES_A_BIN = 6;
/** With fewer looks for each kind, or of each pricer, there is no mix to dive from. */
const LOOKS_A_KIND = 100_000;
const PRICINGS_LEAST = 40;

/**
 * Looks for a filling that is a bin cheaper where pieces are unlike: a linear program over patterns that have no more
 * pieces than are asked for, begun with the bins that a search has seen, and dives for whole bins of it. It succeeds where
 * ruin and recreate ends with a few pieces beside bins that are nearly full. Tried again and again until the looks are
 * spent, nothing is left to save, or even fractions cost too much.
 */
export function oneBinLess(
  looking: Looking,
  demand: Demand,
  start: Filling,
  least: number,
  pool: Pool,
  solver: Solver,
  looks: number,
): Filling {
  const { problem } = looking;
  const until = looking.looks + looks;
  const costs = problem.bins.map(bin => bin.cost);
  const cheapest = Math.min(...costs);
  // Where all bins cost the same, nothing lies between one bin more or less.
  const saving = costs.every(cost => cost === cheapest) ? cheapest : cheapest / 2;
  const aimOf = (filling: Filling): number => costOfBins(problem, filling.bins) - saving;
  const patterns = [...startingPatterns(looking, demand, start), ...pool.patterns()];
  const master = openMaster(problem, demand, costs, patterns, solver, 'by-few-columns');
  let best = start;
  try {
    for (let noise = 0; looking.looks < until && least <= aimOf(best) + COST_EPSILON; noise = DIVING_NOISE) {
      const aim = aimOf(best);
      const enough = noise === 0 ? aim - ROOM * cheapest : aim;
      const mix = generate(looking, master, demand, enough, until, NOTHING);
      if (mix === undefined || mix.cost > aim + COST_EPSILON) break;
      const bins = dive(looking, master, mix, aim, until, noise)?.map(({ bin, trees }) => binOf(problem, bin, trees));
      if (bins !== undefined) best = withoutSurplus(problem, demand, bins);
    }
    return best;
  } finally {
    master.program.close();
  }
}

/** Chance in the order in which dives take patterns; the first dive leaves the best order as it is. */
const DIVING_NOISE = 0.5;
/** The first mix should be better than is asked for by so much of a bin: whole bins cost more than fractions do. */
const ROOM = 0.4;
/** So often a dive that costs too much takes its last step back. */
const STEPS_BACK = 3;
/** What is cut so many times, or nearly, is cut whole. */
const WHOLE = 0.99;
const NOTHING: ReadonlySet<number> = new Set();

/** How often each pattern is cut, with fractions. */
type Mix = { readonly times: ArrayLike<number>; readonly cost: number };

/**
 * Keeps the pattern with the largest share, mixes anew, and so on; undefined where even fractions cost more than `aim`.
 * What is kept may cut a piece twice: it is a piece less to ask for, and the surplus is taken out in the end.
 */
function dive(
  looking: Looking,
  master: Master,
  start: Mix,
  aim: number,
  until: number,
  noise: number,
): readonly Pattern[] | undefined {
  const { demand, patterns, program } = master;
  const cut = demand.map(() => 0);
  const kept = new Map<number, number>();
  const steps: (readonly number[])[] = [];
  const without = new Set<number>();
  const keep = (column: number, times: number): void => {
    const all = (kept.get(column) ?? 0) + times;
    kept.set(column, all);
    program.limit(column, all, without.has(column) ? all : Number.POSITIVE_INFINITY);
    for (const [kind, count] of patterns[column]?.counts ?? []) cut[kind] = (cut[kind] ?? 0) + times * count;
  };
  try {
    for (let mix: Mix | undefined = start, back = 0; ; ) {
      if (mix !== undefined && mix.cost <= aim + COST_EPSILON) {
        const [first, ...others] = ranked(looking, mix, kept, noise);
        if (first === undefined) return undefined;
        const step = [first, ...others.filter(({ times }) => times >= WHOLE)].map(({ column }) => column);
        for (const column of step) keep(column, 1);
        steps.push(step);
        if (demand.every((count, kind) => (cut[kind] ?? 0) >= count))
          return steps.flat().flatMap(column => patterns[column] ?? []);
      } else {
        const step = steps.pop();
        if (step === undefined || back === STEPS_BACK || looking.looks >= until) return undefined;
        back += 1;
        without.add(step[0] ?? 0);
        for (const column of step) keep(column, -1);
      }
      const rest = demand.map((count, kind) => Math.max(0, count - (cut[kind] ?? 0)));
      mix = generate(looking, master, rest, aim, until, without);
    }
  } finally {
    for (const column of kept.keys()) program.limit(column, 0, Number.POSITIVE_INFINITY);
  }
}

/**
 * Mixes patterns, and adds to them those that are worth more than they cost and have no more than `rest`, until the mix
 * costs no more than `aim`, or no such pattern is found. Patterns like those `without` are not added again. Undefined where
 * there is no mix, or the looks are spent.
 */
function generate(
  looking: Looking,
  master: Master,
  rest: Demand,
  aim: number,
  until: number,
  without: ReadonlySet<number>,
): Mix | undefined {
  const { problem } = looking;
  const { program, supply, costs, patterns } = master;
  const pricers = problem.bins.flatMap((_, bin) =>
    (supply[bin] ?? 0) > 0 ? openDemandPricers(problem, rest, bin) : [],
  );
  const forbidden = new Set([...without].flatMap(column => patterns[column] ?? []).map(nameOf));
  let steady: Float64Array | undefined;
  let turn = 0;
  for (;;) {
    const solution = solveUntil(looking, program, until);
    if (solution === undefined) return undefined;
    const { columns, cost, prices } = solution;
    if (cost <= aim + COST_EPSILON) return { times: columns, cost };
    // One pricer after another is asked, until one finds something.
    const better = (at: ArrayLike<number>): readonly Pattern[] => {
      for (let asked = 0; asked < pricers.length; asked += 1) {
        const pricer = pricers[turn % pricers.length];
        turn += 1;
        if (pricer === undefined) continue;
        looking.looks += pricer.looks;
        const worth = (costs[pricer.bin] ?? 0) - limitPrice(problem, prices, pricer.bin) + GAIN;
        const found = pricer
          .better(at, worth * (at === prices ? 1 : NEARLY))
          .flatMap(pattern => cuttable(looking, rest, pattern, prices))
          .filter(pattern => worthOf(pattern, prices) > worth && !forbidden.has(nameOf(pattern)));
        if (found.length > 0) return found;
      }
      return [];
    };
    steady = steady === undefined ? Float64Array.from(prices) : between(prices, steady, SMOOTH);
    const found = better(steady);
    if (looking.looks > until) return undefined;
    // What the steadied prices do not find, those of the program may.
    const added = found.length > 0 ? found : better(prices);
    if (added.length === 0) return { times: columns, cost };
    for (const pattern of added) master.add(pattern);
  }
}

/** Prices leap from one mix to the next: so much of those before is kept, which needs fewer mixes; see `column-generation.ts`. */
const SMOOTH = 0.5;
/** A pattern that is worth so much of its cost at the steadied prices may be worth more than that at those of the program. */
const NEARLY = 0.95;

const nameOf = ({ bin, counts }: Pattern): string => `${bin} ${[...counts].sort(([one], [two]) => one - two).join()}`;

/** The patterns that are cut oftener than they are kept so far, those with the largest shares first. */
function ranked(
  { chance }: Looking,
  { times }: Mix,
  kept: ReadonlyMap<number, number>,
  noise: number,
): readonly { readonly column: number; readonly times: number }[] {
  const shares: { readonly column: number; readonly times: number; readonly key: number }[] = [];
  for (let column = 0; column < times.length; column += 1) {
    const share = (times[column] ?? 0) - (kept.get(column) ?? 0);
    if (share > 1e-6) shares.push({ column, times: share, key: share * (1 - noise * chance()) });
  }
  return shares.sort((one, two) => two.key - one.key);
}
