import { type Chance, pick } from './chance.ts';
import { comesOut } from './coming-out.ts';
import type { Companions } from './companions.ts';
import { FEW, type FewPieces } from './few-pieces.ts';
import { treeOfFew } from './few-trees.ts';
import { emptiestOf } from './fewer-bins.ts';
import { binOf, isSawable } from './fill.ts';
import type { Filling } from './first-plan.ts';
import type { CuttingProblem } from './problem.ts';
import { isRow, type OpenBin } from './rows.ts';

/** The bins on the bench, and what lies beside. A bin has `FEW` places for pieces, and those it has stand in the first. */
export type Bench = {
  readonly few: FewPieces;
  readonly companions: Companions;
  readonly lies: Int32Array;
  readonly counts: Int32Array;
  /** Where each piece is, or −1 beside, whichever way it lies: `FEW` places for each bin. */
  readonly places: Int32Array;
  readonly beside: number[];
  /** What each piece weighs, and the pieces of each bin together: no more than `FULL` come out of a bin. */
  readonly weights: Int32Array;
  readonly filled: Int32Array;
  /** For each bin, and each of its pieces that comes out, or `FEW` for none, the bits of those that may go in then. */
  readonly welcome: Int32Array;
  /** Whether these bits have been worked out since the bin changed. */
  readonly made: Uint8Array;
  /** Room for those with which an exchange is tried. */
  readonly candidates: Int32Array;
  /** Bins that nothing is taken from. */
  readonly others: readonly OpenBin[];
  /** Where the chance of moves stands: a 32-bit number that is never 0. */
  chance: number;
};

/**
 * All bins but the emptiest, whose pieces lie beside; bins of more pieces than are asked about stay as they are. Undefined
 * where no others are left.
 */
export function benchOf(companions: Companions, { bins }: Filling, chance: Chance): Bench | undefined {
  const { few } = companions;
  const numbers = numbersOf(few);
  const all = bins.map(bin => {
    const lies = liesIn(few, bin, numbers);
    return { bin, lies, isKnown: isKnown(few, bin, lies) };
  });
  const known = all.filter(each => each.isKnown);
  const emptiest = emptiestOf(known.map(({ bin }) => bin));
  const open = known.filter(({ bin }) => bin !== emptiest);
  if (open.length === 0) return undefined;
  const bench: Bench = {
    few,
    companions,
    lies: new Int32Array(FEW * open.length),
    counts: new Int32Array(open.length),
    places: new Int32Array(few.lying.length).fill(-1),
    beside: known.flatMap(({ bin, lies }) => (bin === emptiest ? lies : [])),
    weights: new Int32Array(few.lying.length),
    filled: new Int32Array(open.length),
    welcome: new Int32Array(open.length * (FEW + 1) * companions.words),
    made: new Uint8Array(open.length * (FEW + 1)),
    candidates: new Int32Array(few.lying.length),
    others: all.filter(each => !each.isKnown).map(({ bin }) => bin),
    chance: 1 + pick(chance, 2 ** 31),
  };
  for (const [at, { lies }] of open.entries()) for (const lie of lies) put(bench, at, FEW, FEW, lie, -1);
  return bench;
}

/** The numbers of each kind's pieces, as one of the ways in which they lie. */
function numbersOf({ lying }: FewPieces): ReadonlyMap<number, number[]> {
  const numbers = new Map<number, number[]>();
  for (const [number, { kind, twin }] of lying.entries())
    if (number <= twin) numbers.set(kind, [...(numbers.get(kind) ?? []), number]);
  return numbers;
}

/** Takes a number for each piece of a bin. */
const liesIn = ({ lying }: FewPieces, bin: OpenBin, numbers: ReadonlyMap<number, number[]>): readonly number[] =>
  bin.rows.flatMap(row =>
    row.parts.flatMap(part => {
      const number = isRow(part) ? undefined : numbers.get(part.kind)?.pop();
      const lie = number === undefined ? undefined : lying[number];
      if (isRow(part) || number === undefined || lie === undefined) return [];
      return [lie.turned === part.turned ? number : lie.twin];
    }),
  );

