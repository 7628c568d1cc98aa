import { describe, expect, it } from 'vitest';
import { printPlace } from '../../src/diagnostics/print.ts';
import { say } from '../../src/diagnostics/words.ts';
import type { Job } from '../../src/import/job.ts';
import { loadSolver } from '../../src/layout/solver.ts';
import { planWoodAndWork } from '../../src/layout/wood-and-work.ts';
import type { Shop } from '../../src/trade/shop.ts';
import { aBoardStock, aFrameStyle, aJob, aSheetStock, aShop } from '../support/a-job.ts';
import { length } from '../support/length.ts';
import { doorSetOf, plainDoor, RAIL, type Sizes, STILE, slabDoor } from './a-door-set.ts';
import { print } from './print-plan.ts';

const solver = await loadSolver();
const SHOP = aShop();

// Each row: what the shop has, and what is said of it, where, and how hard. One finding more or fewer fails.
describe('what the shop cannot do is said at its place', () => {
  it.each<[string, readonly Sizes[], Partial<Job>, readonly string[]]>([
    ['nothing is said of a plain door', [plainDoor()], {}, []],
    [
      'rails wider than the sled: once for all of one width',
      [railOf('B1.1', '7'), railOf('B2.1', '7'), railOf('B3.1', '5')],
      {},
      ['warning Styles!E2 Plain has rails 7 wide and the coping sled holds 6.'],
    ],
    ['a rail as wide as the sled', [railOf('B1.1', '6')], {}, []],
    [
      'a bit that turns too fast',
      [plainDoor()],
      { shop: withRouter({ stickingBitDiameter: length('3 1/2') }) },
      ['warning Shop The sticking bit (3 1/2) turns at 16000 a minute: its rim is over the limit.'],
    ],
    [
      'both bits',
      [plainDoor()],
      { shop: withRouter({ speed: 24_000 }) },
      [
        'warning Shop The coping bit (1 5/8) turns at 24000 a minute: its rim is over the limit.',
        'warning Shop The sticking bit (1 5/8) turns at 24000 a minute: its rim is over the limit.',
      ],
    ],
    [
      'the rabbeting bit only where a bit cuts the rabbet',
      [plainDoor()],
      { shop: withRouter({ rabbetBitDiameter: length('4') }) },
      [],
    ],
    [
      'and there it is said',
      [plainDoor()],
      { shop: withRouter({ rabbetBitDiameter: length('4'), rabbetBy: 'router' }) },
      ['warning Shop The rabbeting bit (4) turns at 16000 a minute: its rim is over the limit.'],
    ],
    [
      'a door that takes more clamps than there are',
      [plainDoor(), plainDoor({ code: 'P1.1', height: '41' })],
      { shop: { ...SHOP, gluing: { ...SHOP.gluing, clamps: 3 } } },
      ['warning Cabinets!G2 P1.1 takes 4 clamps and the shop has 3.'],
    ],
    ['as many clamps as it takes', [plainDoor()], { shop: { ...SHOP, gluing: { ...SHOP.gluing, clamps: 2 } } }, []],
    [
      'boards of the very thickness',
      [plainDoor()],
      { stock: [aBoardStock({ thickness: length('3/4') }), aSheetStock()] },
      [],
    ],
    [
      'a stop that reaches just so far',
      [plainDoor()],
      { shop: { ...SHOP, saw: { ...SHOP.saw, crosscutCapacity: length('31') } } },
      [],
    ],
    [
      'boards that are thinner than what is to come from them',
      [plainDoor()],
      { stock: [aBoardStock({ thickness: length('5/8') }), aSheetStock()] },
      ['error Stock!D2 Maple 4/4 is 5/8 thick and Plain wants parts of 3/4 from it.'],
    ],
    [
      'a stop out of reach',
      [
        plainDoor({
          code: 'P1.1',
          parts: [
            ['stile-left', '31', '2', STILE],
            ['stile-right', '31', '2', STILE],
          ],
        }),
      ],
      { shop: { ...SHOP, saw: { ...SHOP.saw, crosscutCapacity: length('30') } } },
      ['warning Cabinets!G2 P1.1-STILE-LEFT0 (and 1 more) wants the stop at 31 and it reaches 30.'],
    ],
    [
      'a fence out of reach',
      [slabDoor({ width: '30', height: '20' })],
      {
        shop: { ...SHOP, saw: { ...SHOP.saw, ripCapacity: length('24') } },
      },
      ['warning Cabinets!F2 D1.1-SLAB0 wants the fence at 30 and it reaches 24.'],
    ],
  ])('%s', (_what, doors, changes, expected) => {
    expect(said(doors, changes)).toEqual(expected);
  });

  it('tells the most turns that keep a bit under the limit', () => {
    const found = planWoodAndWork(
      aJob({ shop: withRouter({ speed: 24_000 }) }),
      doorSetOf(plainDoor()),
      solver,
    ).diagnostics;
    const [fast] = found.filter(each => each.code === 'bit-too-fast');
    expect(fast && say(fast, 'en', print).mend).toMatch(/^Set the router speed to 23100 or less/);
  });

  it('is said of a set-up that came out with the barcode of a part', () => {
    const doorSet = doorSetOf(plainDoor());
    const [setup] = planWoodAndWork(aJob(), doorSet, solver).value.operations.flatMap(operation => operation.setups);
    if (setup === undefined) throw new Error('there is no set-up');
    const shared = { ...doorSet, parts: doorSet.parts.map(part => ({ ...part, barcode: setup.barcode })) };
    const found = planWoodAndWork(aJob(), shared, solver).diagnostics.filter(each => each.code === 'barcode-shared');
    expect(found.map(each => [each.severity, printPlace(each.at), each.facts])).toEqual([
      ['error', 'Job', { code: setup.code, other: 'B1.1-PANEL4' }],
    ]);
  });

  it('is said in Spanish too', () => {
    const found = planWoodAndWork(aJob(), doorSetOf(railOf('B1.1', '7')), solver).diagnostics;
    const [wide] = found.filter(each => each.code === 'rail-wider-than-sled');
    expect(wide && say(wide, 'es', print).what).toBe(
      'Plain tiene travesaños de 7 de ancho y el carro de contraperfil admite 6.',
    );
  });
});

function railOf(code: string, width: string): Sizes {
  return plainDoor({
    code,
    parts: [
      ['stile-left', '31', '2', STILE],
      ['rail-bottom', '12 1/8', width, RAIL],
    ],
  });
}

const withRouter = (router: Partial<Shop['router']>): Shop => ({ ...SHOP, router: { ...SHOP.router, ...router } });

const OF_CHECKS = [
  'rail-wider-than-sled',
  'bit-too-fast',
  'clamps-too-few',
  'board-thinner-than-part',
  'fence-out-of-reach',
  'stop-out-of-reach',
  'barcode-shared',
];

const said = (doors: readonly Sizes[], changes: Partial<Job>): readonly string[] =>
  planWoodAndWork(aJob({ styles: [aFrameStyle()], ...changes }), doorSetOf(...doors), solver)
    .diagnostics.filter(each => OF_CHECKS.includes(each.code))
    .map(each => `${each.severity} ${printPlace(each.at)} ${say(each, 'en', print).what}`)
    .sort();
