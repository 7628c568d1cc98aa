import { type Diagnosed, type Diagnostic, problem } from '../../diagnostics/diagnostic.ts';
import { cellOf } from '../../diagnostics/place.ts';
import type { Job, Stock } from '../../import/job.ts';
import type { Shop } from '../../trade/shop.ts';
import { nm } from '../../units/length.ts';
import type { Blank, CutPlan } from '../shop-plan.ts';
import type { Solver } from '../solver.ts';
import { drawUp, type Numbers } from './draw-up.ts';
import { fewerSettings, type Handling } from './fewer-settings.ts';
import { type Filling, fitsSomewhere } from './first-plan.ts';
import { handlingOf } from './handling.ts';
import { problemOf } from './in-units.ts';
import type { CuttingProblem } from './problem.ts';
import type { OpenBin } from './rows.ts';
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

/** Share of the job's time for settings and remnants, after the bins are settled. */
const SETTINGS_SHARE = 0.25;

/**
 * Fills the bins of every stock, then makes the fewest settings of them: those that one stock needs are free for the
 * others. Each stock has its share of the time by its pieces; what one leaves, the next ones have.
 */
function fill(cuttings: readonly Cutting[], shop: Shop, solver: Solver): readonly Filled[] {
  const looks = shop.planning.seconds * LOOKS_A_SECOND;
  const searched = share(cuttings, looks * (1 - SETTINGS_SHARE), (each, own) => {
    const filling = search(each.cutting, own, shop.planning.seed, solver);
    return { spent: filling.looks, value: { ...each, filling } };
  });
  const { colourMatch, colourMatchWaste } = shop.planning;
  const waste = colourMatch === 'none' ? 0 : colourMatchWaste;
  const handles = searched.map(({ cutting, stock }) => handlingOf(cutting, stock, shop));
  const settings = searched.map(({ filling }, at) => settingsOf(filling, handles[at]));
  return share(searched, looks * SETTINGS_SHARE, (each, own, at) => {
    const handle = handles[at];
    if (handle === undefined) return { spent: 0, value: each };
    const made = new Set(settings.flatMap((made, other) => (other === at ? [] : [...made])));
    const looking = lookingAt(each.cutting, shop.planning.seed);
    const supply = each.cutting.bins.map(bin => bin.available);
    const filling = fewerSettings(looking, each.filling, made, supply, own, handle, waste);
    settings[at] = settingsOf(filling, handle);
    return { spent: looking.looks, value: { ...each, filling: { ...each.filling, ...filling } } };
  });
}

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
    return { piece: cutting.pieces[kind], count };
  });
  const tooLarge = left.filter(({ piece }) => piece !== undefined && !fitsSomewhere(looking, piece));
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
