import type { FinishStep, Job } from '../../import/job.ts';
import { litres, type Volume } from '../../units/mass.ts';
import { type Money, priceOf } from '../../units/money.ts';
import type { FinishPlan, FinishStepPlan, ShoppingLine } from '../shop-plan.ts';
import { boughtVolume, cansFor } from './containers.ts';

/** Stain, sealer, topcoat and what is added to them: each component once, whatever steps it is used in, by the can. */
export function coatings(job: Job, finish: FinishPlan): readonly ShoppingLine[] {
  const needs = new Map<string, Need>();
  for (const step of finish.steps) {
    for (const { item, volume } of takenBy(step)) {
      const before = needs.get(item);
      needs.set(item, {
        volume: ((before?.volume ?? 0) + volume) as Volume,
        perLitre: before?.perLitre ?? priceIn(job.finish[step.number - 1]),
      });
    }
  }
  return [...needs]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .filter(([, need]) => need.volume > 0)
    .map(([item, need]) => lineFor(item, need, job.shop.finishing.containers));
}

type Need = { readonly volume: Volume; readonly perLitre: Money | undefined };

/** Everything that all coats of a step take. */
const takenBy = (step: FinishStepPlan): readonly { readonly item: string; readonly volume: Volume }[] =>
  [...step.components, ...(step.additive ? [step.additive] : [])].map(each => ({
    item: each.name,
    volume: (each.volume * step.coats) as Volume,
  }));

/** The workbook gives one price for a litre of whatever a step is made of. */
const priceIn = (step: FinishStep | undefined): Money | undefined => step?.price?.perLitre;

function lineFor(item: string, { volume, perLitre }: Need, sizes: readonly Volume[]): ShoppingLine {
  const containers = cansFor(volume, sizes);
  const bought = boughtVolume(containers);
  return {
    kind: 'finish',
    item,
    unit: 'litre',
    needed: litres(volume),
    onHand: 0,
    buy: litres(bought),
    detail: { kind: 'volume', volume, containers },
    amount: perLitre && priceOf(litres(bought), perLitre),
  };
}
