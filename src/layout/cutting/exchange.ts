import { decay } from './decay.ts';
import { areUnlike, type Demand, piecesAsked } from './demand.ts';
import { type Bench, benchOf, binsOf } from './exchange-bench.ts';
import { comesOut, FEW, type FewPieces, isApart, openFewPieces } from './few-pieces.ts';
import { FULL_BINS } from './fewer-bins.ts';
import { COST_EPSILON, costOfBins, type Filling } from './first-plan.ts';
import { isPlain } from './lying.ts';
import type { Looking } from './placing.ts';
import type { OpenBin } from './rows.ts';

/** Whether `exchange` knows how to fill the bins of this plan: plain ones, with a few unlike pieces in each. */
export function suitsExchange({ problem }: Looking, demand: Demand, { bins, left }: Filling): boolean {
  return (
    isPlain(problem) &&
    left.length === 0 &&
    piecesAsked(demand) <= PIECES_A_BIN * bins.length &&
    areUnlike(demand) &&
    bins.length <= BINS_MAX
  );
}

/** Of more pieces in a bin ruin and recreate makes more in the same time. */
const PIECES_A_BIN = 5.5;
/** Among more bins, hardly any two have what the other wants. */
const BINS_MAX = 150;

/** What makes a plan worse by so much, in bins, is done one time in e. */
const TEMPERATURE = 0.003;

/** Of a hundred moves, those that put in a piece from beside the bins; in the others, bins exchange pieces. */
const FROM_BESIDE = 3;
/** Of a hundred of the first, those with another piece from beside, and by how many pieces come out for it. */
const ANOTHER = 20;
const NONE_OUT = 33;
const ONE_OUT = 67;
/** Of a hundred exchanges, those of one piece for none, and of one for none or one; the others are two for one. */
const ONE_FOR_NONE = 5;
const ONE_FOR_ONE = 30;

/** What a move costs, a set that is looked into, half of the square of its pieces, and each way that is tried to part it, in looks. */
const LOOKS_A_MOVE = 11;
const LOOKS_A_SET = 6;
const LOOKS_A_PAIR = 2.6;
const LOOKS_A_TRY = 28;

/**
 * Looks for a plan of fewer bins where a few pieces fill each: a bin is taken away, its pieces lie beside, and pieces change
 * places, one or two at a time, wherever the bins that get them can still be cut; what leaves more wood beside is done the
 * more seldom, the more it is. How a bin is cut is worked out for each set of pieces and not repaired, which ruin and
 * recreate does; sets so small are asked about a million times a second. After S. Kirkpatrick et al., "Optimization by
 * simulated annealing", Science 220 (1983) 671-680.
 */
export function exchange(
  looking: Looking,
  start: Filling,
  least: number,
  looks: number,
  seen: (bins: readonly OpenBin[]) => void,
): Filling {
  const few = openFewPieces(looking.problem);
  const until = looking.looks + looks;
  let best = start;
  while (costOfBins(looking.problem, best.bins) > least + COST_EPSILON) {
    const bench = benchOf(few, best, looking.chance);
    if (bench === undefined) return best;
    const settled = settle(looking, bench, until);
    const bins = binsOf(looking.problem, bench);
    seen(bins ?? []);
    if (!settled || bins === undefined) return best;
    best = { bins, left: [] };
  }
  return best;
}

/** Moves pieces until none lies beside; whether that came about before the looks were spent. */
function settle(looking: Looking, bench: Bench, until: number): boolean {
  const { few, beside } = bench;
  while (beside.length > 0) {
    if (looking.looks >= until) return false;
    few.tried = 0;
    looking.looks += LOOKS_A_MOVE;
    if (of(100, drawn(bench)) < FROM_BESIDE) putIn(looking, bench);
    else swap(looking, bench);
    looking.looks += few.tried * LOOKS_A_TRY;
  }
  return true;
}