/** Whether the bin may be asked about, as its pieces lie. */
function isKnown(few: FewPieces, bin: OpenBin, lies: readonly number[]): boolean {
  if (lies.length > FEW || lies.length !== bin.count) return false;
  few.sets.set(lies);
  return comesOut(few, lies.length);
}

/** Whether a piece or two, or −1 for none, come out of a bin instead of what is at one place and another. */
export function takes(
  { few, lies, counts }: Bench,
  bin: number,
  place: number,
  place2: number,
  first: number,
  second: number,
): boolean {
  const { sets } = few;
  const start = bin * FEW;
  const count = counts[bin] ?? 0;
  let kept = 0;
  for (let at = 0; at < count; at += 1) {
    if (at === place || at === place2) continue;
    sets[kept] = lies[start + at] ?? 0;
    kept += 1;
  }
  if (kept + 2 > FEW) return false;
  sets[kept] = first;
  if (second >= 0) sets[kept + 1] = second;
  return comesOut(few, second < 0 ? kept + 1 : kept + 2);
}

/** Puts a piece or two, or −1 for none, into a bin instead of what is at one place and another. */
export function put(bench: Bench, bin: number, place: number, place2: number, first: number, second: number): void {
  const { few, lies, counts, places, weights, filled, made } = bench;
  const start = bin * FEW;
  const count = counts[bin] ?? 0;
  let kept = 0;
  let weight = 0;
  for (let at = 0; at < count + 2; at += 1) {
    if (at < count && (at === place || at === place2)) continue;
    const lie = at < count ? (lies[start + at] ?? 0) : at === count ? first : second;
    if (lie < 0) continue;
    lies[start + kept] = lie;
    places[lie] = start + kept;
    places[few.twins[lie] ?? lie] = start + kept;
    weight += weights[lie] ?? 0;
    kept += 1;
  }
  counts[bin] = kept;
  filled[bin] = weight;
  made.fill(0, bin * (FEW + 1), (bin + 1) * (FEW + 1));
}

/** Puts what lay beside into a bin instead of what is at one place and another, which lies beside then. */
export function putFromBeside(bench: Bench, at: number, bin: number, place: number, place2: number, lie: number): void {
  const { few, lies, places, beside } = bench;
  const out = place === FEW ? -1 : (lies[bin * FEW + place] ?? 0);
  const out2 = place2 === place ? -1 : (lies[bin * FEW + place2] ?? 0);
  put(bench, bin, place, place2, lie, -1);
  beside[at] = beside.at(-1) ?? 0;
  beside.pop();
  for (const each of [out, out2]) {
    if (each < 0) continue;
    beside.push(each);
    places[each] = -1;
    places[few.twins[each] ?? each] = -1;
  }
}

/** Weighs all pieces anew. */
export function reweigh({ lies, counts, weights, filled }: Bench, by: Int32Array): void {
  weights.set(by);
  for (let bin = 0; bin < counts.length; bin += 1) {
    let weight = 0;
    for (let at = 0; at < (counts[bin] ?? 0); at += 1) weight += weights[lies[bin * FEW + at] ?? 0] ?? 0;
    filled[bin] = weight;
  }
}

/** The bins as they are cut; undefined where one of them cannot be. */
export function binsOf(problem: CuttingProblem, { few, lies, counts, others }: Bench): readonly OpenBin[] | undefined {
  const bins = [...others];
  for (const [at, count] of counts.entries()) {
    if (count === 0) continue;
    const tree = treeOfFew(few, Array.from(lies.subarray(at * FEW, at * FEW + count)));
    const bin = tree && binOf(problem, 0, [tree]);
    if (bin === undefined || !isSawable(problem, bin)) return undefined;
    bins.push(bin);
  }
  return bins;
}
