import type { DoorSet } from '../../calculate/door-set.ts';
import type { Job } from '../../import/job.ts';
import { BEFORE_FINISH } from '../../trade/finishing.ts';
import { type Area, timesArea } from '../../units/area.ts';
import { priceOf } from '../../units/money.ts';
import type { FinishPlan, ShoppingLine } from '../shop-plan.ts';

/** Sanding discs of each grit: what is sanded with it, over what a disc is good for; by the pack. */
export function abrasives(job: Job, doorSet: DoorSet, finish: FinishPlan): readonly ShoppingLine[] {
  if (doorSet.doors.length === 0) return [];
  const { discArea, discPack, discPrice } = job.shop.buying;
  return sanded(finish).map(([grit, surface]) => {
    const discs = Math.ceil(surface / discArea);
    const buy = Math.ceil(discs / discPack);
    return {
      kind: 'abrasive',
      item: `disc ${grit}`,
      unit: 'disc',
      needed: discs,
      onHand: 0,
      buy: buy * discPack,
      detail: { kind: 'discs', grit, area: surface, pack: discPack },
      amount: discPrice && priceOf(buy, discPrice),
    };
  });
}

/** Each grit, coarse first, with all the surface that it goes over. */
function sanded(finish: FinishPlan): readonly (readonly [grit: number, surface: Area])[] {
  const times = new Map(BEFORE_FINISH.map(grit => [grit, 1]));
  for (const step of finish.steps) {
    if (step.grit !== undefined && step.kind === 'sand') times.set(step.grit, (times.get(step.grit) ?? 0) + step.coats);
  }
  return [...times].sort(([a], [b]) => a - b).map(([grit, count]) => [grit, timesArea(count, finish.area)]);
}
