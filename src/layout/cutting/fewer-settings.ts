import { pick } from './chance.ts';
import { COST_EPSILON, costOfBins, type Filling } from './first-plan.ts';
import type { Looking } from './placing.ts';
import type { OpenBin } from './rows.ts';
import { ruinAndRecreate } from './ruin-recreate.ts';

/** What a bin asks of the saw and leaves for the rack. */
export type Handling = {
  /** Fence and stop settings of its cuts, trims left out: a number for each direction and distance. */
  readonly settings: readonly number[];
  /** Area of the largest leftover that is worth keeping, as a share of a bin. */
  readonly remnant: number;
  /** Kinds of stiles that come in an odd number, so that one is parted from its fellow. */
  readonly odd: number;
};

/** A try is kept where it is no worse than the plan of so many tries ago. */
const LATE = 100;
/** A remnant is a share of a bin, so it never outweighs a setting. */
const REMNANT = 0.9;
/** A pair of stiles that should look alike outweighs a setting, and a board no more than it must. */
const ODD = 2;
const BIN = 1.5;
/** So many bins are on the bench at a time, until so many looks have brought nothing better. */
const BINS_AT_A_TIME = 12;
const PATIENCE = 2_500_000;
/** So many benches in a row that brought nothing end the search of a large plan. */
const MISSES_MAX = 8;

/**
 * Looks for a filling of the same bins' cost that needs fewer different settings, those that are made anyway for other
 * wood not counted, and among those for the one that leaves the largest single remnant. Bins are not traded for it, but `waste` of their
 * cost may be spent on stiles that should come in pairs.
 */
export function fewerSettings(
  looking: Looking,
  start: Filling,
  made: ReadonlySet<number>,
  supply: readonly number[],
  looks: number,
  handle: (bin: OpenBin) => Handling,
  waste: number,
): Filling {
  const until = looking.looks + looks;
  const fewBins = start.bins.length <= BINS_AT_A_TIME;
  let filling = start;
  let spare = costOfBins(looking.problem, start.bins) * waste;
  for (let misses = 0; looking.looks < until && misses < (fewBins ? 1 : MISSES_MAX); ) {
    const inside = [...new Set(fewBins ? filling.bins : someBins(looking, filling.bins))];
    const outside = filling.bins.filter(bin => !inside.includes(bin));
    const known = new Set(made);
    for (const bin of outside) for (const setting of handle(bin).settings) known.add(setting);
    const rest = supply.map((count, kind) => count - outside.filter(bin => bin.kind === kind).length);
    const found = improve(looking, inside, known, rest, until, handle, spare);
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
  known: ReadonlySet<number>,
  supply: readonly number[],
  until: number,
  handle: (bin: OpenBin) => Handling,
  spare: number,
): readonly OpenBin[] {
  const { problem } = looking;
  const cost = costOfBins(problem, start) + Math.max(0, spare) + COST_EPSILON;
  const burden = (some: readonly OpenBin[]): number =>
    burdenOf(some, known, handle) + (spare > 0 ? BIN * costOfBins(problem, some) : 0);
  let bins = start;
  let value = burden(bins);
  let best = bins;
  let least = value;
  let limit = Math.min(until, looking.looks + PATIENCE);
  const late = new Float64Array(LATE).fill(value);
  for (let step = 0; looking.looks < limit; step = (step + 1) % LATE) {
    const next = ruinAndRecreate(looking, { bins, left: [] }, { cost, supply });
    if (next.left.length === 0) {
      looking.looks += LOOKS_TO_HANDLE;
      const nextValue = burden(next.bins);
      if (nextValue <= value || nextValue <= (late[step] ?? value)) {
        bins = next.bins;
        value = nextValue;
      }
      if (value < least) {
        best = bins;
        least = value;
        limit = Math.min(until, looking.looks + PATIENCE);
      }
    }
    late[step] = value;
  }
  return best;
}

/** What it takes to write down the cuts of a few bins, in looks. */
const LOOKS_TO_HANDLE = 2_000;

function burdenOf(bins: readonly OpenBin[], made: ReadonlySet<number>, handle: (bin: OpenBin) => Handling): number {
  const settings = new Set<number>();
  let remnant = 0;
  let odd = 0;
  for (const bin of bins) {
    const handling = handle(bin);
    for (const setting of handling.settings) if (!made.has(setting)) settings.add(setting);
    remnant = Math.max(remnant, handling.remnant);
    odd += handling.odd;
  }
  return ODD * odd + settings.size - REMNANT * remnant;
}
