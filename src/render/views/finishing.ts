import type { FinishStepPlan, Mix } from '../../layout/shop-plan.ts';
import type { Draft, View } from '../draft.ts';
import { decimal } from '../quantities.ts';

/** finishing.hbs: the finish step by step, with what to mix. */
export type FinishingView = { readonly area: string; readonly steps: readonly FinishingStep[] };
export type FinishingStep = {
  readonly title: string;
  readonly kind: string;
  /** Short facts: coats, grit, order of sides, rack, wait. */
  readonly facts: readonly string[];
  /** A coat to tick for each. */
  readonly coats: readonly string[];
  readonly components: readonly { readonly name: string; readonly parts: string; readonly volume: string }[];
  readonly total: string;
  readonly mixes: readonly {
    readonly title: string;
    readonly volumes: readonly { readonly name: string; readonly volume: string }[];
    readonly doors: string;
  }[];
};

export function finishing(draft: Draft): View<FinishingView> | undefined {
  const { finish } = draft.plan;
  if (finish.steps.length === 0) return undefined;
  return {
    figures: new Map(),
    data: {
      area: draft.say('finishing.area', { area: draft.quantities.area(finish.area) }),
      steps: finish.steps.map(step => finishingStep(step, draft)),
    },
  };
}

function finishingStep(step: FinishStepPlan, draft: Draft): FinishingStep {
  const { say, quantities } = draft;
  const liquid = step.volume > 0;
  return {
    title: `${say('finishing.step', { number: step.number })}: ${step.name}`,
    kind: say(`finish.${step.kind}`),
    facts: stepFacts(step, draft),
    coats:
      step.kind === 'wait'
        ? []
        : Array.from({ length: step.coats }, (_, coat) => say('finishing.coat-done', { number: coat + 1 })),
    components: liquid
      ? [
          ...step.components.map(component => ({
            name: component.name,
            parts: step.components.length > 1 ? decimal(component.parts, 2) : '',
            volume: quantities.volume(component.volume),
          })),
          ...(step.additive === undefined
            ? []
            : [
                {
                  name: say('finishing.additive', step.additive),
                  parts: '',
                  volume: quantities.volume(step.additive.volume),
                },
              ]),
        ]
      : [],
    total: liquid ? quantities.volume(step.volume) : '',
    mixes: liquid ? step.batches.map((mix, index) => mixView(mix, index + 1, step, draft)) : [],
  };
}

const stepFacts = (step: FinishStepPlan, { say, quantities }: Draft): readonly string[] => [
  ...(step.kind === 'wait' ? [] : [say('finishing.coats', { coats: step.coats })]),
  ...(step.grit === undefined ? [] : [say('finishing.grit', { grit: step.grit })]),
  ...(step.sides.length === 0
    ? []
    : [say('finishing.order', { sides: step.sides.map(side => say(`side.${side}`)).join(' → ') })]),
  ...(step.rackSlots === 0 ? [] : [say('finishing.rack', { slots: step.rackSlots })]),
  ...(step.wait === 0 ? [] : [say('finishing.wait', { wait: quantities.time(step.wait) })]),
];

const mixView = (
  mix: Mix,
  number: number,
  step: FinishStepPlan,
  { say, quantities }: Draft,
): FinishingStep['mixes'][number] => ({
  title: say('finishing.batch', { number }),
  volumes: [
    ...step.components.map((component, index) => ({
      name: component.name,
      volume: mix.components[index] ?? component.volume,
    })),
    ...(step.additive === undefined || mix.additive === undefined
      ? []
      : [{ name: step.additive.name, volume: mix.additive }]),
  ].map(({ name, volume }) => ({ name, volume: quantities.volume(volume) })),
  doors: mix.doors.join(', '),
});
