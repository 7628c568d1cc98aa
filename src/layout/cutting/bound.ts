import type { Filling } from './first-plan.ts';
import { type CuttingProblem, clearArea } from './problem.ts';

/**
 * No plan of these pieces needs fewer bins than this: not even if wood could be poured. The largest bins are taken
 * first, as many as there are.
 */
export function areaBound(problem: CuttingProblem, filling: Filling): { readonly bins: number; readonly by: 'area' } {
  let left = filling.bins.reduce((total, bin) => total + bin.filled, 0);
  let bins = 0;
  for (const bin of [...problem.bins].sort((one, two) => clearArea(two) - clearArea(one))) {
    const area = clearArea(bin);
    const used = Math.min(bin.available, Math.ceil(left / area));
    bins += used;
    left -= used * area;
    if (left <= 0) break;
  }
  return { bins, by: 'area' };
}
