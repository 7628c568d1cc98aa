import { type Demand, piecesAsked } from './demand.ts';
import { binOf, isSawable } from './fill.ts';
import type { Filling } from './first-plan.ts';
import { type Hand, openHand, take, treeOfHand } from './least-rectangles.ts';
import { isPlain, type Lie, lyingIn } from './lying.ts';
import type { Looking } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import type { OpenBin } from './rows.ts';

/** Whether to try every way is worth so many looks: bins are plain, and a few pieces fill each, or there are few at all. */
export function suitsEveryWay({ problem }: Looking, demand: Demand, { bins, left }: Filling, looks: number): boolean {
  const pieces = piecesAsked(demand);
  const kinds = demand.length;
  const most = pieces <= PIECES_FEW ? PIECES_A_BIN_OF_FEW : PIECES_A_BIN;
  const isFew = pieces <= most * bins.length && kinds <= KINDS_MAX;
  return isPlain(problem) && left.length === 0 && isFew && looks >= RUNS_LEAST * LOOKS_A_TRY * kinds ** 2;
}

/** Of more pieces in a bin there are too many sets, and whether one comes out takes the longer to tell. */
const PIECES_A_BIN = 4.5;
/** So few pieces are soon at an end, even if a bin holds more of them. */
const PIECES_FEW = 24;
const PIECES_A_BIN_OF_FEW = 7;
/** Of more kinds, to find the one with the fewest companions takes longer than all the rest. */
const KINDS_MAX = 200;
/** To find out which two kinds come out together should take no more than such a part of the looks. */
const RUNS_LEAST = 2;

/** What it costs to try a piece, a rectangle that is put together for it, and to begin a bin, for each kind, in looks. */
const LOOKS_A_TRY = 17;
const LOOKS_A_RECTANGLE = 1.05;
const LOOKS_A_KIND = 5.5;

/** The shortest run, in looks. */
const LOOKS_A_RUN = 50_000;
/** By so much of its area a piece may seem smaller when the largest go first. */
const NOISE = 0.3;
/** More that is known to lead nowhere takes more than some tens of megabytes. */
const DEAD_MOST = 200_000;

/** A filling, and whether it is proven that none has fewer bins. */
export type Tried = { readonly filling: Filling; readonly isLeast: boolean };

/**
 * Looks for a plan of fewer bins in every way that there is, bin by bin: the piece with the fewest companions goes into the
 * next one, and with it every set of others that leaves no room for one more, in turn. Where a few pieces fill a bin, most
 * sets waste more than there is to spare, and sooner than one would think a plan is found or there is none left to try:
 * then fewer bins are too few, however they are cut. `shares` tell what there is to spare: shares of a bin of which none
 * holds more than 1. A run that began badly hardly ever ends, so that runs begin again with the pieces in another order;
 * what led nowhere in one is not tried in the next. Stages are asked for when a plan is found, so that the proof holds for
 * any. Bin after bin as in S. Martello, D. Vigo, "Exact solution of the two-dimensional finite bin packing problem",
 * Management Science 44 (1998) 388-399; sets that leave no room, and weights to spare, after R. E. Korf, "An improved
 * algorithm for optimal bin packing", IJCAI (2003) 1252-1258, which is from memory.
 */
export function everyWay(
  looking: Looking,
  demand: Demand,
  start: Filling,
  shares: readonly (readonly number[])[],
  least: number,
  looks: number,
): Tried {
  const until = looking.looks + looks;
  const trying = tryingFor(looking, shares);
  let filling = start;
  while (filling.bins.length > least) {
    const outcome = fillAll(trying, demand, filling.bins.length - 1, until);
    if (outcome !== 'filled') return { filling, isLeast: outcome === 'never' };
    const bins = binsOf(looking.problem, trying);
    if (bins === undefined) return { filling, isLeast: false };
    filling = { bins, left: [] };
  }
  return { filling, isLeast: true };
}

type Trying = {
  readonly looking: Looking;
  /** Looks at which the run ends. */
  until: number;
  readonly hand: Hand;
  /** For each kind, how its pieces may lie, and how many are left. */
  readonly ways: readonly (readonly Lie[])[];
  readonly left: Int32Array;
  /** For any two kinds, 1 where a piece of one comes out of a bin with a piece of the other. */
  readonly pairs: Uint8Array;
  /** Kinds, those first that are tried first. */
  order: readonly number[];
  /** What a piece of each kind weighs, in whole numbers of which no bin holds more than `FULL`. */
  readonly weights: readonly Int32Array[];
  /** The sets that fill the bins so far. */
  readonly sets: number[][];
  /** What was left where no way led on. */
  readonly dead: Set<string>;
};

