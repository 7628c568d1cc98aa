import { type Beginnings, beginnings, isKnown, type Known, knownFor } from './beginnings.ts';
import { forget, placeOf, putInOrder, sift, type Ways, waysFor } from './best-ways.ts';
import { add, strike, wordsFor } from './bits.ts';
import { type CutTree, together } from './cut-tree.ts';
import { areaAsked, demandOf, kindsAsked, piecesAsked } from './demand.ts';
import { repaired } from './fewer-bins.ts';
import { binOf, isSawable } from './fill.ts';
import { COST_EPSILON, costOfBins, type Filling } from './first-plan.ts';
import { isPlain, type Lying, lyingIn, pieceOf } from './lying.ts';
import type { Looking } from './placing.ts';
import { BOTH, type Direction, type OpenBin, other, piecesIn } from './rows.ts';

/** Whether `rowByRow` knows how to fill the bins of this plan: a few plain ones, within the stages. */
export function suitsRowByRow({ problem }: Looking, { bins, left }: Filling): boolean {
  return isPlain(problem) && left.length === 0 && problem.stages >= STAGES && bins.length <= BINS_MAX;
}

/** Strips, rows of these, and a trim of each row; with a stage more, rows of several pieces. */
const STAGES = 3;
/** What is filled piece by piece is not changed any more: with more bins, a first one that is a little worse tells too late. */
const BINS_MAX = 20;

/** So many beginnings are carried on at first; then twice as many, until the looks are spent. */
const WIDTH = 48;
const WIDTH_MAX = 6144;
/** Of these, more are kept than are carried on, because some are the same. */
const SPARE = 3;

/** To get the last pieces in may take so many times what it took to put the others in. */
const REPAIR = 2;

/** What a step costs for each beginning, for each piece that it may go on with, for each beginning that is kept, in looks. */
const LOOKS_A_BEGINNING = 30;
const LOOKS_A_PIECE = 1.2;
const LOOKS_KEPT = 23;

/**
 * Looks for a plan of fewer bins where many unlike pieces crowd a few: fills them strip by strip, each strip row by row and
 * each row piece by piece, and carries on the best of many beginnings with the same number of pieces, those that waste
 * least for the size of their pieces: what is large goes in first, or else it finds no place. Where none of them ends with
 * all pieces, hardly any are left beside the bins of the best; ruin and recreate gets them in as often as not.
 * After L. Libralesso, F. Fontan, "An anytime tree search algorithm for the 2018 ROADEF/EURO challenge glass cutting
 * problem", EJOR 291 (2021) 883-893; the measure of waste is our own.
 */
export function rowByRow(
  looking: Looking,
  start: Filling,
  least: number,
  looks: number,
  seen: (bins: readonly OpenBin[]) => void,
): Filling {
  const { problem } = looking;
  const until = looking.looks + looks;
  let best = start;
  for (let width = WIDTH; width <= WIDTH_MAX; width *= 2) {
    for (const first of BOTH) {
      for (;;) {
        if (costOfBins(problem, best.bins) <= least + COST_EPSILON || looking.looks >= until) return best;
        const before = looking.looks;
        const filled = filledBy(looking, first, best.bins.length - 1, width, until);
        if (filled === undefined || !filled.bins.every(bin => isSawable(problem, bin))) break;
        const isWhole = filled.left.length === 0;
        const end = Math.min(until, looking.looks + REPAIR * (looking.looks - before));
        const found = isWhole ? filled : repairedFor(looking, filled, best, end, seen);
        if (found === undefined) break;
        seen(found.bins);
        best = found;
      }
    }
  }
  return best;
}

/** All pieces in bins that cost less than those of `best`. */
function repairedFor(
  looking: Looking,
  filled: Filling,
  best: Filling,
  until: number,
  seen: (bins: readonly OpenBin[]) => void,
): Filling | undefined {
  const { problem } = looking;
  const cost = costOfBins(problem, best.bins) - 2 * COST_EPSILON;
  const supply = problem.bins.map(bin => bin.available);
  return repaired(looking, filled, { cost, supply }, 0, until, Number.POSITIVE_INFINITY, seen);
}

/** The rectangle that is filled, and the pieces, measured along the first cuts' direction and across it. */
type Field = {
  readonly lying: readonly Lying[];
  /** Of each way to lie. */
  readonly alongs: Int32Array;
  readonly acrosses: Int32Array;
  readonly kinds: Int32Array;
  readonly areas: Float64Array;
  readonly marks: Int32Array;
  readonly along: number;
  readonly across: number;
  readonly area: number;
  /** Whether a row may have several pieces. */
  readonly shares: boolean;
  /** Room for what is taken of all bins by each way in which a piece may go on. */
  readonly taken: Float64Array;
};

/** Where a piece goes: on in its row, into a new row, a new strip, or a new bin. */
const ON = 0;
const ROW = 1;
const STRIP = 2;
const BIN = 3;

