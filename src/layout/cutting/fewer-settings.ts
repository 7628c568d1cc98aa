import { openTally, type Weights } from './burden.ts';
import { type Chance, pick } from './chance.ts';
import type { Effort } from './fewer-bins.ts';
import { COST_EPSILON, costOfBins, type Filling } from './first-plan.ts';
import type { Looking } from './placing.ts';
import type { Handling, OpenBin, Row } from './rows.ts';
import { type Allowance, ruinAndRecreate, withoutStrip } from './ruin-recreate.ts';

/** What is wanted of a plan beside few bins. */
export type Wishes = {
  readonly handle: (bin: OpenBin) => Handling;
  readonly weights: Weights;
  /** Settings that are made anyway, for other wood. */
  readonly made: ReadonlySet<number>;
  /** What more bins may cost than those of the start. */
  readonly spare: number;
};

/** A try is kept where it is no worse than the plan of so many tries ago. */
const LATE = 20;
/** So many bins are on the bench at a time. */
export const BINS_AT_A_TIME = 40;
/** So many benches in a row that brought nothing end the search of a large plan. */
const MISSES_MAX = 8;

/**
 * Looks for a filling that needs fewer different settings, and among those for the one that takes few cuts, leaves the
 * largest single remnant and whose bins are easy to guide. Bins are not traded for it but as far as the wishes say.
 */
export function fewerSettings(
  looking: Looking,
  start: Filling,
  supply: readonly number[],
  { looks, patience }: Effort,
  wishes: Wishes,
): Filling {
  const until = looking.looks + looks;
  const fewBins = start.bins.length <= BINS_AT_A_TIME;
  let filling = start;
  let { spare } = wishes;
  for (let misses = 0; looking.looks < until && misses < (fewBins ? 1 : MISSES_MAX); ) {
    const inside = [...new Set(fewBins ? filling.bins : someBins(looking, filling.bins))];
    const outside = filling.bins.filter(bin => !inside.includes(bin));
    const made = new Set(wishes.made);
    for (const bin of outside) for (const setting of wishes.handle(bin).settings) made.add(setting);
    looking.looks += LOOKS_TO_HANDLE * filling.bins.length;
    const rest = supply.map((count, kind) => count - outside.filter(bin => bin.kind === kind).length);
    const found = improve(
      looking,
      inside,
      rest,
      { looks: until - looking.looks, patience },
      { ...wishes, made, spare },
    );
    spare -= costOfBins(looking.problem, found) - costOfBins(looking.problem, inside);
    misses = found === inside ? misses + 1 : 0;
    filling = { bins: [...outside, ...found], left: filling.left };
  }
  return filling;
}

const someBins = ({ chance }: Looking, bins: readonly OpenBin[]): readonly OpenBin[] =>
  Array.from({ length: BINS_AT_A_TIME }, () => bins[pick(chance, bins.length)]).flatMap(bin => bin ?? []);

function improve(
  looking: Looking,
  start: readonly OpenBin[],
  supply: readonly number[],
  { looks, patience }: Effort,
  { handle, weights, made, spare }: Wishes,
): readonly OpenBin[] {
  const { problem, chance } = looking;
  const until = looking.looks + looks;
  const cost = costOfBins(problem, start) + Math.max(0, spare) + COST_EPSILON;
  const tally = openTally(problem, made, handle, weights);
  tally.change([], start);
  let bins = start;
  let value = tally.burden(bins);
  let best = bins;
  let least = value;
  let limit = Math.min(until, looking.looks + patience);
  const late = new Float64Array(LATE).fill(value);
  for (let step = 0; looking.looks < limit; step = (step + 1) % LATE) {
    const widen = chance() < WIDENS ? widening(looking, bins) : undefined;
    const allowance: Allowance = { cost, supply, whole: true, widen };
    const attempt = { bins, left: [] };
    const next =
      chance() < STRIPS ? withoutStrip(looking, attempt, allowance) : ruinAndRecreate(looking, attempt, allowance);
    if (next.left.length === 0 && next.bins !== bins) {
      const before = new Set(bins);
      const come = next.bins.filter(bin => !before.delete(bin));
      looking.looks += LOOKS_TO_HANDLE * come.length + LOOKS_A_BIN * bins.length;
      tally.change(before, come);
      const nextValue = tally.burden(next.bins);
      if (nextValue <= value || nextValue <= (late[step] ?? value)) {
        bins = next.bins;
        value = nextValue;
      } else tally.change(come, before);
      if (value < least) {
        best = bins;
        if (value < least - PROGRESS) limit = Math.min(until, looking.looks + patience);
        least = value;
      }
    }
    late[step] = value;
  }
  return best;
}

/** A remnant that is larger by less is no reason to go on. */
const PROGRESS = 0.05;
/** Shares of tries that take out one strip everywhere, and that widen strips to what there is. */
const STRIPS = 0.5;
const WIDENS = 0.7;
/** What it takes to work out what a bin asks of the saw, and to count one that stays, in looks. */
const LOOKS_TO_HANDLE = 700;
const LOOKS_A_BIN = 3;

/** A strip is widened by no more than this share of the bin. */
const WIDER_MAX = 0.2;

/** Strips as wide as one that there is, where that takes little more wood. */
function widening({ problem, chance }: Looking, bins: readonly OpenBin[]): (row: Row, size: number) => number {
  const sizes = { crosscut: new Set<number>(), rip: new Set<number>() };
  for (const bin of bins)
    for (const root of bin.roots) for (const part of root.parts) sizes[root.direction].add(part.size);
  return (row, size) => {
    const own = sizes[row.direction];
    if (own.has(size) || row.stage + 2 > problem.stages) return size;
    const whole = row.left + row.parts.reduce((total, part) => total + part.size, 0);
    const wider = nextWider(own, size, Math.min(row.left, size + WIDER_MAX * whole), problem.leastSkim, chance);
    const left = row.left - wider;
    return left === 0 || left >= problem.leastSkim ? wider : size;
  };
}

function nextWider(sizes: ReadonlySet<number>, size: number, most: number, leastSkim: number, chance: Chance): number {
  let wider = Number.POSITIVE_INFINITY;
  for (const each of sizes)
    if (each >= size + leastSkim && each <= most && each < wider && chance() < 0.8) wider = each;
  return Number.isFinite(wider) ? wider : size;
}