const FULL = 2 ** 22;

function tryingFor(looking: Looking, shares: readonly (readonly number[])[]): Trying {
  const { problem } = looking;
  const { pieces, bins } = problem;
  const { length, width } = bins[0]?.clear[0] ?? { length: 0, width: 0 };
  const lying = lyingIn(problem);
  const hand = openHand(length, width);
  const ways = pieces.map((_, kind) => lying.filter(lie => lie.kind === kind));
  const pairs = new Uint8Array(pieces.length ** 2);
  for (const [one, lies] of ways.entries()) {
    take(hand, 0, lies);
    for (const [two, others] of ways.entries()) pairs[one * pieces.length + two] = take(hand, 1, others) ? 1 : 0;
  }
  looking.looks += LOOKS_A_TRY * pairs.length;
  const all = [pieces.map(piece => piece.area / (length * width)), ...shares];
  return {
    looking,
    until: 0,
    hand,
    ways,
    left: new Int32Array(pieces.length),
    pairs,
    order: [...pieces.keys()],
    weights: all.map(each => Int32Array.from(each, share => Math.floor(FULL * share))),
    sets: [],
    dead: new Set(),
  };
}

/** Runs until so many bins are filled with all pieces, or it is certain that they never are, or the looks are spent. */
function fillAll(trying: Trying, demand: Demand, bins: number, until: number): 'filled' | 'never' | 'given-up' {
  const { looking, hand, left, sets } = trying;
  for (let run = 1; looking.looks < until; run += 1) {
    trying.until = Math.min(until, looking.looks + LOOKS_A_RUN * timesFor(run));
    trying.order = largestFirst(looking, run === 1 ? 0 : NOISE);
    left.set(demand);
    sets.length = 0;
    if (fillNext(trying, bins)) return 'filled';
    if (!isAtEnd(trying)) return hand.isOver ? 'given-up' : 'never';
  }
  return 'given-up';
}

/**
 * How long each run may be: 1, 1, 2, 1, 1, 2, 4, and so on. M. Luby, A. Sinclair, D. Zuckerman, "Optimal speedup of Las
 * Vegas algorithms", Information Processing Letters 47 (1993) 173-180.
 */
export function timesFor(run: number): number {
  const above = 2 ** (32 - Math.clz32(run));
  return run === above - 1 ? above / 2 : timesFor(run - above / 2 + 1);
}

function largestFirst({ problem, chance }: Looking, noise: number): readonly number[] {
  const sizes = problem.pieces.map(piece => piece.area * (1 - noise * chance()));
  return [...sizes.keys()].sort((one, two) => (sizes[two] ?? 0) - (sizes[one] ?? 0));
}

const isAtEnd = ({ looking, until }: Trying): boolean => looking.looks >= until;

/** Whether so many bins can be filled with all that is left. */
function fillNext(trying: Trying, bins: number): boolean {
  const { looking, hand, ways, left, pairs, order, weights, dead } = trying;
  looking.looks += LOOKS_A_KIND * left.length;
  const first = loneliest(trying);
  if (first === undefined) return true;
  const spare = weights.map(each => {
    let weight = 0;
    for (let kind = 0; kind < left.length; kind += 1) weight += (left[kind] ?? 0) * (each[kind] ?? 0);
    return bins * FULL - weight;
  });
  const name = `${bins} ${left.join()}`;
  if (bins === 0 || spare.some(weight => weight < 0) || dead.has(name)) return false;
  const others = order.filter(kind => (left[kind] ?? 0) > 0 && pairs[first * left.length + kind] === 1);
  const behind = behindOf(trying, others);
  left[first] = (left[first] ?? 0) - 1;
  take(hand, 0, ways[first] ?? []);
  if (grow({ trying, bins, spare, others, behind, set: [first], passed: [] }, 0)) return true;
  left[first] = (left[first] ?? 0) + 1;
  if (!isAtEnd(trying) && dead.size < DEAD_MOST) dead.add(name);
  return false;
}

/** The kind whose pieces come out of a bin with the fewest others of what is left. */
function loneliest({ left, pairs, order }: Trying): number | undefined {
  let first: number | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (const kind of order) {
    if ((left[kind] ?? 0) === 0) continue;
    let companions = 0;
    for (let other = 0; other < left.length; other += 1)
      companions += (left[other] ?? 0) * (pairs[kind * left.length + other] ?? 0);
    if (companions >= fewest) continue;
    fewest = companions;
    first = kind;
  }
  return first;
}