/** How the beginnings of a step came about. */
type Step = { readonly from: Int32Array; readonly lie: Int32Array; readonly where: Uint8Array };

function filledBy(looking: Looking, first: Direction, bins: number, width: number, until: number): Filling | undefined {
  const { problem } = looking;
  const field = fieldOf(looking, first);
  const demand = demandOf(problem, []);
  const spare = bins * field.area - areaAsked(problem, demand);
  if (spare < 0 || bins < 1) return undefined;
  const words = wordsFor(field.lying.length);
  let now = beginnings(width, demand.length, words);
  let next = beginnings(width, demand.length, words);
  now.count = 1;
  now.left.set(demand);
  for (let lie = 0; lie < field.lying.length; lie += 1) add(now.open, 0, lie);
  // Before the first piece, a bin is full that is none.
  now.bin[0] = -1;
  now.end[0] = field.along;
  now.strip[0] = field.along;
  now.reach[0] = field.along;
  now.top[0] = field.across;
  const ways = waysFor(SPARE * width);
  const known = knownFor(SPARE * width);
  const steps: Step[] = [];
  const count = piecesAsked(demand);
  for (let step = 0; step < count; step += 1) {
    looking.looks += now.count * (LOOKS_A_BEGINNING + LOOKS_A_PIECE * field.alongs.length);
    if (looking.looks > until) return undefined;
    forget(ways);
    for (let from = 0; from < now.count; from += 1) goOn(field, now, from, bins, spare, ways);
    if (ways.count === 0) break;
    steps.push(carryOn(field, now, next, ways, known, width));
    looking.looks += LOOKS_KEPT * ways.count;
    [now, next] = [next, now];
  }
  const filled = treesOf(field, first, steps).map(tree => binOf(problem, 0, [tree]));
  return { bins: filled, left: kindsAsked(demandOf(problem, filled.flatMap(piecesIn))) };
}

function fieldOf({ problem }: Looking, first: Direction): Field {
  const lying = lyingIn(problem);
  const { length, width } = problem.bins[0]?.clear[0] ?? { length: 0, width: 0 };
  const crosscut = first === 'crosscut';
  return {
    lying,
    alongs: Int32Array.from(lying, lie => (crosscut ? lie.length : lie.width)),
    acrosses: Int32Array.from(lying, lie => (crosscut ? lie.width : lie.length)),
    kinds: Int32Array.from(lying, lie => lie.kind),
    areas: Float64Array.from(lying, lie => lie.length * lie.width),
    marks: Int32Array.from(lying, lie => Math.imul(lie.kind + 1, 0x9e3779b1) ^ Math.imul(lie.kind + 7, 0x85ebca6b)),
    along: crosscut ? length : width,
    across: crosscut ? width : length,
    area: length * width,
    shares: problem.stages > STAGES,
    taken: new Float64Array(BIN + 1),
  };
}

/**
 * Every way to go on with one piece more, unless more is wasted than there is to spare. The best is the one that wasted the
 * least share of what it took, and a little, for the size of its pieces: both squared, for the root of the size.
 */
function goOn(field: Field, now: Beginnings, from: number, bins: number, spare: number, ways: Ways): void {
  const { alongs, acrosses, areas, along, across, area, shares, taken } = field;
  const { limit, value } = ways;
  const bin = now.bin[from] ?? 0;
  const strip = now.strip[from] ?? 0;
  const end = now.end[from] ?? 0;
  const row = now.row[from] ?? 0;
  const top = now.top[from] ?? 0;
  const reach = now.reach[from] ?? 0;
  const filled = now.filled[from] ?? 0;
  const words = wordsFor(alongs.length);
  const before = bin * area + strip * across;
  let { count } = ways;
  let word = -1;
  for (let bits = 0; ; bits &= bits - 1) {
    while (bits === 0 && word + 1 < words) {
      word += 1;
      bits = now.open[from * words + word] ?? 0;
    }
    if (bits === 0) break;
    const lie = (word << 5) + 31 - Math.clz32(bits & -bits);
    const long = alongs[lie] ?? 0;
    const wide = acrosses[lie] ?? 0;
    const after = filled + (areas[lie] ?? 0);
    const isOn = shares && reach + long <= along && row + wide <= across;
    const isInRow = strip + long <= along && top + wide <= across;
    const isInStrip = end + long <= along;
    taken[ON] = isOn
      ? before +
        (Math.max(end, reach + long) - strip) * row +
        (reach + long - strip) * (Math.max(top, row + wide) - row)
      : NEVER;
    taken[ROW] = isInRow ? before + (Math.max(end, strip + long) - strip) * top + long * wide : NEVER;
    taken[STRIP] = isInStrip ? bin * area + end * across + long * wide : NEVER;
    taken[BIN] = isOn || isInRow || isInStrip || bin + 1 >= bins ? NEVER : (bin + 1) * area + long * wide;
    for (let where = ON; where <= BIN; where += 1) {
      const took = taken[where] ?? NEVER;
      if (took - after > spare) continue;
      const waste = (LITTLE + 1) * took - after;
      const part = took * took * after;
      // Nearly all are none of the best, and need not be divided.
      if (waste * waste >= (limit[0] ?? 0) * part) continue;
      value[count] = (waste * waste) / part;
      ways.from[count] = from;
      ways.lie[count] = lie;
      ways.where[count] = where;
      count += 1;
      if (count < value.length) continue;
      ways.count = count;
      sift(ways);
      count = ways.count;
    }
  }
  ways.count = count;
}

