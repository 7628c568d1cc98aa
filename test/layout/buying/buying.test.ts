import { describe, expect, it } from 'vitest';
import type { Part } from '../../../src/calculate/door-set.ts';
import type { Hardware, Job, Stock } from '../../../src/import/job.ts';
import { glueArea } from '../../../src/layout/buying/glue.ts';
import { planBuying } from '../../../src/layout/buying/index.ts';
import { planFinish } from '../../../src/layout/finishing/index.ts';
import type { CutBin, CutPlan, Shopping } from '../../../src/layout/shop-plan.ts';
import { shopDefaults } from '../../../src/trade/shop-defaults.ts';
import { area } from '../../../src/units/area.ts';
import { kg } from '../../../src/units/mass.ts';
import { money, printMoney } from '../../../src/units/money.ts';
import { aDoor, aDoorSet, aPart, given, squareFeet } from '../../support/a-door-set.ts';
import { aBoardStock, aJob, aSheetStock, aSource } from '../../support/a-job.ts';
import { length } from '../../support/length.ts';
import { aFinishStep, squareFeetPerGallon } from '../finishing/a-finish-step.ts';

const shop = shopDefaults('inch', 'letter');
const dollars = (amount: number) => money(Math.round(amount * 100));

/** What is bought for a job of which only these things matter. */
function shopping(
  job: Partial<Job>,
  { doors = [aDoor('B1')], parts = [] as readonly Part[], cutPlans = [] as readonly CutPlan[], minutes = 0 } = {},
) {
  const whole = aJob({ stock: [], finish: [], hardware: [], ...job });
  const set = aDoorSet(doors, parts);
  return planBuying(whole, set, cutPlans, planFinish(whole, set).value, minutes);
}

const lines = (bought: { readonly value: Shopping }, kind: Shopping['lines'][number]['kind']) =>
  bought.value.lines.filter(line => line.kind === kind);

const aBin = (width: string, long: string, source: CutBin['source'], pieces: readonly (readonly [string, string])[]) =>
  ({
    code: '',
    length: length(long),
    width: length(width),
    source,
    pieces: pieces.map(([w, l]) => ({ width: length(w), length: length(l) })),
    offcuts: [],
    waste: [],
    defects: [],
    cuts: [],
    mass: kg(0),
  }) as unknown as CutBin;

const aCutPlan = (stock: Stock, ...bins: readonly CutBin[]): CutPlan => ({
  stock: stock.name,
  kind: stock.kind,
  thickness: stock.thickness,
  kerf: length('1/8'),
  bins,
  bound: { bins: bins.length, by: 'area' },
  settings: 1,
  waste: 0,
});

const sized = (
  stock: Stock,
  ...sizes: readonly (readonly [
    width: string,
    length: string,
    onHand: number,
    price: Stock['sizes'][number]['price'],
  ])[]
): Stock => ({
  ...stock,
  sizes: sizes.map(([width, long, onHand, price], at) => ({
    width: length(width),
    length: length(long),
    onHand,
    buy: onHand === 0,
    price,
    defects: [],
    from: aSource('Stock', at + 2),
  })),
});

