import { fewerSettings } from '../../src/layout/cutting/fewer-settings.ts';
import { handlingOf } from '../../src/layout/cutting/handling.ts';
import { problemOf } from '../../src/layout/cutting/in-units.ts';
import { isOfFirstCut } from '../../src/layout/cutting/rows.ts';
import { lookingAt, search } from '../../src/layout/cutting/search.ts';
import { loadSolver, type Solver } from '../../src/layout/solver.ts';
import { asJob, readInstances } from '../published/cutting/instances.ts';
import { noPatience, sum } from './cutting-planned.ts';
import type { Measurement } from './measurement.ts';

/** Settings of fence and stop with the search for fewer and without it. */
export async function measure(): Promise<readonly Measurement[]> {
  return settings(await loadSolver());
}

function settings(solver: Solver): readonly Measurement[] {
  const orders = readInstances('two-dimensional-furniture.json').filter(
    each => sum(each.pieces.map(([, , copies]) => copies)) <= 350,
  );
  const counts = orders.map(order => {
    const job = asJob(order, 3, 2);
    const [stock] = job.stock;
    if (stock === undefined) throw new Error('no stock');
    const problem = problemOf(job.blanks, stock, job.shop);
    const handle = handlingOf(problem, stock, job.shop);
    const found = search(problem, noPatience(1.5), 1, solver);
    const looking = lookingAt(problem, 1);
    const wishes = { handle, weights: { remnant: 1, bin: undefined }, made: new Set<number>(), spare: 0 };
    const after = fewerSettings(looking, found, [Number.POSITIVE_INFINITY], noPatience(2), wishes);
    const asked = (bins: typeof found.bins): readonly number[] => [
      ...new Set(bins.flatMap(bin => handle(bin).settings)),
    ];
    const firsts = (bins: typeof found.bins): number => asked(bins).filter(isOfFirstCut).length;
    const sizes =
      new Set(order.pieces.map(([length]) => length)).size + new Set(order.pieces.map(([, width]) => width)).size;
    return {
      firsts: { before: firsts(found.bins), after: firsts(after.bins) },
      all: {
        before: asked(found.bins).length - firsts(found.bins),
        after: asked(after.bins).length - firsts(after.bins),
        sizes,
      },
      sheets: after.bins.length - found.bins.length,
    };
  });
  const firsts = sum(counts.map(({ firsts }) => firsts.after));
  const before = sum(counts.map(({ firsts }) => firsts.before));
  return [
    {
      what: `fence settings of first cuts, ${orders.length} furniture orders`,
      unit: 'settings',
      ours: firsts,
      peer: { name: 'without looking for fewer', value: before },
      target: 'at least 37 % fewer, not one sheet more',
      met: firsts <= 0.63 * before && counts.every(({ sheets }) => sheets <= 0),
    },
    {
      what: '… of all cuts, each made once',
      unit: 'settings',
      ours: sum(counts.map(({ all }) => all.after)),
      peer: { name: 'without looking for fewer', value: sum(counts.map(({ all }) => all.before)) },
      floor: { name: 'different lengths and widths', value: sum(counts.map(({ all }) => all.sizes)) },
    },
  ];
}
