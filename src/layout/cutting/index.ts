import { type Diagnosed, type Diagnostic, problem } from '../../diagnostics/diagnostic.ts';
import { cellOf } from '../../diagnostics/place.ts';
import type { Job, Stock } from '../../import/job.ts';
import type { Shop } from '../../trade/shop.ts';
import { nm } from '../../units/length.ts';
import type { Blank, CutPlan } from '../shop-plan.ts';
import type { Solver } from '../solver.ts';
import { byDoors } from './by-doors.ts';
import { drawUp, type Numbers } from './draw-up.ts';
import { BINS_AT_A_TIME, fewerSettings, type Wishes } from './fewer-settings.ts';
import { costOfBins, type Filling, fitsSomewhere } from './first-plan.ts';
import { handlingOf } from './handling.ts';
import { problemOf } from './in-units.ts';
import type { CuttingProblem } from './problem.ts';
import type { Handling, OpenBin } from './rows.ts';
import { type Found, LOOKS_A_SECOND, lookingAt, search } from './search.ts';

/**
 * Cuts the blanks of a job from its boards and sheets, stock by stock in the order of their names. Blanks that no stock
 * yields are left out and said, at the stock's row.
 */
export function planCutting(
  blanks: readonly Blank[],
  job: Pick<Job, 'stock' | 'shop'>,
  solver: Solver,
): Diagnosed<readonly CutPlan[]> {
  const stocks = [...job.stock].sort((one, two) => (one.name < two.name ? -1 : 1));
  const cuttings = stocks.flatMap(stock => {
    const own = blanks.filter(blank => blank.stock === stock.name);
    return own.length === 0 ? [] : [{ stock, blanks: own.length, cutting: problemOf(own, stock, job.shop) }];
  });
  const found = fill(cuttings, job.shop, solver);
  const numbers: Numbers = { board: 0, sheet: 0, offcut: 0 };
  return {
    value: found
      .filter(({ filling }) => filling.bins.length > 0)
      .map(({ cutting, filling, stock }) => drawUp(cutting, filling, stock, job.shop, numbers)),
    diagnostics: found.flatMap(({ cutting, filling, stock }) => notCut(cutting, filling, stock)),
  };
}

type Cutting = { readonly stock: Stock; readonly blanks: number; readonly cutting: CuttingProblem };
type Filled = Cutting & { readonly filling: Found };

/** Share of the job's time in which the bins are settled. What is left is for settings and remnants, with so many times the patience at most. */
export const BINS_SHARE = 0.75;
const SETTINGS_PATIENCE = 4;

/**
 * Fills the bins of every stock, then makes the fewest settings of them: those that one stock needs are free for the
 * others. Each stock has its share of the time by its pieces; what one leaves, the next ones have.
 */
function fill(cuttings: readonly Cutting[], shop: Shop, solver: Solver): readonly Filled[] {
  const { seconds, patience, seed } = shop.planning;
  const looks = seconds * LOOKS_A_SECOND;
  const patienceFor = (each: Cutting): number => (patience * LOOKS_A_SECOND * each.blanks) / 100;
  const searched = share(cuttings, looks * BINS_SHARE, (each, own) => {
    const filling = search(each.cutting, { looks: own, patience: patienceFor(each) }, seed, solver);
    return { spent: filling.looks, value: { ...each, filling } };
  });
  const handles = searched.map(({ cutting, stock }) => handlingOf(cutting, stock, shop));
  const settings = searched.map(({ filling }, at) => settingsOf(filling, handles[at]));
  return share(searched, looks * (1 - BINS_SHARE), (each, own, at) => {
    const handle = handles[at];
    if (handle === undefined) return { spent: 0, value: each };
    const made = new Set(settings.flatMap((made, other) => (other === at ? [] : [...made])));
    const looking = { ...lookingAt(each.cutting, seed), easy: true };
    const supply = each.cutting.bins.map(bin => bin.available);
    // A large plan is looked at a bench of bins at a time, and bears patience for no more than that.
    const patience = patienceFor(each) * Math.min(1, BINS_AT_A_TIME / each.filling.bins.length);
    const effort = { looks: Math.min(own, patience * SETTINGS_PATIENCE), patience };
    const wishes = { made, ...wishesOf(each, shop, handle) };
    const whole = shop.planning.colourMatch === 'door' && each.stock.kind === 'board';
    const most = costOfBins(each.cutting, each.filling.bins) + wishes.spare;
    const doors = whole ? byDoors(looking, each.filling, most, effort.looks) : each.filling;
    // A try for fewer settings would part the doors again.
    const filling = doors === each.filling ? fewerSettings(looking, doors, supply, effort, wishes) : doors;
    settings[at] = settingsOf(filling, handle);
    return { spent: looking.looks, value: { ...each, filling: { ...each.filling, ...filling } } };
  });
}

