import { type CutTree, together } from './cut-tree.ts';
import { type Direction, other } from './rows.ts';
import { fillSack, type Items, type Sack, TINY, takenFrom, worthOfSack } from './sack.ts';
import { byExtent, type Lie, type Stretch } from './stretch.ts';

/** A stretch cut so that the prices of its pieces add up to the most. */
export type Priced = { readonly value: number; readonly tree: () => CutTree | undefined };

/**
 * The best of all ways to cut a stretch in three stages: strips across it, in each strip rows of pieces that are equally
 * wide, and in each row pieces that may be shorter than the strip. With two stages a strip is a row of pieces that are
 * exactly as wide as it is. P. C. Gilmore, R. E. Gomory, "Multistage cutting stock problems of two and more dimensions",
 * Operations Research 13 (1965) 94-120.
 */
export const price = (stretch: Stretch, stages: 2 | 3, prices: ArrayLike<number>): Priced =>
  stages === 2 ? priceTwo(stretch, prices) : priceThree(stretch, prices);

function priceThree(stretch: Stretch, prices: ArrayLike<number>): Priced {
  const { main, cross, lies } = stretch;
  const rows = byExtent(lies, lie => lie.crossSize).map(({ same }) => ({
    same,
    cross: same[0]?.cross ?? 0,
    sack: fillSack(
      main,
      itemsOf(same, lie => lie.main, prices),
    ),
  }));
  const sizes = rows.map(row => row.cross);
  const rowsAt = new Float64Array(rows.length);
  const setRows = (at: number): boolean => {
    let changed = false;
    for (let row = 0; row < rows.length; row += 1) {
      const value = rows[row]?.sack.values[at] ?? 0;
      changed ||= value !== rowsAt[row];
      rowsAt[row] = value;
    }
    return changed;
  };
  // A strip that is no better than a narrower one is left out.
  const worthOfStrip = worthOfSack(cross, sizes);
  const worth: number[] = [];
  const values: number[] = [];
  let best = 0;
  for (let at = 1; at < main.count; at += 1) {
    const value = setRows(at) ? worthOfStrip(rowsAt) : 0;
    if (value <= best + TINY) continue;
    best = value;
    worth.push(at);
    values.push(value);
  }
  const all = fillSack(main, { sizes: worth, values: Float64Array.from(values) });
  const treeOfRow = (row: number, at: number): CutTree => {
    const found = rows[row];
    const pieces = found === undefined ? [] : takenFrom(main, found.sack, at);
    return inRow(
      stretch,
      stretch.first,
      pieces.flatMap(index => found?.same[index] ?? []),
    );
  };
  const treeOfStrip = (at: number): CutTree => {
    setRows(at);
    const strip = fillSack(cross, { sizes, values: rowsAt });
    return inRow(
      stretch,
      other(stretch.first),
      takenFrom(cross, strip, cross.count - 1).map(row => treeOfRow(row, at)),
    );
  };
  return whole(stretch, all, index => treeOfStrip(worth[index] ?? 0));
}

function priceTwo(stretch: Stretch, prices: ArrayLike<number>): Priced {
  const { main, cross, lies } = stretch;
  const strips = byExtent(lies, lie => lie.mainSize).map(({ same }) => ({
    same,
    main: same[0]?.main ?? 0,
    sack: fillSack(
      cross,
      itemsOf(same, lie => lie.cross, prices),
    ),
  }));
  const all = fillSack(main, {
    sizes: strips.map(strip => strip.main),
    values: Float64Array.from(strips, strip => strip.sack.values.at(-1) ?? 0),
  });
  return whole(stretch, all, index => {
    const strip = strips[index];
    const pieces = strip === undefined ? [] : takenFrom(cross, strip.sack, cross.count - 1);
    return inRow(
      stretch,
      other(stretch.first),
      pieces.flatMap(each => strip?.same[each] ?? []),
    );
  });
}

const itemsOf = (same: readonly Lie[], sizeOf: (lie: Lie) => number, prices: ArrayLike<number>): Items => ({
  sizes: same.map(sizeOf),
  values: Float64Array.from(same, lie => prices[lie.kind] ?? 0),
});

const whole = (stretch: Stretch, all: Sack, strip: (index: number) => CutTree): Priced => ({
  value: all.values.at(-1) ?? 0,
  tree: () => {
    const strips = takenFrom(stretch.main, all, stretch.main.count - 1);
    return strips.length === 0 ? undefined : inRow(stretch, stretch.first, strips.map(strip));
  },
});

function inRow(stretch: Stretch, direction: Direction, parts: readonly (Lie | CutTree)[]): CutTree {
  return together(
    direction,
    parts.map(part => ('mainSize' in part ? pieceOf(stretch, part) : part)),
  );
}

const pieceOf = ({ first }: Stretch, { kind, turned, mainSize, crossSize }: Lie): CutTree => ({
  kind: 'piece',
  piece: kind,
  turned,
  length: first === 'crosscut' ? mainSize : crossSize,
  width: first === 'crosscut' ? crossSize : mainSize,
});