/** What the pieces from a place in `others` on weigh together, by each of the weights. */
const behindOf = ({ weights, left }: Trying, others: readonly number[]): readonly Float64Array[] =>
  weights.map(each => {
    const behind = new Float64Array(others.length + 1);
    for (let at = others.length - 1; at >= 0; at -= 1) {
      const kind = others[at] ?? 0;
      behind[at] = (behind[at + 1] ?? 0) + (left[kind] ?? 0) * (each[kind] ?? 0);
    }
    return behind;
  });

/** A bin that is being filled, with others beside it to fill. */
type Growing = {
  readonly trying: Trying;
  /** How many are still to be filled, with this one. */
  readonly bins: number;
  /** What they may waste together, by each of the weights. */
  readonly spare: readonly number[];
  /** Kinds that may go in, in the order in which they are tried, and what those from each on weigh. */
  readonly others: readonly number[];
  readonly behind: readonly Float64Array[];
  readonly set: number[];
  /** Kinds that had room in it when they were passed over. */
  readonly passed: number[];
};

/** Goes on filling with kinds from a place in `others` on, and then with the next bin; whether all bins were filled. */
function grow(growing: Growing, from: number): boolean {
  const { trying, bins, others, set, passed } = growing;
  const { left, sets } = trying;
  const before = passed.length;
  for (let at = from; at < others.length && !wastes(growing, at); at += 1) {
    const kind = others[at] ?? 0;
    if (isAtEnd(trying)) return false;
    if ((left[kind] ?? 0) === 0 || !hasRoom(growing, kind)) continue;
    set.push(kind);
    left[kind] = (left[kind] ?? 0) - 1;
    if (grow(growing, at)) return true;
    set.pop();
    left[kind] = (left[kind] ?? 0) + 1;
    takeAll(trying, set);
    passed.push(kind);
  }
  // What there is room for may as well go in: without it, no plan is found that is not found with it.
  const hasRoomLeft = passed.length > before || passed.some(kind => hasRoom(growing, kind));
  passed.length = before;
  if (hasRoomLeft || wastes(growing, others.length)) return false;
  sets.push([...set]);
  if (fillNext(trying, bins - 1)) return true;
  sets.pop();
  return false;
}

/** Whether the bin would waste more than there is to spare, even with all kinds from a place in `others` on. */
function wastes({ trying, set, spare, behind }: Growing, from: number): boolean {
  const { weights } = trying;
  for (let by = 0; by < weights.length; by += 1)
    if (weightOf(weights[by], set) + (behind[by]?.[from] ?? 0) < FULL - (spare[by] ?? 0)) return true;
  return false;
}

/** Whether a piece more comes out of the bin with those in it, which are in hand. */
function hasRoom({ trying, set }: Growing, kind: number): boolean {
  const { looking, hand, ways, weights } = trying;
  looking.looks += LOOKS_A_TRY;
  for (let by = 0; by < weights.length; by += 1)
    if (weightOf(weights[by], set) + (weights[by]?.[kind] ?? 0) > FULL) return false;
  hand.spent = 0;
  const yes = take(hand, set.length, ways[kind] ?? []);
  looking.looks += hand.spent * LOOKS_A_RECTANGLE;
  return yes;
}

function weightOf(weights: Int32Array | undefined, set: readonly number[]): number {
  let weight = 0;
  for (let at = 0; at < set.length; at += 1) weight += weights?.[set[at] ?? 0] ?? 0;
  return weight;
}

/** Takes a set that comes out of a bin into hand. */
function takeAll({ looking, hand, ways }: Trying, set: readonly number[]): void {
  hand.spent = 0;
  for (let place = 0; place < set.length; place += 1) take(hand, place, ways[set[place] ?? 0] ?? []);
  looking.looks += hand.spent * LOOKS_A_RECTANGLE;
}

/** The sets as they are cut; undefined where the saw cannot follow, or not within the stages. */
function binsOf(problem: CuttingProblem, trying: Trying): readonly OpenBin[] | undefined {
  const bins: OpenBin[] = [];
  for (const set of trying.sets) {
    takeAll(trying, set);
    const tree = treeOfHand(trying.hand, set.length);
    const bin = tree && binOf(problem, 0, [tree]);
    if (bin === undefined || !isSawable(problem, bin) || bin.rows.some(row => row.stage > problem.stages))
      return undefined;
    bins.push(bin);
  }
  return bins;
}
