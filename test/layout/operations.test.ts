import { describe, expect, it } from 'vitest';
import { checks } from '../../src/codes/check-character.ts';
import { setupCodes } from '../../src/layout/operations/setups.ts';
import type { OperationId } from '../../src/layout/shop-plan.ts';
import { loadSolver } from '../../src/layout/solver.ts';
import { planWoodAndWork, type WoodAndWork } from '../../src/layout/wood-and-work.ts';
import type { Shop } from '../../src/trade/shop.ts';
import { hours } from '../../src/units/duration.ts';
import { aJob, aShop } from '../support/a-job.ts';
import { doorSetOf, glassDoor, plainDoor, type Sizes, slabDoor, solidDoor } from './a-door-set.ts';
import { aFinishStep } from './finishing/a-finish-step.ts';
import { operationOf, print, setupsOf } from './print-plan.ts';

const solver = await loadSolver();

// Set-up minutes for each setting, and minutes for each piece that is run: common practice, as in the table of minutes.
describe('minutes', () => {
  it.each<[OperationId, number, number]>([
    ['crosscut-rough', 9, 5], //   three stops · 3; ten blanks · 0.5
    ['rip-width', 3, 4], //        one fence · 3; ten strips · 0.4
    ['cut-length', 6, 2], //       two stops · 3; four parts · 0.5
    ['groove', 20, 4.5], //        one bit · 20; four parts and two spares · 0.75
    ['rest', 0, 0], //             nobody works while the wood rests
    ['glue-up', 5, 8], //          one batch, one door
  ])('%s: %f and %f', (id, setup, pieces) => {
    expect(operationOf(planOf([plainDoor()]), id)?.minutes).toEqual({ setup, pieces });
  });

  it('are the shop’s own where it has some', () => {
    const plan = planOf([plainDoor()], {
      work: { ...aShop().work, minutes: { 'cut-length': { setup: 5, piece: 1.5 } } },
    });
    expect(operationOf(plan, 'cut-length')?.minutes).toEqual({ setup: 10, pieces: 6 });
    expect(operationOf(plan, 'rip-width')?.minutes).toEqual({ setup: 3, pieces: 4 });
  });

  it('of the finish are those of its coats', () => {
    const finish = [aFinishStep({ kind: 'topcoat', coats: 2 })];
    const plan = planWoodAndWork(aJob({ finish }), doorSetOf(plainDoor()), solver).value;
    const [step] = plan.finish.steps;
    expect(operationOf(plan, 'finish')?.minutes).toEqual(step?.minutes);
  });
});

describe('what passes without work', () => {
  it.each<[OperationId, number]>([
    ['rest', 48],
    ['glue-panel', 2],
    ['cure-panel', 24],
    ['glue-up', 2],
    ['cure', 24],
  ])('%s: %i hours', (id, passes) => {
    expect(operationOf(planOf([solidDoor()]), id)?.wait).toBe(hours(passes));
  });

  it('is nothing at a machine', () => {
    expect(operationOf(planOf([plainDoor()]), 'cope')?.wait).toBeUndefined();
  });
});

describe('the code of a set-up', () => {
  it('is its own, and so is its barcode', () => {
    const all = planOf([plainDoor(), solidDoor(), glassDoor(), slabDoor()]);
    const setups = all.operations.flatMap(operation => operation.setups);
    expect(new Set(setups.map(setup => setup.code)).size).toBe(setups.length);
    expect(new Set(setups.map(setup => setup.barcode)).size).toBe(setups.length);
    expect(setups.filter(setup => !checks(setup.barcode) || setup.barcode.length !== 11)).toEqual([]);
  });

  it('comes from the setting: it stays when other doors come to the job', () => {
    const code = (plan: WoodAndWork, size: string) =>
      setupsOf(plan, 'cut-length').find(({ settings }) => settings.some(({ value }) => print(value) === size))?.code;
    const alone = code(planOf([plainDoor()]), '12 1/8');
    expect(alone).toMatch(/^CL-[0-9A-Z]{4}$/);
    expect(code(planOf([plainDoor(), slabDoor(), plainDoor({ code: 'P1.1', height: '60' })]), '12 1/8')).toBe(alone);
  });

  it('grows by a character where four do not tell two settings apart', () => {
    // Among 36^4 marks, two of some thousands meet.
    const codeOf = setupCodes('J-101');
    const codes = Array.from({ length: 6000 }, (_, at) => codeOf('cut-length', `final-length ${at}`));
    expect(new Set(codes).size).toBe(6000);
    expect(codes.some(code => code.length > 'CL-0000'.length)).toBe(true);
  });
});

const planOf = (doors: readonly Sizes[], changes: Partial<Shop> = {}): WoodAndWork =>
  planWoodAndWork(aJob({ shop: { ...aShop(), ...changes } }), doorSetOf(...doors), solver).value;
