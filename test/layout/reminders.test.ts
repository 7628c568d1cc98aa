import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calculate/index.ts';
import type { Job, Opening } from '../../src/import/job.ts';
import { mostTurns, rimSpeedOf } from '../../src/layout/reminders.ts';
import type { OperationId, Reminder } from '../../src/layout/shop-plan.ts';
import { loadSolver } from '../../src/layout/solver.ts';
import { planWoodAndWork, type WoodAndWork } from '../../src/layout/wood-and-work.ts';
import type { Shop } from '../../src/trade/shop.ts';
import { aJob, anOpening, aShop } from '../support/a-job.ts';
import { length } from '../support/length.ts';
import { law } from '../support/runs.ts';
import { doorSetOf, plainDoor, RAIL, type Sizes, STILE, solidDoor } from './a-door-set.ts';
import { aFinishStep } from './finishing/a-finish-step.ts';
import { operationOf, setupsOf } from './print-plan.ts';
import { someOpenings } from './some-openings.ts';
import { verifyReminders } from './verify-reminders.ts';

const solver = await loadSolver();
const SHOP = aShop();

describe('a piece calls for its caution', () => {
  const tall = plainDoor({ code: 'P1.1', height: '85', parts: [['stile-left', '85', '2', STILE]] });
  const railOf = (width: string): Sizes =>
    plainDoor({
      parts: [
        ['stile-left', '31', '2', STILE],
        ['rail-bottom', '12 1/8', width, RAIL],
      ],
    });
  it.each<[string, Sizes, OperationId, Reminder['id'], readonly string[]]>([
    [
      '2 in beside the blade',
      railOf('2'),
      'rip-width',
      'push-block-narrow',
      [
        'B1.1-STILE-LEFT0',
        'SPARE-STILE-1',
        'TEST-C1.1',
        'TEST-C1.2',
        'TEST-G1.1',
        'TEST-G1.2',
        'B1.1-RAIL-BOTTOM1',
        'SPARE-RAIL-1',
      ],
    ],
    [
      '3 in: no longer narrow',
      railOf('3'),
      'rip-width',
      'push-block',
      ['TEST-C1.1', 'TEST-C1.2', 'B1.1-RAIL-BOTTOM1', 'SPARE-RAIL-1'],
    ],
    ['6 in: room for the hand', railOf('6'), 'rip-width', 'push-block', []],
    ['85 in hangs over a table of 48', tall, 'groove', 'outfeed', ['SPARE-STILE-1', 'P1.1-STILE-LEFT0']],
    ['31 in does not', plainDoor(), 'groove', 'outfeed', []],
    ['a rail of 12 1/8 is long enough', plainDoor(), 'cope', 'short-piece', []],
    [
      'one of 11 is not',
      plainDoor({
        parts: [
          ['stile-left', '31', '2', STILE],
          ['rail-top', '11', '2', RAIL],
        ],
      }),
      'cope',
      'short-piece',
      ['B1.1-RAIL-TOP1'],
    ],
    ['6 in lies on the sled', railOf('6'), 'cope', 'sled-too-narrow', []],
    ['6 1/2 does not', railOf('6 1/2'), 'cope', 'sled-too-narrow', ['B1.1-RAIL-BOTTOM1']],
    ['a solid panel stays loose', solidDoor(), 'glue-up', 'do-not-glue-panel', ['W3.1']],
    ['plywood may be glued in', plainDoor(), 'glue-up', 'do-not-glue-panel', []],
    ['a door of 24 kg takes two', plainDoor({ changes: { mass: 24 as never } }), 'hang', 'two-people', ['B1.1']],
    ['one of 23 does not', plainDoor({ changes: { mass: 23 as never } }), 'hang', 'two-people', []],
  ])('%s', (_why, door, at, id, codes) => {
    const found = setupsOf(planOf([door]), at).flatMap(setup => setup.reminders.filter(reminder => reminder.id === id));
    expect(found.flatMap(reminder => reminder.pieces)).toEqual(codes);
  });

  it('is said once of the machine where it holds for all of its work', () => {
    const plan = planWoodAndWork(
      aJob({ finish: [aFinishStep({ kind: 'stain' })] }),
      doorSetOf(plainDoor()),
      solver,
    ).value;
    const ids = (id: OperationId) => operationOf(plan, id)?.reminders.map(reminder => reminder.id);
    expect(ids('cope')).toEqual(['general-router', 'ears', 'dust', 'coping-sled', 'backer-block']);
    expect(ids('rabbet-panel')).toEqual(['general-saw', 'ears', 'dust', 'sacrificial-fence']);
    expect(ids('finish')).toEqual(['general-spray', 'ventilation', 'test-board', 'rags']);
    expect(ids('inspect')).toEqual([]);
  });

  it('names the heaviest sheet: 48 × 96 × 23/32 in of 600 kg/m³ is 32.6 kg', () => {
    const slab: Sizes = {
      code: 'D1.1',
      width: '20',
      height: '90',
      parts: [['slab', '90', '20', { kind: 'slab' }, 'Maple ply 3/4']],
    };
    const two = operationOf(planOf([slab]), 'break-sheet')?.reminders.find(reminder => reminder.id === 'two-people');
    expect(two?.facts).toEqual({ stock: 'Maple ply 3/4', count: 1, kg: 33 });
  });
});