describe('boards', () => {
  // Two boards of 6 in × 8 ft are bought (4 board feet each by the hardwood rule), one of 7 in × 8 ft is on the rack.
  // Pieces: 4 of 2 1/4 × 31 and 2 of 5 × 90 in are 4 · 69.75 + 2 · 450 = 1179 in³ in 4/4, 1179 / 144 = 8.1875.
  // All three boards are (2 · 576 + 672) / 144 = 12.667 board feet by volume: yield 8.1875 / 12.667 = 0.6464.
  const maple = sized(
    aBoardStock(),
    ['6', '96', 0, { by: 'board-foot', amount: dollars(8.5) }],
    ['7', '96', 1, undefined],
  );
  const plan = aCutPlan(
    maple,
    aBin('6', '96', 'buy', [['5', '90']]),
    aBin('6', '96', 'buy', [['5', '90']]),
    aBin('7', '96', 'on-hand', [
      ['2 1/4', '31'],
      ['2 1/4', '31'],
      ['2 1/4', '31'],
      ['2 1/4', '31'],
    ]),
  );

  it('are whole boards where the sizes are known, and what is on the rack is not bought', () => {
    const [line] = lines(shopping({ stock: [maple] }, { cutPlans: [plan] }), 'board');
    expect(line).toMatchObject({ item: 'Maple 4/4', unit: 'board', needed: 3, onHand: 1, buy: 2 });
    expect(line?.detail).toMatchObject({
      kind: 'boards',
      species: 'hard maple',
      thickness: length('1'),
      boughtBoardFeet: 8,
      sizes: [
        { width: length('7'), length: length('96'), count: 1, onHand: true },
        { width: length('6'), length: length('96'), count: 2, onHand: false },
      ],
    });
    if (line?.detail.kind !== 'boards') throw new Error('no boards');
    expect(line.detail.netBoardFeet).toBeCloseTo(8.1875, 9);
    expect(line.detail.yield).toBeCloseTo(0.6464, 4);
    expect(line.amount).toBe(dollars(68));
  });

  it('have no price as soon as one bought size has none', () => {
    const half = sized(aBoardStock(), ['6', '96', 0, { by: 'piece', amount: dollars(40) }], ['7', '96', 0, undefined]);
    const both = aCutPlan(half, aBin('6', '96', 'buy', []), aBin('7', '96', 'buy', []));
    expect(lines(shopping({ stock: [half] }, { cutPlans: [both] }), 'board')[0]?.amount).toBeUndefined();
    const one = aCutPlan(half, aBin('6', '96', 'buy', []), aBin('6', '96', 'buy', []));
    expect(lines(shopping({ stock: [half] }, { cutPlans: [one] }), 'board')[0]?.amount).toBe(dollars(80));
  });

  it('are board feet at the usual yield where the workbook gives no size: 8.1875 / 0.7 = 11.7, so 12', () => {
    const unmeasured = {
      ...maple,
      sizes: maple.sizes.map(size => ({ ...size, from: { ...size.from, columns: { name: 'A' } } })),
    };
    const [line] = lines(shopping({ stock: [unmeasured] }, { cutPlans: [plan] }), 'board');
    expect(line).toMatchObject({ unit: 'board-foot', needed: 12, onHand: 0, buy: 12, amount: dollars(102) });
    expect(line?.detail).toMatchObject({ boughtBoardFeet: 12, yield: 0.7 });
  });

  it('are reckoned from the parts where no plan could be made', () => {
    // One rail of 2 × 11 3/4 in is 0.1632 board feet; / 0.7 = 0.233: one board foot.
    const [line] = lines(shopping({ stock: [maple] }, { parts: [aPart('B1-RT')] }), 'board');
    expect(line).toMatchObject({ unit: 'board-foot', buy: 1, amount: dollars(8.5) });
  });

  it('that the job does not use are not on the list', () => {
    expect(lines(shopping({ stock: [maple, aSheetStock()] }), 'board')).toEqual([]);
  });
});

describe('sheets', () => {
  it('are counted by the plan, those on hand taken off', () => {
    const ply = sized(aSheetStock(), ['48', '96', 0, { by: 'sheet', amount: dollars(95) }], ['24', '48', 1, undefined]);
    const plan = aCutPlan(
      ply,
      aBin('48', '96', 'buy', []),
      aBin('48', '96', 'buy', []),
      aBin('24', '48', 'on-hand', []),
    );
    const [line] = lines(shopping({ stock: [ply] }, { cutPlans: [plan] }), 'sheet');
    expect(line).toMatchObject({ unit: 'sheet', needed: 3, onHand: 1, buy: 2, amount: dollars(190) });
  });
});