/** Puts a piece or two that lie beside into a bin, and takes up to two out of it. */
function putIn(looking: Looking, bench: Bench): void {
  const { few, lies, counts, filled, beside } = bench;
  const { areas, sets } = few;
  const draw = drawn(bench);
  const at = of(beside.length, draw);
  const bin = of(counts.length, draw >>> BITS);
  const share = of(100, draw >>> (2 * BITS));
  const count = counts[bin] ?? 0;
  const drawOut = drawn(bench);
  const one = share >= NONE_OUT && count > 0 ? of(count, drawOut) : -1;
  const two = share >= ONE_OUT && count > 1 ? of(count, drawOut >>> BITS) : -1;
  if (two >= 0 && one === two) return;
  const another = beside.length > 1 && of(100, drawOut >>> (2 * BITS)) < ANOTHER ? of(beside.length, drawn(bench)) : -1;
  if (another === at) return;
  const first = asItLies(bench, beside[at] ?? 0);
  const second = another < 0 ? -1 : asItLies(bench, beside[another] ?? 0);
  const out1 = one < 0 ? -1 : (lies[bin * FEW + one] ?? 0);
  const out2 = two < 0 ? -1 : (lies[bin * FEW + two] ?? 0);
  const goesIn = (areas[first] ?? 0) + (second < 0 ? 0 : (areas[second] ?? 0));
  const comesBack = (out1 < 0 ? 0 : (areas[out1] ?? 0)) + (out2 < 0 ? 0 : (areas[out2] ?? 0));
  const before = filled[bin] ?? 0;
  const after = before + goesIn - comesBack;
  if (after > few.area) return;
  const fuller = ((after - before) * (after + before)) / (few.area * few.area);
  const worse = (comesBack - goesIn) / few.area - FULL_BINS * fuller;
  if (worse > 0 && drawn(bench) >= FINE * decay(worse / TEMPERATURE)) return;
  const kept = gather(sets, lies, bin * FEW, count, one, two);
  if (!takes(looking, few, kept, first, second)) return;
  counts[bin] = keep(sets, lies, bin * FEW, kept, first, second);
  filled[bin] = after;
  remove(beside, Math.max(at, another));
  if (another >= 0) remove(beside, Math.min(at, another));
  if (out1 >= 0) beside.push(out1);
  if (out2 >= 0) beside.push(out2);
}

function remove(from: number[], at: number): void {
  from[at] = from[from.length - 1] ?? 0;
  from.pop();
}

/** Exchanges one or two pieces of one bin for one or none of another. */
function swap(looking: Looking, bench: Bench): void {
  const { few, lies, counts, filled } = bench;
  const { areas, sets } = few;
  const draw = drawn(bench);
  const from = of(counts.length, draw);
  const to = of(counts.length, draw >>> BITS);
  const share = of(100, draw >>> (2 * BITS));
  const count = counts[from] ?? 0;
  const others = counts[to] ?? 0;
  if (from === to || count === 0 || (share >= ONE_FOR_NONE && others === 0)) return;
  const [beforeFrom, beforeTo] = [filled[from] ?? 0, filled[to] ?? 0];
  const drawOut = drawn(bench);
  const one = of(count, drawOut);
  const out1 = lies[from * FEW + one] ?? 0;
  const area1 = areas[out1] ?? 0;
  // What may move so that neither bin has more than goes into it.
  const least = beforeFrom - few.area;
  const most = few.area - beforeTo;
  let two = -1;
  let back = -1;
  let moved = area1;
  if (share < ONE_FOR_NONE) {
    if (moved > most) return;
  } else if (share < ONE_FOR_ONE) {
    back = of(others, drawOut >>> BITS);
    for (let step = 0; ; step += 1) {
      if (step === others) return;
      moved = area1 - (areas[lies[to * FEW + back] ?? 0] ?? 0);
      if (moved >= least && moved <= most) break;
      back = back + 1 === others ? 0 : back + 1;
    }
  } else {
    back = of(others, drawOut >>> BITS);
    two = of(count, drawOut >>> (2 * BITS));
    const rest = area1 - (areas[lies[to * FEW + back] ?? 0] ?? 0);
    for (let step = 0; ; step += 1) {
      if (step === count) return;
      moved = rest + (areas[lies[from * FEW + two] ?? 0] ?? 0);
      if (two !== one && moved >= least && moved <= most) break;
      two = two + 1 === count ? 0 : two + 1;
    }
  }
  const out2 = two < 0 ? -1 : (lies[from * FEW + two] ?? 0);
  const out3 = back < 0 ? -1 : (lies[to * FEW + back] ?? 0);
  if (out1 === out3) return;
  // What the squares of what both are filled grow by.
  const fuller = (2 * moved * (moved + beforeTo - beforeFrom)) / (few.area * few.area);
  if (fuller < 0 && drawn(bench) >= FINE * decay((-FULL_BINS * fuller) / TEMPERATURE)) return;
  const first = asItLies(bench, out1);
  const second = out2 < 0 ? -1 : asItLies(bench, out2);
  const third = out3 < 0 ? -1 : asItLies(bench, out3);
  const keptThere = gather(sets, lies, to * FEW, others, back, -1);
  if (!takes(looking, few, keptThere, first, second)) return;
  const keptHere = gather(sets, lies, from * FEW, count, one, two);
  if (third >= 0 && !takes(looking, few, keptHere, third, -1)) return;
  counts[from] = keep(sets, lies, from * FEW, keptHere, third, -1);
  gather(sets, lies, to * FEW, others, back, -1);
  counts[to] = keep(sets, lies, to * FEW, keptThere, first, second);
  filled[from] = beforeFrom - moved;
  filled[to] = beforeTo + moved;
  fillUp(looking, bench, from);
  fillUp(looking, bench, to);
}