/** Boards may be spent on colour, and where the shop says so, on settings. */
function wishesOf(
  { cutting, filling }: Filled,
  { planning }: Shop,
  handle: (bin: OpenBin) => Handling,
): Omit<Wishes, 'made'> {
  const { colourMatch, colourMatchWaste, boardsForSetting, remnantForSetting } = planning;
  const cost = costOfBins(cutting, filling.bins);
  const forColour = colourMatch === 'none' ? 0 : cost * colourMatchWaste;
  const forSettings = boardsForSetting * filling.bins.reduce((sum, bin) => sum + handle(bin).settings.length, 0);
  const bin = boardsForSetting > 0 ? 1 / boardsForSetting : forColour > 0 ? BIN_FOR_COLOUR : undefined;
  return { handle, weights: { remnant: 1 / remnantForSetting, bin }, spare: Math.max(forColour, forSettings) };
}

/** Where boards may be spent on pairs of stiles, one is worth so many settings: no more than it must. */
const BIN_FOR_COLOUR = 1.5;

const settingsOf = (filling: Filling, handle: ((bin: OpenBin) => Handling) | undefined): ReadonlySet<number> =>
  new Set(handle === undefined ? [] : filling.bins.flatMap(bin => handle(bin).settings));

/** Does something for each in turn, with a share of the looks by its pieces. */
function share<Each extends { readonly blanks: number }, Value>(
  all: readonly Each[],
  looks: number,
  work: (each: Each, looks: number, at: number) => { readonly spent: number; readonly value: Value },
): readonly Value[] {
  let left = looks;
  let blanks = all.reduce((total, each) => total + each.blanks, 0);
  return all.map((each, at) => {
    const { spent, value } = work(each, (left * each.blanks) / blanks, at);
    left -= spent;
    blanks -= each.blanks;
    return value;
  });
}

/** Says of each blank that was left whether it is too large, or the stock ran out before it. */
function notCut(cutting: CuttingProblem, found: Filling, stock: Stock): readonly Diagnostic[] {
  const at = cellOf(stock.from, 'name');
  const looking = lookingAt(cutting, 0);
  const left = [...new Set(found.left)].map(kind => {
    const count = found.left.filter(each => each === kind).length;
    return { kind, piece: cutting.pieces[kind], count };
  });
  const tooLarge = left.filter(({ kind }) => !fitsSomewhere(looking, kind));
  const short = left.filter(each => !tooLarge.includes(each)).reduce((total, { count }) => total + count, 0);
  return [
    ...tooLarge.flatMap(({ piece, count }) =>
      // The last of a size are the ones that no place was left for.
      (piece?.blanks ?? []).slice(-count).map(code =>
        problem('piece-fits-no-stock', at, {
          code,
          stock: stock.name,
          length: nm(((piece?.length ?? 0) - cutting.kerf) * cutting.unit),
          width: nm(((piece?.width ?? 0) - cutting.kerf) * cutting.unit),
        }),
      ),
    ),
    ...(short > 0 ? [problem('stock-runs-out', at, { stock: stock.name, pieces: short })] : []),
  ];
}