describe('hardware', () => {
  const item = (changes: Partial<Hardware>): Hardware => ({
    item: 'cup hinge',
    use: 'hinge',
    per: 'hinge',
    count: 1,
    pack: 1,
    onHand: 0,
    price: undefined,
    from: aSource('Hardware', 2),
    ...changes,
  });
  const pull = { end: 'bottom' as const, runs: 'upright' as const, holes: [], diameter: length('5 mm') };
  // Three doors of two hinges, one with a pull; a drawer front with a pull; a false front that nothing is screwed to.
  const doors = [
    aDoor('B1'),
    aDoor('B2'),
    aDoor('B3', { pull }),
    aDoor('D1', { front: 'drawer-front', hinges: [], pull }),
    aDoor('F1', { front: 'false-front', hinges: [] }),
  ];

  it.each([
    { changes: {}, needs: 6, buy: 6, why: 'two hinges on each of three doors' },
    { changes: { pack: 10 }, needs: 6, buy: 1, why: 'one pack of ten' },
    { changes: { pack: 4 }, needs: 6, buy: 2, why: 'two packs of four' },
    { changes: { pack: 4, onHand: 2 }, needs: 6, buy: 1, why: 'two in the drawer, four to buy' },
    { changes: { onHand: 50 }, needs: 6, buy: 0, why: 'more on hand than needed' },
    { changes: { use: 'screw', count: 2 }, needs: 12, buy: 12, why: 'two screws a hinge' },
    { changes: { use: 'bumper', per: 'door', count: 2 }, needs: 8, buy: 8, why: 'two on each door and drawer front' },
    { changes: { use: 'pull', per: 'pull' }, needs: 2, buy: 2, why: 'a pull each on B3 and D1' },
    { changes: { use: 'other', per: 'job', count: 1 }, needs: 1, buy: 1, why: 'once for the job' },
  ] as const)('$changes: $needs pieces, $buy to buy, $why', ({ changes, needs, buy }) => {
    const found = lines(shopping({ hardware: [item(changes)] }, { doors }), 'hardware').filter(
      l => l.item === 'cup hinge',
    );
    expect(found.map(line => [line.detail, line.buy])).toEqual([
      [{ kind: 'packs', pieces: needs, pack: item(changes).pack }, buy],
    ]);
  });

  it('is paid by the pack', () => {
    const [line] = lines(
      shopping({ hardware: [item({ pack: 4, price: dollars(12.4) })] }, { doors: doors.slice(0, 2) }),
      'hardware',
    );
    expect(line).toMatchObject({ unit: 'pack', needed: 4, onHand: 0, buy: 1, amount: dollars(12.4) });
  });

  it('hinges and pulls that Hardware does not name are on the list all the same, and said', () => {
    const bought = shopping({ hardware: [] }, { doors });
    expect(lines(bought, 'hardware').map(line => [line.item, line.buy])).toEqual([
      ['hinge', 6],
      ['pull', 2],
    ]);
    expect(bought.diagnostics.filter(each => each.code === 'hardware-not-listed').map(each => each.facts)).toEqual([
      { use: 'hinge', count: 6 },
      { use: 'pull', count: 2 },
    ]);
  });
});

