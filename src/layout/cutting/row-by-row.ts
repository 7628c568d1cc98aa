import { keepWay, type Ways, waysFor } from './best-ways.ts';
import { type CutTree, together } from './cut-tree.ts';
import { areaAsked, piecesAsked } from './demand.ts';
import { binOf, isSawable } from './fill.ts';
import { COST_EPSILON, costOfBins, type Filling } from './first-plan.ts';
import { isPlain, type Lying, lyingIn, pieceOf } from './lying.ts';
import type { Looking } from './placing.ts';
import { BOTH, type Direction, type OpenBin, other } from './rows.ts';

/** Whether `rowByRow` knows how to fill the bins of this plan: a few plain ones, within the stages. */
export function suitsRowByRow({ problem }: Looking, { bins, left }: Filling): boolean {
  return isPlain(problem) && left.length === 0 && problem.stages >= STAGES && bins.length <= BINS_MAX;
}

/** Strips, rows of these, and a trim of each row; with a stage more, rows of several pieces. */
const STAGES = 3;
/** What is filled piece by piece is not changed any more: with more bins, a first one that is a little worse tells too late. */
const BINS_MAX = 20;

/** So many beginnings are carried on at first; then twice as many, until the looks are spent. */
const WIDTH = 32;
const WIDTH_MAX = 4096;
/** Of these, more are kept than are carried on, because some are the same. */
const SPARE = 3;

/** What a step costs for each beginning, for each piece that it may go on with, for each beginning that is kept, in looks. */
const LOOKS_A_BEGINNING = 55;
const LOOKS_A_PIECE = 2.2;
const LOOKS_KEPT = 42;

/**
 * Looks for a plan of fewer bins where many unlike pieces crowd a few: fills them strip by strip, each strip row by row and
 * each row piece by piece, and carries on the best of many beginnings with the same number of pieces, those that waste
 * least for the size of their pieces: what is large goes in first, or else it finds no place. After L. Libralesso,
 * F. Fontan, "An anytime tree search algorithm for the 2018 ROADEF/EURO challenge glass cutting problem", EJOR 291 (2021)
 * 883-893; the measure of waste is our own.
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
  for (let width = WIDTH; width <= WIDTH_MAX; width *= 3) {
    for (const first of BOTH) {
      for (;;) {
        if (costOfBins(problem, best.bins) <= least + COST_EPSILON || looking.looks >= until) return best;
        const trees = filledBy(looking, first, best.bins.length - 1, width, until);
        if (trees === undefined) break;
        const bins = trees.map(tree => binOf(problem, 0, [tree]));
        if (!bins.every(bin => isSawable(problem, bin))) break;
        seen(bins);
        best = { bins, left: [] };
      }
    }
  }
  return best;
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
};

/** Where a piece goes: on in its row, into a new row, a new strip, or a new bin. */
const ON = 0;
const ROW = 1;
const STRIP = 2;
const BIN = 3;

/**
 * Beginnings with the same number of pieces. A strip begins at `strip` and ends at `end`, the last row of it begins at
 * `row` and ends at `top`, and the pieces in that end at `reach`.
 */
type Beginnings = {
  readonly left: Uint16Array;
  readonly bin: Int32Array;
  readonly strip: Int32Array;
  readonly end: Int32Array;
  readonly row: Int32Array;
  readonly top: Int32Array;
  readonly reach: Int32Array;
  readonly filled: Float64Array;
  readonly mark: Int32Array;
  count: number;
};

/** How the beginnings of a step came about. */
type Step = { readonly from: Int32Array; readonly lie: Int32Array; readonly where: Uint8Array };

function filledBy(
  looking: Looking,
  first: Direction,
  bins: number,
  width: number,
  until: number,
): readonly CutTree[] | undefined {
  const { problem } = looking;
  const field = fieldOf(looking, first);
  const demand = problem.pieces.map(piece => piece.blanks.length);
  const spare = bins * field.area - areaAsked(problem, demand);
  if (spare < 0 || bins < 1) return undefined;
  let now = beginnings(width, demand.length);
  let next = beginnings(width, demand.length);
  now.count = 1;
  now.left.set(demand);
  // Before the first piece, a bin is full that is none.
  now.bin[0] = -1;
  now.end[0] = field.along;
  now.strip[0] = field.along;
  now.top[0] = field.across;
  const ways = waysFor(SPARE * width);
  const steps: Step[] = [];
  const count = piecesAsked(demand);
  for (let step = 0; step < count; step += 1) {
    looking.looks += now.count * (LOOKS_A_BEGINNING + LOOKS_A_PIECE * field.alongs.length);
    if (looking.looks > until) return undefined;
    ways.count = 0;
    for (let from = 0; from < now.count; from += 1) goOn(field, now, from, bins, spare, step + 1, ways);
    if (ways.count === 0) return undefined;
    looking.looks += LOOKS_KEPT * ways.count;
    steps.push(carryOn(field, now, next, ways, width));
    [now, next] = [next, now];
  }
  return treesOf(field, first, steps);
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
  };
}