/** Puts a piece that lies beside into a bin that has changed, if there is one for which less than it comes out. */
function fillUp(looking: Looking, bench: Bench, bin: number): void {
  const { few, lies, counts, filled, beside } = bench;
  const { areas, sets } = few;
  const count = counts[bin] ?? 0;
  const start = bin * FEW;
  const room = few.area - (filled[bin] ?? 0);
  for (let at = 0; at < beside.length; at += 1) {
    const area = areas[beside[at] ?? 0] ?? 0;
    for (let one = -1; one < count; one += 1) {
      const out1 = one < 0 ? 0 : (areas[lies[start + one] ?? 0] ?? 0);
      if (out1 >= area) continue;
      for (let two = one; two < (one < 0 ? 0 : count); two += 1) {
        const more = area - (two === one ? out1 : out1 + (areas[lies[start + two] ?? 0] ?? 0));
        if (more <= 0 || more > room) continue;
        const lie = asItLies(bench, beside[at] ?? 0);
        const kept = gather(sets, lies, start, count, one, two);
        if (!takes(looking, few, kept, lie, -1)) continue;
        const outs = [one, ...(two === one ? [] : [two])].filter(out => out >= 0).map(out => lies[start + out] ?? 0);
        counts[bin] = keep(sets, lies, start, kept, lie, -1);
        filled[bin] = (filled[bin] ?? 0) + more;
        remove(beside, at);
        beside.push(...outs);
        return;
      }
    }
  }
}

/** Thirty bits of chance: G. Marsaglia, "Xorshift RNGs", J. Stat. Softw. 8 (2003) 14. */
function drawn(bench: Bench): number {
  let { chance } = bench;
  chance ^= chance << 13;
  chance ^= chance >>> 17;
  chance ^= chance << 5;
  bench.chance = chance;
  return chance >>> 2;
}

/** Thirty bits are three choices of ten bits each, or one fine one. */
const BITS = 10;
const TEN_BITS = 0x3ff;
const FINE = 2 ** 30;

/** A whole number below `count` from the last ten bits of what was drawn. */
const of = (count: number, draw: number): number => (count * (draw & TEN_BITS)) >>> BITS;

/** One of the ways in which a piece may lie. */
function asItLies(bench: Bench, lie: number): number {
  const twin = bench.few.lying[lie]?.twin ?? lie;
  return twin !== lie && of(2, drawn(bench)) === 0 ? twin : lie;
}

/** Writes what a bin has without up to two of it; how many these are. */
function gather(sets: Int32Array, lies: Int32Array, from: number, count: number, one: number, two: number): number {
  let kept = 0;
  for (let at = 0; at < count; at += 1) {
    if (at === one || at === two) continue;
    sets[kept] = lies[from + at] ?? 0;
    kept += 1;
  }
  return kept;
}

function keep(sets: Int32Array, lies: Int32Array, from: number, kept: number, first: number, second: number): number {
  for (let at = 0; at < kept; at += 1) lies[from + at] = sets[at] ?? 0;
  let count = kept;
  for (const lie of [first, second]) {
    if (lie < 0) continue;
    lies[from + count] = lie;
    count += 1;
  }
  return count;
}

/** Whether a piece or two come out of a bin with what was gathered. */
function takes(looking: Looking, few: FewPieces, kept: number, first: number, second: number): boolean {
  const { sets } = few;
  looking.looks += LOOKS_A_SET + 0.5 * LOOKS_A_PAIR * kept * kept;
  if (kept + 2 > FEW || isApart(few, first, sets, kept)) return false;
  sets[kept] = first;
  if (second < 0) return comesOut(few, kept + 1);
  if (isApart(few, second, sets, kept + 1)) return false;
  sets[kept + 1] = second;
  return comesOut(few, kept + 2);
}
