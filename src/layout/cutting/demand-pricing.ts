import { type CutTree, together } from './cut-tree.ts';
import type { Demand } from './demand.ts';
import { pieceOf } from './lying.ts';
import { type Counting, countingOf, kindsOf, tooMany } from './packed-counts.ts';
import { countsOf, type Pattern } from './patterns.ts';
import type { CuttingProblem } from './problem.ts';
import {
  BELOW,
  FREE,
  fillLayers,
  inThree,
  type Layer,
  PIECE,
  placesOf,
  type Sheet,
  SMALLER,
  STAGES_AND_TRIM,
  sheetOf,
} from './rectangles.ts';
import { BOTH, type Direction } from './rows.ts';

/** Finds patterns of a kind of bin that are worth more than a limit, none with more pieces of a kind than are asked for. */
export type DemandPricer = {
  readonly bin: number;
  /** What asking once takes, in looks. */
  readonly looks: number;
  readonly better: (prices: ArrayLike<number>, worth: number) => readonly Pattern[];
};

/**
 * Pricers for what is asked for: each rectangle is a piece, or two rectangles beside or behind each other that together
 * have no more pieces than that. Of every rectangle only the best way is kept, so that the best of all patterns may be
 * missed where the ways of two rectangles want the same piece; but where most kinds are asked for once, patterns that
 * have them twice are no use at all. Where stages are limited, there is one pricer for each direction of first cuts. None
 * where there are defects, two stages only, or nothing that fits.
 */
export function openDemandPricers(problem: CuttingProblem, demand: Demand, bin: number): readonly DemandPricer[] {
  const [clear, ...others] = problem.bins[bin]?.clear ?? [];
  if (clear === undefined || others.length > 0 || problem.stages < 3) return [];
  const sheet = sheetOf(problem, demand, clear);
  if (sheet === undefined) return [];
  const corners = sheet.along.count * sheet.across.count;
  const ways = problem.stages > STAGES_AND_TRIM ? [FREE] : BOTH.map(first => inThree(first, problem.stages));
  return ways.map(layers => ({
    bin,
    looks: layers.reduce((sum, layer) => sum + placesOf(sheet, layer) / PLACES_A_LOOK, corners / CORNERS_A_LOOK),
    better: (prices, worth) => {
      const counting = countingOf(sheet.kinds, sheet.areas, sheet.area, demand, prices);
      const cuts = fullCuts(sheet, counting, fillLayers(sheet, counting, layers), worth);
      return cuts.map(({ kinds, tree }) => ({ bin, counts: countsOf(kinds), trees: [tree] }));
    },
  }));
}

/** Places that are looked at in the time of one look of the search, and corners of rectangles that are begun with. */
const PLACES_A_LOOK = 3.3;
const CORNERS_A_LOOK = 1;

type Cut = { readonly kinds: readonly number[]; readonly tree: CutTree | undefined };

/**
 * The best way to make the whole of two rectangles, or of one, that is worth more than `worth`, and others with at least
 * half their pieces unlike those before: one program with eight new columns, not eight.
 */
function fullCuts(sheet: Sheet, counting: Counting, layers: readonly Layer[], worth: number): readonly Cut[] {
  const { along, across } = sheet;
  const layer = layers.at(-1);
  if (layer === undefined) return [];
  const rows = across.count;
  const [x, y] = [along.count - 1, rows - 1];
  const found: { readonly value: number; readonly near: number; readonly far: number }[] = [];
  const merged = new Int32Array(counting.words);
  const see = (near: number, far: number): void => {
    const value =
      (layer.values[near] ?? 0) +
      (layer.values[far] ?? 0) -
      tooMany(counting, layer.counts, near, far, merged, Number.POSITIVE_INFINITY);
    if (value > worth) found.push({ value, near, far });
  };
  see(x * rows + y, 0);
  for (let cut = 1; layer.joining.joins.includes('crosscut') && cut < x && along.less(x, cut) >= cut; cut += 1)
    see(cut * rows + y, along.less(x, cut) * rows + y);
  for (let cut = 1; layer.joining.joins.includes('rip') && cut < y && across.less(y, cut) >= cut; cut += 1)
    see(x * rows + cut, x * rows + across.less(y, cut));
  const used = new Set<number>();
  const kept: Cut[] = [];
  for (const { near, far } of found.sort((one, two) => two.value - one.value).slice(0, CUTS_SEEN)) {
    if (kept.length >= CUTS_KEPT) break;
    tooMany(counting, layer.counts, near, far, merged, Number.POSITIVE_INFINITY);
    const kinds = kindsOf(counting, merged);
    const again = kinds.filter(kind => used.has(kind)).length;
    if (kept.length > 0 && again > kinds.length / 2) continue;
    for (const kind of kinds) used.add(kind);
    kept.push({ kinds, tree: joined(sheet, layers, layers.length - 1, x * rows + y, near, far) });
  }
  return kept;
}

/** Of more of them hardly one is unlike those before. */
const CUTS_SEEN = 60;
/** More new columns at a time make the next program slower and no better. */
const CUTS_KEPT = 8;

function treeOf(sheet: Sheet, layers: readonly Layer[], level: number, at: number): CutTree | undefined {
  const layer = layers[level];
  if (layer === undefined || (layer.values[at] ?? 0) <= 0) return undefined;
  const from = layer.one[at] ?? 0;
  switch (layer.two[at]) {
    case PIECE: {
      const lie = sheet.lies[from];
      return lie && pieceOf(lie);
    }
    case BELOW:
      return treeOf(sheet, layers, level - 1, from);
    case SMALLER:
      return treeOf(sheet, layers, level, from);
    default:
      return joined(sheet, layers, level, at, from, layer.two[at] ?? 0);
  }
}

function joined(
  sheet: Sheet,
  layers: readonly Layer[],
  level: number,
  at: number,
  near: number,
  far: number,
): CutTree | undefined {
  const rows = sheet.across.count;
  const [one, two] = [treeOf(sheet, layers, level, near), treeOf(sheet, layers, level, far)];
  if (one === undefined || two === undefined) return one ?? two;
  const direction: Direction = near % rows === at % rows ? 'crosscut' : 'rip';
  return together(direction, [one, two]);
}
