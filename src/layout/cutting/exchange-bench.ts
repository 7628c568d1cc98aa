import { type Chance, pick } from './chance.ts';
import { comesOut, FEW, type FewPieces } from './few-pieces.ts';
import { treeOfFew } from './few-trees.ts';
import { emptiestOf } from './fewer-bins.ts';
import { binOf, isSawable } from './fill.ts';
import type { Filling } from './first-plan.ts';
import type { CuttingProblem } from './problem.ts';
import { isRow, type OpenBin } from './rows.ts';

/** The bins on the bench: which pieces each has, by how they lie, and which lie beside. A bin has room for `FEW`. */
export type Bench = {
  readonly few: FewPieces;
  readonly lies: Int32Array;
  readonly counts: Int32Array;
  readonly filled: Int32Array;
  readonly beside: number[];
  /** Bins that nothing is taken from. */
  readonly others: readonly OpenBin[];
  /** Where the chance of moves stands: a 32-bit number that is never 0. */
  chance: number;
};

/**
 * All bins but the emptiest, whose pieces lie beside; bins of more pieces than are asked about stay as they are. Undefined
 * where no others are left.
 */
export function benchOf(few: FewPieces, { bins }: Filling, chance: Chance): Bench | undefined {
  const numbers = new Map(few.lying.map((lie, number) => [`${lie.kind} ${lie.turned}`, number]));
  const all = bins.map(bin => {
    const lies = liesIn(bin, numbers);
    return { bin, lies, isKnown: isKnown(few, bin, lies) };
  });
  const known = all.filter(each => each.isKnown);
  const others = all.filter(each => !each.isKnown);
  const emptiest = emptiestOf(known.map(({ bin }) => bin));
  const open = known.filter(({ bin }) => bin !== emptiest);
  if (open.length === 0) return undefined;
  const lies = new Int32Array(FEW * open.length);
  for (const [at, each] of open.entries()) lies.set(each.lies, at * FEW);
  return {
    few,
    lies,
    counts: Int32Array.from(open, each => each.lies.length),
    filled: Int32Array.from(open, each => each.lies.reduce((sum, lie) => sum + (few.areas[lie] ?? 0), 0)),
    chance: 1 + pick(chance, 2 ** 31),
    beside: known.flatMap(({ bin, lies }) => (bin === emptiest ? lies : [])),
    others: others.map(({ bin }) => bin),
  };
}

/** Whether the bin may be asked about, as its pieces lie. */
function isKnown(few: FewPieces, bin: OpenBin, lies: readonly number[]): boolean {
  if (lies.length > FEW || lies.length !== bin.count) return false;
  few.sets.set(lies);
  return comesOut(few, lies.length);
}

const liesIn = (bin: OpenBin, numbers: ReadonlyMap<string, number>): readonly number[] =>
  bin.rows.flatMap(row =>
    row.parts.flatMap(part => (isRow(part) ? [] : (numbers.get(`${part.kind} ${part.turned}`) ?? []))),
  );

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
