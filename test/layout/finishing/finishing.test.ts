import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planFinish } from '../../../src/layout/finishing/index.ts';
import type { FinishStepPlan } from '../../../src/layout/shop-plan.ts';
import { shopDefaults } from '../../../src/trade/shop-defaults.ts';
import { squareFeet as printedSquareFeet } from '../../../src/units/area.ts';
import { hours, minutes } from '../../../src/units/duration.ts';
import type { Volume } from '../../../src/units/mass.ts';
import { aDoor, aDoorSet, squareFeet } from '../../support/a-door-set.ts';
import { aJob } from '../../support/a-job.ts';
import { law } from '../../support/runs.ts';
import { aFinishStep, squareFeetPerGallon } from './a-finish-step.ts';

/** US fluid ounces: 128 to the gallon of 231 in³. What a cup on the bench is marked in. */
const ounces = (volume: Volume): number => (volume / (231 * 0.0254 ** 3)) * 128;
const ofOunces = (count: number): Volume => ((count / 128) * 231 * 0.0254 ** 3) as Volume;

const shop = shopDefaults('inch', 'letter');
const doors = (count: number, feet = 10) =>
  Array.from({ length: count }, (_, at) => aDoor(`B${at + 10}`, { finishArea: squareFeet(feet) }));
const aStain = aFinishStep({
  name: 'Stain',
  kind: 'stain',
  components: [
    { name: 'dye', parts: 2 },
    { name: 'reducer', parts: 1 },
  ],
  squareMetresPerLitre: squareFeetPerGallon(400),
  transfer: 1,
});
const aTopcoat = aFinishStep({ coats: 3, additive: { name: 'flow additive', percent: 10 } });

const plan = (...[job, set]: Parameters<typeof planFinish>) => planFinish(job, set);
const stepsOf = (finish: readonly ReturnType<typeof aFinishStep>[], count: number, feet = 10) =>
  plan(aJob({ finish }), aDoorSet(doors(count, feet))).value.steps;
const first = (steps: readonly FinishStepPlan[]): FinishStepPlan => {
  const step = steps[0];
  if (step === undefined) throw new Error('no step was planned');
  return step;
};

// Worked by hand. 10 doors of 10 ft² are 100 ft².
describe('what one coat takes', () => {
  it('stain at 400 ft²/gal, wiped: 100 / 400 = 1/4 gal = 32 fl oz; 2 : 1 is 21 1/3 and 10 2/3', () => {
    const stain = first(stepsOf([aStain], 10));
    expect(ounces(stain.volume)).toBeCloseTo(32, 9);
    expect(stain.components.map(each => each.name)).toEqual(['dye', 'reducer']);
    expect(ounces(stain.components[0]?.volume ?? stain.volume)).toBeCloseTo(64 / 3, 9);
    expect(ounces(stain.components[1]?.volume ?? stain.volume)).toBeCloseTo(32 / 3, 9);
    expect(stain.additive).toBeUndefined();
  });

  it('topcoat at 350 ft²/gal, 65 % on the door: 100 / 350 / 0.65 · 128 = 56.26 fl oz, and 10 % of that on top', () => {
    const topcoat = first(stepsOf([aTopcoat], 10));
    expect(ounces(topcoat.volume)).toBeCloseTo(56.264, 3);
    expect(ounces(topcoat.additive?.volume ?? topcoat.volume)).toBeCloseTo(5.6264, 4);
  });

  it('the area is that of all doors, and both faces show last', () => {
    const finish = plan(
      aJob({ finish: [aStain, aFinishStep({ kind: 'sand', grit: 320 })] }),
      aDoorSet(doors(10)),
    ).value;
    expect(printedSquareFeet(finish.area)).toBeCloseTo(100, 9);
    expect(finish.steps.map(step => step.sides.at(-1))).toEqual(['face', 'edges']);
    expect(finish.steps.map(step => step.number)).toEqual([1, 2]);
  });

  it('sanding and waiting take nothing out of a can', () => {
    const steps = stepsOf([aFinishStep({ kind: 'sand', grit: 150 }), aFinishStep({ kind: 'wait' })], 10);
    expect(steps.map(step => [step.volume, step.batches.length, step.rackSlots])).toEqual([
      [0, 0, 0],
      [0, 0, 0],
    ]);
  });
});