/** More than any plan takes. */
const NEVER = Number.POSITIVE_INFINITY;

/** Without it, nothing would be better than no waste, and small pieces would go in first. */
const LITTLE = 0.02;

/** Takes the best different ways, and makes the next beginnings of them. */
function carryOn(field: Field, now: Beginnings, next: Beginnings, ways: Ways, known: Known, width: number): Step {
  const { lying, alongs, acrosses, kinds, areas, marks } = field;
  const size = now.left.length / now.bin.length;
  const words = wordsFor(alongs.length);
  putInOrder(ways);
  known.step += 1;
  const step = { from: new Int32Array(width), lie: new Int32Array(width), where: new Uint8Array(width) };
  let to = 0;
  for (let rank = 0; rank < ways.count && to < width; rank += 1) {
    const way = placeOf(ways, rank);
    const from = ways.from[way] ?? 0;
    const lie = ways.lie[way] ?? 0;
    const where = ways.where[way] ?? ON;
    const long = alongs[lie] ?? 0;
    const wide = acrosses[lie] ?? 0;
    const bin = (now.bin[from] ?? 0) + (where === BIN ? 1 : 0);
    const strip = where === BIN ? 0 : where === STRIP ? (now.end[from] ?? 0) : (now.strip[from] ?? 0);
    const row = where === ON ? (now.row[from] ?? 0) : where === ROW ? (now.top[from] ?? 0) : 0;
    const reach = where === ON ? (now.reach[from] ?? 0) + long : strip + long;
    const end = Math.max(where === ON || where === ROW ? (now.end[from] ?? 0) : 0, reach);
    const top = Math.max(where === ON ? (now.top[from] ?? 0) : 0, row + wide);
    const mark = ((now.mark[from] ?? 0) + (marks[lie] ?? 0)) | 0;
    // Beginnings with the same pieces and the same room beyond them are one.
    const front =
      Math.imul(end + 31 * bin, 0x9e3779b1) ^ Math.imul(row + 7 * strip, 0x85ebca6b) ^ Math.imul(top, 0xc2b2ae35);
    if (isKnown(known, mark, front ^ Math.imul(reach, 0x27d4eb2f))) continue;
    next.bin[to] = bin;
    next.strip[to] = strip;
    next.end[to] = end;
    next.row[to] = row;
    next.top[to] = top;
    next.reach[to] = reach;
    next.filled[to] = (now.filled[from] ?? 0) + (areas[lie] ?? 0);
    next.mark[to] = mark;
    for (let kind = 0; kind < size; kind += 1) next.left[to * size + kind] = now.left[from * size + kind] ?? 0;
    for (let word = 0; word < words; word += 1) next.open[to * words + word] = now.open[from * words + word] ?? 0;
    const kind = kinds[lie] ?? 0;
    const left = (next.left[to * size + kind] ?? 0) - 1;
    next.left[to * size + kind] = left;
    if (left === 0) {
      strike(next.open, to * words, lie);
      strike(next.open, to * words, lying[lie]?.twin ?? lie);
    }
    step.from[to] = from;
    step.lie[to] = lie;
    step.where[to] = where;
    to += 1;
  }
  next.count = to;
  return step;
}

/** The bins of the best beginning. */
function treesOf({ lying }: Field, first: Direction, steps: readonly Step[]): readonly CutTree[] {
  const bins: Lying[][][][] = [];
  const path: { readonly lie: number; readonly where: number }[] = [];
  let at = 0;
  for (const { from, lie, where } of [...steps].reverse()) {
    path.push({ lie: lie[at] ?? 0, where: where[at] ?? ON });
    at = from[at] ?? 0;
  }
  for (const { lie, where } of path.reverse()) {
    const piece = lying[lie];
    if (piece === undefined) continue;
    if (where === BIN) bins.push([[[piece]]]);
    else if (where === STRIP) bins.at(-1)?.push([[piece]]);
    else if (where === ROW) bins.at(-1)?.at(-1)?.push([piece]);
    else bins.at(-1)?.at(-1)?.at(-1)?.push(piece);
  }
  const across = other(first);
  return bins.map(strips =>
    together(
      first,
      strips.map(rows =>
        together(
          across,
          rows.map(row => together(first, row.map(pieceOf))),
        ),
      ),
    ),
  );
}
