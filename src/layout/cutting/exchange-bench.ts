import { type Chance, pick } from './chance.ts';
import { comesOut, FEW, type FewPieces } from './few-pieces.ts';
import { treeOfFew } from './few-trees.ts';
import { binOf, isSawable } from './fill.ts';
import type { Filling } from './first-plan.ts';
import type { CuttingProblem } from './problem.ts';
import { isRow, type OpenBin } from './rows.ts';

/** The bins on the bench: which pieces each has, by how they lie. */
export type Bench = {
  readonly few: FewPieces;
  readonly lies: Int32Array;
  readonly counts: Int32Array;
  readonly filled: Int32Array;
  /** Where the chance of moves stands: a 32-bit number that is never 0. */
  chance: number;
  readonly beside: number[];
  /** Bins that nothing is taken from. */
  readonly others: readonly OpenBin[];
};

/**
 * All bins but the emptiest, whose pieces lie beside; bins of more pieces than are asked about stay as they are. Undefined
 * where no others are left.
 */
export function benchOf(few: FewPieces, { bins }: Filling, chance: Chance): Bench | undefined {
  const numbers = new Map(few.lying.map((lie, number) => [`${lie.kind} ${lie.turned}`, number]));
  const all = bins.map(bin => ({
    bin,
    lies: liesIn(bin).flatMap(({ kind, turned }) => numbers.get(`${kind} ${turned}`) ?? []),
  }));
  const [known, others] = [all.filter(({ lies }) => isKnown(few, lies)), all.filter(({ lies }) => !isKnown(few, lies))];
  const emptiest = known.reduce<(typeof known)[number] | undefined>(
    (least, each) => (least === undefined || each.bin.filled < least.bin.filled ? each : least),
    undefined,
  );
  const open = known.filter(each => each !== emptiest);
  if (emptiest === undefined || open.length === 0) return undefined;
  const lies = new Int32Array(FEW * open.length);
  for (const [at, each] of open.entries()) lies.set(each.lies, at * FEW);
  return {
    few,
    lies,
    counts: Int32Array.from(open, each => each.lies.length),
    filled: Int32Array.from(open, each => each.lies.reduce((sum, lie) => sum + (few.areas[lie] ?? 0), 0)),
    chance: 1 + pick(chance, 2 ** 31),
    beside: [...emptiest.lies],
    others: others.map(({ bin }) => bin),
  };
}

function isKnown(few: FewPieces, lies: readonly number[]): boolean {
  if (lies.length > FEW) return false;
  few.sets.set(lies);
  return comesOut(few, lies.length);
}

const liesIn = (bin: OpenBin): readonly { readonly kind: number; readonly turned: boolean }[] =>
  bin.rows.flatMap(row =>
    row.parts.flatMap(part => {
      if (isRow(part)) return [];
      // A piece knows how it is turned where the row runs with it.
      return [{ kind: part.kind, turned: part.turned }];
    }),
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