// One door of 10 ft² takes 5.626 fl oz of topcoat, 6.189 with its additive: five fill a 32 fl oz pot, six would not fit.
describe('fillings of the pot', () => {
  it.each([
    { count: 10, percent: 10, pot: 32, life: 240, doors: [5, 5], why: 'five fill the pot, with the additive' },
    { count: 11, percent: 10, pot: 32, life: 240, doors: [5, 5, 1], why: 'the last is a mix of its own' },
    {
      count: 10,
      percent: 15,
      pot: 32,
      life: 240,
      doors: [4, 4, 2],
      why: 'more additive, less room: 6.47 fl oz a door',
    },
    { count: 4, percent: 10, pot: 128, life: 240, doors: [4], why: 'all in one' },
    { count: 10, percent: 10, pot: 128, life: 20, doors: [6, 4], why: 'at 3 min a door only 6 are done in 20 min' },
    { count: 3, percent: 10, pot: 128, life: 1, doors: [1, 1, 1], why: 'a door is never split' },
  ])(
    '$count doors, $percent %, $pot fl oz, $life min: $doors, $why',
    ({ count, percent, pot, life, doors: expected }) => {
      const job = aJob({
        finish: [aFinishStep({ additive: { name: 'flow additive', percent } })],
        shop: { ...shop, finishing: { ...shop.finishing, potVolume: ofOunces(pot), potLife: minutes(life) } },
      });
      const step = first(plan(job, aDoorSet(doors(count))).value.steps);
      expect(step.batches.map(batch => batch.doors.length)).toEqual(expected);
    },
  );

  it('a door that is too large for the pot stands alone and is reported', () => {
    const found = plan(aJob({ finish: [aTopcoat] }), aDoorSet([...doors(1), ...doors(1, 60)]));
    expect(found.diagnostics.map(each => [each.code, each.severity])).toEqual([['pot-too-small', 'warning']]);
    expect(first(found.value.steps).batches.map(batch => batch.doors.length)).toEqual([1, 1]);
  });
});

describe('the rack', () => {
  it.each([
    { count: 10, wait: 2, wet: 10, why: 'all are wet before the first is dry' },
    { count: 60, wait: 2, wet: 41, why: 'at 3 min a door the first comes off when 41 hang' },
    { count: 60, wait: 0, wet: 1, why: 'dry as it leaves the gun' },
  ])('$count doors that dry in $wait h: $wet at once, $why', ({ count, wait, wet }) => {
    expect(first(stepsOf([aFinishStep({ wait: hours(wait) })], count)).rackSlots).toBe(wet);
  });

  it('too small a rack is said once, of the step in which most doors are wet', () => {
    const quick = aFinishStep({ name: 'Sealer', kind: 'seal', wait: hours(1) });
    const found = plan(aJob({ finish: [quick, aFinishStep(), aFinishStep({ name: 'Last' })] }), aDoorSet(doors(60)));
    expect(found.diagnostics.map(each => [each.code, each.severity, each.facts])).toEqual([
      ['rack-too-small', 'note', { step: 'Topcoat', wet: 41, slots: 40 }],
    ]);
  });
});

describe('minutes', () => {
  it('are those of each coat, with a set-up for each mix', () => {
    // 3 coats · 2 mixes · 15 min, and 3 coats · 10 doors · 3 min: common practice.
    expect(first(stepsOf([aTopcoat], 10)).minutes).toEqual({ setup: 90, pieces: 90 });
  });

  it('are the shop’s own where it sets them', () => {
    const job = aJob({
      finish: [aTopcoat],
      shop: { ...shop, work: { ...shop.work, minutes: { finish: { setup: 10, piece: 2 } } } },
    });
    expect(first(plan(job, aDoorSet(doors(10))).value.steps).minutes).toEqual({ setup: 60, pieces: 60 });
  });
});

describe('whatever the doors', () => {
  const surfaces = fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 30 });
  const aSet = (feet: readonly number[]) =>
    aDoorSet(feet.map((each, at) => aDoor(`B${at + 10}`, { finishArea: squareFeet(each) })));

  it('the mixes are the coat: each door once, each component whole, and no pot overflows', () => {
    law([surfaces], feet => {
      const set = aSet(feet);
      const job = aJob({ finish: [{ ...aTopcoat, components: aStain.components }] });
      const step = first(plan(job, set).value.steps);
      expect(step.batches.flatMap(batch => batch.doors)).toEqual(set.doors.map(door => door.code));
      for (const [at, component] of step.components.entries()) {
        expect(step.batches.reduce((sum, mix) => sum + (mix.components[at] ?? 0), 0)).toBeCloseTo(component.volume, 12);
      }
      for (const mix of step.batches) {
        expect(mix.volume).toBeCloseTo(
          mix.components.reduce<number>((sum, each) => sum + each, 0),
          12,
        );
        expect(mix.additive).toBeCloseTo(mix.volume / 10, 12);
        if (mix.doors.length > 1) expect(mix.volume * 1.1).toBeLessThanOrEqual(job.shop.finishing.potVolume + 1e-12);
      }
    });
  });

  it('the order of rows does not show', () => {
    law([surfaces], feet => {
      const set = aSet(feet);
      const job = aJob({ finish: [aStain, aTopcoat] });
      expect(plan(job, aDoorSet([...set.doors].reverse()))).toEqual(plan(job, set));
    });
  });
});