const beginnings = (width: number, kinds: number): Beginnings => ({
  left: new Uint16Array(width * kinds),
  bin: new Int32Array(width),
  strip: new Int32Array(width),
  end: new Int32Array(width),
  row: new Int32Array(width),
  top: new Int32Array(width),
  reach: new Int32Array(width),
  filled: new Float64Array(width),
  mark: new Int32Array(width),
  count: 0,
});

/**
 * Every way to go on with one piece more, unless more is wasted than there is to spare. The best is the one that wasted the
 * least share of what it took, and a little, for the size of its pieces.
 */
function goOn(
  field: Field,
  now: Beginnings,
  from: number,
  bins: number,
  spare: number,
  pieces: number,
  ways: Ways,
): void {
  const { alongs, acrosses, areas, kinds, along, across, area, shares } = field;
  const bin = now.bin[from] ?? 0;
  const strip = now.strip[from] ?? 0;
  const end = now.end[from] ?? 0;
  const row = now.row[from] ?? 0;
  const top = now.top[from] ?? 0;
  const reach = now.reach[from] ?? 0;
  const filled = now.filled[from] ?? 0;
  const base = from * (now.left.length / now.bin.length);
  for (let lie = 0; lie < alongs.length; lie += 1) {
    if ((now.left[base + (kinds[lie] ?? 0)] ?? 0) === 0) continue;
    const long = alongs[lie] ?? 0;
    const wide = acrosses[lie] ?? 0;
    const after = filled + (areas[lie] ?? 0);
    const size = Math.sqrt(pieces / after);
    let fits = false;
    if (bin >= 0) {
      if (shares && reach + long <= along && row + wide <= across) {
        fits = true;
        const ends = Math.max(end, reach + long);
        const tops = Math.max(top, row + wide);
        const taken = bin * area + strip * across + (ends - strip) * row + (reach + long - strip) * (tops - row);
        if (taken - after <= spare) keepWay(ways, (LITTLE + 1 - after / taken) * size, from, lie, ON);
      }
      if (strip + long <= along && top + wide <= across) {
        fits = true;
        const taken = bin * area + strip * across + (Math.max(end, strip + long) - strip) * top + long * wide;
        if (taken - after <= spare) keepWay(ways, (LITTLE + 1 - after / taken) * size, from, lie, ROW);
      }
      if (end + long <= along) {
        fits = true;
        const taken = bin * area + end * across + long * wide;
        if (taken - after <= spare) keepWay(ways, (LITTLE + 1 - after / taken) * size, from, lie, STRIP);
      }
    }
    if (fits || bin + 1 >= bins) continue;
    const taken = (bin + 1) * area + long * wide;
    if (taken - after <= spare) keepWay(ways, (LITTLE + 1 - after / taken) * size, from, lie, BIN);
  }
}

/** Without it, nothing would be better than no waste, and small pieces would go in first. */
const LITTLE = 0.02;

/** Takes the best different ways, and makes the next beginnings of them. */
function carryOn(field: Field, now: Beginnings, next: Beginnings, ways: Ways, width: number): Step {
  const { alongs, acrosses, kinds, areas, marks } = field;
  const size = now.left.length / now.bin.length;
  const order = Array.from({ length: ways.count }, (_, at) => at).sort(
    (one, two) => (ways.value[one] ?? 0) - (ways.value[two] ?? 0) || one - two,
  );
  const known = new Set<number>();
  const step = { from: new Int32Array(width), lie: new Int32Array(width), where: new Uint8Array(width) };
  let to = 0;
  for (const way of order) {
    if (to === width) break;
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
    const name = mark * 2 ** 21 + ((front ^ Math.imul(reach, 0x27d4eb2f)) >>> 11);
    if (known.has(name)) continue;
    known.add(name);
    next.bin[to] = bin;
    next.strip[to] = strip;
    next.end[to] = end;
    next.row[to] = row;
    next.top[to] = top;
    next.reach[to] = reach;
    next.filled[to] = (now.filled[from] ?? 0) + (areas[lie] ?? 0);
    next.mark[to] = mark;
    next.left.set(now.left.subarray(from * size, (from + 1) * size), to * size);
    const at = to * size + (kinds[lie] ?? 0);
    next.left[at] = (next.left[at] ?? 0) - 1;
    step.from[to] = from;
    step.lie[to] = lie;
    step.where[to] = where;
    to += 1;
  }
  next.count = to;
  return step;
}

/** The bins of the best beginning that has all pieces. */
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