// π · d · n, worked by hand: π · 41.275 mm · 16 000 / 60 s = 34.58 m/s; 50 m/s is met at 23 136 turns.
describe('rim speed', () => {
  it.each([
    ['1 5/8', 16_000, 34.58, 23_100],
    ['1 1/4', 16_000, 26.6, 30_000],
    ['3 1/2', 18_000, 83.79, 10_700],
    ['60 mm', 10_000, 31.42, 15_900],
  ])('%s in at %i turns: %f m/s, %i at most', (diameter, turns, speed, most) => {
    expect(rimSpeedOf(length(diameter), turns)).toBeCloseTo(speed, 2);
    expect(mostTurns(length(diameter), SHOP)).toBe(most);
  });

  it('is printed at every big bit, with the shop’s speed and the most', () => {
    const [reminder] = setupsOf(planOf([plainDoor()]), 'groove').flatMap(setup => setup.reminders);
    expect(reminder).toEqual({
      id: 'rim-speed',
      pieces: [],
      facts: { bit: length('1 5/8'), speed: 16_000, rim: 34.6, most: 23_100 },
    });
  });
});

describe('no caution is missing and none is there for nothing', () => {
  it('on a job of every kind', () => {
    expect(faults(aJob({ finish: [aFinishStep({ kind: 'stain' }), aFinishStep({})] }))).toEqual([]);
  });

  it('on any job', () => {
    law<[readonly Opening[]]>(
      [someOpenings(4)],
      openings => {
        expect(faults(aJob({ openings }))).toEqual([]);
      },
      15,
    );
  });

  it.each<[string, (shop: Shop) => Shop]>([
    ['a shop that rabbets at the router', shop => ({ ...shop, router: { ...shop.router, rabbetBy: 'router' } })],
    ['one that copes first', shop => ({ ...shop, router: { ...shop.router, order: 'cope-first' } })],
    [
      'one with a short table and a narrow sled',
      shop => ({
        ...shop,
        saw: { ...shop.saw, tableLength: length('12') },
        router: { ...shop.router, sledWidth: length('1') },
      }),
    ],
  ])('in %s', (_which, change) => {
    expect(faults(aJob({ shop: change(SHOP) }))).toEqual([]);
  });

  it('and the judge sees one that is', () => {
    const job = aJob({ openings: [anOpening()] });
    const doorSet = calculate(job).value;
    const plan = planWoodAndWork(job, doorSet, solver).value;
    const silent = {
      ...plan,
      operations: plan.operations.map(each => ({
        ...each,
        reminders: [],
        setups: each.setups.map(setup => ({ ...setup, reminders: [] })),
      })),
    };
    const missing = verifyReminders(silent, job, doorSet).join('\n');
    expect(missing).toMatch(/rip-width .* does not say push-block-narrow: /);
    expect(missing).toMatch(/cope does not say coping-sled/);
  });
});

const planOf = (doors: readonly Sizes[]): WoodAndWork => planWoodAndWork(aJob(), doorSetOf(...doors), solver).value;

function faults(job: Job): readonly string[] {
  const doorSet = calculate(job).value;
  return verifyReminders(planWoodAndWork(job, doorSet, solver).value, job, doorSet);
}