describe('glue', () => {
  const rail = aPart('B1-RT');
  const panel = aPart('B1-P', {
    role: 'panel',
    length: given('panel', '26 3/4'),
    width: given('panel', '11 11/16'),
    make: { kind: 'plywood-panel', rabbet: undefined },
  });
  const solid = aPart('B1-P', {
    role: 'panel',
    thickness: length('1/2'),
    make: {
      kind: 'solid-panel',
      rabbet: undefined,
      glueUp: { strips: 4, stripWidth: length('3'), blankLength: length('27'), blankWidth: length('12') },
      movement: {} as never,
    },
  });
  const squareInches = (parts: readonly Part[]): number =>
    glueArea(aDoorSet([aDoor('B1')], parts)) / area(length('1'), length('1'));

  it.each([
    // Both ends of a 2 in rail: 3/4 in of end grain and the two 3/8 in cheeks of its tongue.
    { what: 'a rail', parts: [rail], area: 2 * 2 * (0.75 + 2 * 0.375) },
    // A bead of 1/4 in, the width of the groove, all round the panel.
    { what: 'a plywood panel', parts: [panel], area: 2 * (26.75 + 11.6875) * 0.25 },
    // Four strips have three joints; the panel is not glued into its frame.
    { what: 'a solid panel', parts: [solid], area: 3 * 27 * 0.5 },
    {
      what: 'a stile',
      parts: [aPart('B1-SL', { role: 'stile-left', make: { kind: 'stile', groovedEdges: 1, horn: length('0') } })],
      area: 0,
    },
    { what: 'a slab', parts: [aPart('B1-S', { role: 'slab', make: { kind: 'slab' } })], area: 0 },
  ])('$what takes glue on $area in²', ({ parts, area: expected }) => {
    expect(squareInches(parts)).toBeCloseTo(expected, 9);
  });

  it('is bought by the bottle: 12 in² at 0.1524 l/m² are 1.2 ml, one half pint', () => {
    const [line] = lines(shopping({}, { parts: [rail, aPart('B1-RB')] }), 'glue');
    expect(line?.needed).toBeCloseTo(12 * 0.0254 ** 2 * 0.1524, 9);
    expect(line?.detail).toMatchObject({ kind: 'volume', containers: [{ count: 1 }] });
    expect(line?.buy).toBeCloseTo(0.2365882365, 9);
    expect(line?.amount).toBeUndefined();
  });

  it('has the shop’s price', () => {
    const priced = { ...shop, buying: { ...shop.buying, gluePrice: dollars(20) } };
    expect(lines(shopping({ shop: priced }, { parts: [rail] }), 'glue')[0]?.amount).toBe(dollars(4.73));
  });

  it('is not bought for slabs', () => {
    expect(lines(shopping({}, { parts: [] }), 'glue')).toEqual([]);
  });
});

describe('abrasives', () => {
  // 30 doors of 10 ft² are 27.87 m²; a disc is good for 2 m² (common practice): 14 discs for each time over.
  const doors = Array.from({ length: 30 }, (_, at) => aDoor(`B${at}`, { finishArea: squareFeet(10) }));

  it('are discs of each grit, by the pack', () => {
    const finish = [aFinishStep({ kind: 'sand', grit: 150 }), aFinishStep({ kind: 'sand', grit: 320, coats: 2 })];
    const found = lines(shopping({ finish }, { doors }), 'abrasive');
    expect(found.map(line => [line.detail.kind === 'discs' && line.detail.grit, line.needed, line.buy])).toEqual([
      [120, 14, 50],
      [150, 28, 50],
      [320, 28, 50],
    ]);
  });

  it('a grit that a coat merely mentions is not sanded with', () => {
    const found = lines(shopping({ finish: [aFinishStep({ grit: 400 })] }, { doors }), 'abrasive');
    expect(found.map(line => line.needed)).toEqual([14, 14]);
  });

  it('cost what a pack costs', () => {
    const priced = { ...shop, buying: { ...shop.buying, discPack: 10, discPrice: dollars(9) } };
    expect(lines(shopping({ shop: priced }, { doors }), 'abrasive').map(line => line.amount)).toEqual([
      dollars(18),
      dollars(18),
    ]);
  });
});

describe('finish', () => {
  // 100 ft² at 400 ft²/gal are 1/4 gal a coat. Two coats of 2 : 1 are 1/3 gal of dye (2 2/3 pints: two quarts) and 1/6 gal
  // of reducer; the reducer is in the topcoat too: 3 coats of 100 / 350 gal and 10 % of that, 3/35 gal, 0.2524 gal in
  // all: two quarts.
  const doors = Array.from({ length: 10 }, (_, at) => aDoor(`B${at}`, { finishArea: squareFeet(10) }));
  const finish = [
    aFinishStep({
      kind: 'stain',
      components: [
        { name: 'dye', parts: 2 },
        { name: 'reducer', parts: 1 },
      ],
      coats: 2,
      squareMetresPerLitre: squareFeetPerGallon(400),
      transfer: 1,
      price: { perLitre: dollars(30) },
    }),
    aFinishStep({ coats: 3, transfer: 1, additive: { name: 'reducer', percent: 10 } }),
  ];
  const gallon = 3.785411784;

  it('each component once, over all its steps, in cans', () => {
    const found = lines(shopping({ finish }, { doors }), 'finish');
    expect(found.map(line => line.item)).toEqual(['clear coat', 'dye', 'reducer']);
    expect(found.map(line => line.needed / gallon)).toEqual([
      expect.closeTo(6 / 7, 9),
      expect.closeTo(1 / 3, 9),
      expect.closeTo(1 / 6 + 3 / 35, 9),
    ]);
    expect(found.map(line => line.buy / gallon)).toEqual([
      expect.closeTo(1, 9),
      expect.closeTo(1 / 2, 9),
      expect.closeTo(1 / 2, 9),
    ]);
  });

  it('has its step’s price; a component without one is counted and named', () => {
    const bought = shopping({ finish }, { doors });
    const found = lines(bought, 'finish');
    expect(found.map(line => line.amount)).toEqual([undefined, dollars(56.78), dollars(56.78)]);
    expect(bought.diagnostics.filter(each => each.code === 'prices-missing').map(each => each.facts)).toEqual([
      { items: ['hinge', 'disc 120', 'disc 150', 'clear coat'] },
    ]);
    expect(bought.value.unpriced).toBe(4);
  });
});

describe('glass', () => {
  const pane = (code: string, width: string, long: string, thickness = '1/8') =>
    aPart(code, {
      role: 'glass',
      stock: undefined,
      width: given('glass', width),
      length: given('glass', long),
      thickness: length(thickness),
      make: { kind: 'glass' },
    });

  it('is the glazier’s list, equal panes together, each thickness by itself', () => {
    const parts = [
      pane('B1-G', '10', '20'),
      pane('B2-G', '10', '20'),
      pane('B3-G', '10', '30'),
      pane('B4-G', '8', '8', '1/4'),
    ];
    const priced = { ...shop, buying: { ...shop.buying, glassPrice: dollars(100) } };
    const found = lines(shopping({ shop: priced }, { parts }), 'glass');
    expect(found.map(line => line.detail)).toEqual([
      {
        kind: 'panes',
        thickness: length('1/8'),
        panes: [
          { width: length('10'), height: length('30'), count: 1 },
          { width: length('10'), height: length('20'), count: 2 },
        ],
      },
      { kind: 'panes', thickness: length('1/4'), panes: [{ width: length('8'), height: length('8'), count: 1 }] },
    ]);
    // 700 in² are 0.4516 m².
    expect(found[0]?.amount).toBe(dollars(45.16));
  });
});

describe('the cost of the job', () => {
  const hinge: Hardware = {
    item: 'cup hinge',
    use: 'hinge',
    per: 'hinge',
    count: 1,
    pack: 1,
    onHand: 0,
    price: dollars(3.1),
    from: aSource('Hardware', 2),
  };
  const priced = {
    ...shop,
    buying: { ...shop.buying, discPrice: dollars(20) },
    work: { ...shop.work, rate: dollars(60), margin: 0.25 },
  };

  // 2 hinges at 3.10 and 2 packs of discs at 20 are 46.20; 90 min at 60 an hour are 90; a quarter of 136.20 is 34.05.
  it('is materials, labour by the hour, and the margin on both', () => {
    const { value, diagnostics } = shopping({ hardware: [hinge], shop: priced }, { minutes: 90 });
    expect([value.materials, value.labour.amount, value.margin, value.total].map(printMoney)).toEqual([
      '46.20',
      '90.00',
      '34.05',
      '170.25',
    ]);
    expect([value.labour.minutes, value.unpriced, diagnostics]).toEqual([90, 0, []]);
  });

  it('changes with one cell: one more cent a hinge is two cents, and a quarter of them, half a cent, rounded', () => {
    const more = shopping({ hardware: [{ ...hinge, price: dollars(3.11) }], shop: priced }, { minutes: 90 });
    expect(printMoney(more.value.total)).toBe('170.28');
  });

  it('says which prices it lacks, as a note', () => {
    const { value, diagnostics } = shopping({ hardware: [{ ...hinge, price: undefined }], shop: priced });
    expect(diagnostics.map(each => [each.severity, each.code, each.facts])).toEqual([
      ['note', 'prices-missing', { items: ['cup hinge'] }],
    ]);
    expect(value.unpriced).toBe(1);
  });
});
