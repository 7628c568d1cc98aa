import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calculate/index.ts';
import { printPlace } from '../../src/diagnostics/print.ts';
import { say } from '../../src/diagnostics/words.ts';
import type { FrameStyle, Job, Opening } from '../../src/import/job.ts';
import { shopDefaults } from '../../src/trade/shop-defaults.ts';
import type { Length } from '../../src/units/length.ts';
import { fromPounds } from '../../src/units/mass.ts';
import { printLength } from '../../src/units/print-length.ts';
import {
  aBoardStock,
  aFrameStyle,
  aGrid,
  aJob,
  anOpening,
  aSheetStock,
  aSlabStyle,
  aSource,
  FREE,
  inset,
  overlay,
} from '../support/a-job.ts';
import { length } from '../support/length.ts';

const shop = shopDefaults('inch', 'letter');
const fixed = { kind: 'fixed' } as const;

/** What is found in a job, as `sheet!cell severity code`; found when the test asks, so that a mutant can be caught at it. */
type Findings = () => readonly string[];

const found =
  (openings: readonly Opening[], job: Partial<Job> = {}): Findings =>
  () =>
    calculate(aJob({ openings, ...job })).diagnostics.map(
      ({ at, also, severity, code }) => `${[at, ...also].map(printPlace).join(' ')} ${severity} ${code}`,
    );

const one = (changes: Partial<Opening>, job: Partial<Job> = {}): Findings => found([anOpening(changes)], job);

const styled = (changes: Partial<FrameStyle>, opening: Partial<Opening> = {}, job: Partial<Job> = {}) =>
  one(opening, { styles: [aFrameStyle(changes)], ...job });

const ply = (thickness: string) => ({ kind: 'plywood', stock: 'Ply', thickness: length(thickness) }) as const;
const glass = (thickness: string) => ({ kind: 'glass', thickness: length(thickness) }) as const;
const solid = (stock: string) => ({ kind: 'solid', stock, thickness: length('1/2'), cut: 'flat-sawn' }) as const;
const moist = (made: number, driest: number, wettest: number) => ({
  shop: { ...shop, climate: { ...shop.climate, shopMoisture: made, driestMoisture: driest, wettestMoisture: wettest } },
});

type Row = readonly [why: string, findings: Findings, expected: readonly string[]];

describe('a door that cannot be', () => {
  it.each<Row>([
    ['clearances as wide as the opening', one({ mounting: inset('7 3/16') }), ['Cabinets!F2 error door-has-no-size']],
    [
      'clearances as high as the opening',
      one({ mounting: inset('1/8', '1/8', '15') }),
      ['Cabinets!G2 error door-has-no-size'],
    ],
    ['stiles that touch', one({ width: length('3') }), ['Cabinets!F2 error rail-has-no-length']],
    ['1/32 in between the stiles is a rail, if not a good one', one({ width: length('3 1/32'), hanging: fixed }), []],
    [
      'middle stiles that fill the frame',
      one({ width: length('7'), grid: aGrid(1, 3), hanging: fixed }),
      ['Cabinets!F2 error sight-has-no-width'],
    ],
    [
      'a third of 3/32 in is still an increment wide',
      one({ width: length('7 3/32'), grid: aGrid(1, 3), hanging: fixed }),
      [],
    ],
    ['rails that touch', one({ height: length('3'), hanging: fixed }), ['Cabinets!G2 error sight-has-no-height']],
    ['1/32 in between the rails', one({ height: length('3 1/32'), hanging: fixed }), []],
    [
      'a middle rail that runs into the bottom rail',
      one({ grid: aGrid(2, 1, '3') }),
      ['Cabinets!R2 error sight-has-no-height'],
    ],
    [
      'two middle rails that run into each other',
      one({ grid: aGrid(3, 1, '12', '14') }),
      ['Cabinets!R2 error sight-has-no-height'],
    ],
    [
      'a middle rail that runs into the top rail',
      one({ grid: aGrid(2, 1, '28') }),
      ['Cabinets!R2 error sight-has-no-height'],
    ],
    [
      'too narrow and too low are both said',
      one({ width: length('3'), height: length('3'), hanging: fixed }),
      ['Cabinets!F2 error rail-has-no-length', 'Cabinets!G2 error sight-has-no-height'],
    ],
    ['a slab needs no members', one({ width: length('1'), height: length('1'), style: 'Slab', hanging: fixed }), []],
  ])('%s', (_why, findings, expected) => {
    expect(findings()).toEqual(expected);
  });

  it('is left out, and the others go on', () => {
    const narrow = anOpening({ cabinet: 'B1', width: length('3') });
    const sound = anOpening({ cabinet: 'B2', from: aSource('Cabinets', 3) });
    const { doors, parts } = calculate(aJob({ openings: [narrow, sound] })).value;
    expect(doors.map(door => door.code)).toEqual(['B2.1']);
    expect(parts.every(part => part.door === 'B2.1')).toBe(true);
  });

  it('takes its other leaf and its copies with it, and is said once', () => {
    const narrow = { width: length('6'), quantity: 3, hanging: { kind: 'pair', gap: length('1/8') } as const };
    expect(calculate(aJob({ openings: [anOpening(narrow)] })).value.doors).toEqual([]);
    expect(one(narrow)()).toEqual(['Cabinets!F2 error rail-has-no-length']);
  });

  it('of a second row with its name is left out: the import has said so', () => {
    const twice = [anOpening(), anOpening({ from: aSource('Cabinets', 3), width: length('20') })];
    const { value, diagnostics } = calculate(aJob({ openings: twice }));
    expect(value.doors.map(door => [door.code, door.opening.width])).toEqual([['B1.1', length('14 3/8')]]);
    expect(diagnostics).toEqual([]);
  });

  it('of a style that the workbook does not have is left out: the import has said so', () => {
    const { value, diagnostics } = calculate(aJob({ openings: [anOpening({ style: 'None' })] }));
    expect([value.doors, diagnostics]).toEqual([[], []]);
  });
});

describe('a door that a shop would regret', () => {
  const tall = { height: length('59 1/32') };
  const oak = { ...aBoardStock({ name: 'Maple 4/4', species: 'oak from the barn' }) };
  it.each<Row>([
    ['60 1/32 in without a middle rail', one(tall), ['Cabinets!G2 warning door-wants-middle-rail']],
    ['60 in', one({ height: length('59') }), []],
    ['the same with a middle rail', one({ ...tall, grid: aGrid(2, 1) }), []],
    ['the same as a slab', one({ ...tall, style: 'Slab' }), []],
    [
      'higher than the table of hinges',
      one({ height: length('99 1/32'), grid: aGrid(3, 1) }),
      ['Cabinets!G2 warning door-beyond-hinge-table'],
    ],
    ['as high as the table of hinges', one({ height: length('99'), grid: aGrid(3, 1) }), []],
    [
      'heavier than the table of hinges',
      one(
        {},
        {
          shop: {
            ...shop,
            hinges: {
              ...shop.hinges,
              counts: [{ ...shop.hinges.counts[0], hinges: 2, heightUpTo: length('40'), massUpTo: fromPounds(6) }],
            },
          },
        },
      ),
      ['Cabinets!G2 warning door-beyond-hinge-table'],
    ],
    [
      'as wide as its end hinges are apart',
      one({ width: length('23') }),
      ['Cabinets!F2 warning hinges-closer-than-width'],
    ],
    ['1/32 in narrower', one({ width: length('22 31/32') }), []],
    [
      'so low that plates overlap: 5 in, hinges at 1 1/4 and 3 3/4, 64 mm for a plate',
      one({ width: length('1'), height: length('4'), style: 'Slab' }),
      ['Cabinets!G2 warning door-too-short-for-hinges'],
    ],
    ['6 in', one({ width: length('1'), height: length('5'), style: 'Slab' }), []],
    [
      'a hinge on a middle rail too wide to move off',
      one(
        { height: length('41'), grid: aGrid(2, 1) },
        { shop: { ...shop, hinges: { ...shop.hinges, shiftMax: length('2') } } },
      ),
      ['Cabinets!G2 warning hinge-on-rail-joint'],
    ],
    [
      'a pull off the end of a low door',
      one(
        { height: length('5'), style: 'Slab', pull: 'bottom' },
        { shop: { ...shop, pulls: { ...shop.pulls, fromEnd: length('6'), spacing: length('0') } } },
      ),
      ['Cabinets!F2 warning hinges-closer-than-width', 'Cabinets!Y2 error pull-off-the-door'],
    ],
    [
      'a pull bored into the groove: 1 5/8 in is solid, the hole takes 2.5 mm',
      one({ pull: 'top' }, { shop: { ...shop, pulls: { ...shop.pulls, fromEdge: length('1 5/8') } } }),
      ['Cabinets!Y2 warning pull-in-groove'],
    ],
    [
      'a pull beside the groove',
      one({ pull: 'top' }, { shop: { ...shop, pulls: { ...shop.pulls, fromEdge: length('1 1/2') } } }),
      [],
    ],
    ['a species that is in no table', one({}, { stock: [oak, aSheetStock()] }), ['Stock!C2 warning species-unknown']],
    ['the same with a density', one({}, { stock: [{ ...oak, density: 700 }, aSheetStock()] }), []],
    [
      'the same in stock that no door is made of',
      one({}, { stock: [aBoardStock(), aSheetStock(), { ...oak, name: 'Other' }] }),
      [],
    ],
  ])('%s', (_why, findings, expected) => {
    expect(findings()).toEqual(expected);
  });
});

describe('a solid panel', () => {
  const opening = { style: 'Solid', width: length('19') };
  it.each<Row>([
    // 16 3/4 in groove to groove; .00248 * 6 = 1.5 %: cut 16 1/2, shrinks 0.25: (16.5 - .25 - 16) / 2 = .125 held.
    ['just held in the driest weeks', one(opening, moist(8, 2, 14)), [...beyond(1)]],
    ['less than 1/8 in held', one(opening, moist(8, 1.5, 14)), [...beyond(1), 'Cabinets!F2 warning panel-barely-held']],
    ['not held at all', one(opening, moist(14, 1, 20)), [...beyond(2), 'Cabinets!F2 error panel-leaves-groove']],
    ['as moist as the table reaches, 6 and 14 %', one({ style: 'Solid' }, moist(10, 6, 14)), []],
    [
      'of a species that is in no table',
      styled(
        { infill: solid('Barn') },
        {},
        { stock: [aBoardStock(), aBoardStock({ name: 'Barn', species: 'barn oak' })] },
      ),
      ['Styles!O2 error movement-unknown'],
    ],
  ])('%s', (_why, findings, expected) => {
    expect(findings()).toEqual(expected);
  });

  function beyond(times: number): readonly string[] {
    return Array.from({ length: times }, () => 'Styles!O4 note moisture-beyond-table');
  }
});

describe('a style that cannot be made is said once, at its row', () => {
  const stock = { stock: [aBoardStock(), aSheetStock({ name: 'Ply', thickness: length('0.47') })] };
  const thin = (thickness: string) => ({
    stock: [aBoardStock(), aSheetStock({ name: 'Ply', thickness: length(thickness) })],
  });
  const hung = { kind: 'single', hingeSide: 'left' } as const;
  it.each<Row>([
    [
      'stile no wider than its groove',
      styled({ stileWidth: length('3/8') }, { hanging: fixed }),
      ['Styles!C2 error groove-deeper-than-member'],
    ],
    ['stile a little wider', styled({ stileWidth: length('13/32') }, { hanging: fixed }), []],
    [
      'top rail no wider than its groove',
      styled({ topRail: length('3/8') }),
      ['Styles!D2 error groove-deeper-than-member'],
    ],
    [
      'bottom rail no wider than its groove',
      styled({ bottomRail: length('3/8') }),
      ['Styles!E2 error groove-deeper-than-member'],
    ],
    [
      'middle rail no wider than its two grooves',
      styled({ middleRail: length('3/4') }, { grid: aGrid(2, 1) }),
      ['Styles!F2 error groove-deeper-than-member'],
    ],
    ['middle rail a little wider', styled({ middleRail: length('25/32') }, { grid: aGrid(2, 1) }), []],
    ['middle rail that no door has', styled({ middleRail: length('0') }), []],
    [
      'middle stile no wider than its two grooves',
      styled({ middleStile: length('3/4') }, { grid: aGrid(1, 2) }),
      ['Styles!G2 error groove-deeper-than-member'],
    ],
    ['middle stile that no door has', styled({ middleStile: length('0') }, { grid: aGrid(2, 1) }), []],
    [
      'a groove that reaches the back',
      styled({ faceToGroove: length('1/2') }),
      ['Styles!J2 error groove-breaks-back', 'Styles!Q2 warning panel-proud-of-back'],
    ],
    ['a tongue that bottoms', styled({ tongueLength: length('13/32') }), ['Styles!L2 error tongue-longer-than-groove']],
    ['a tongue that does not', styled({ tongueLength: length('11/32') }), []],
    [
      'a panel cut short of its groove',
      styled({ grooveDepth: length('1/32'), tongueLength: length('1/32') }),
      ['Styles!I2 error panel-not-in-groove'],
    ],
    [
      'a pane cut short of its rabbet',
      styled({ infill: glass('1/8'), grooveDepth: length('1/16'), tongueLength: length('1/16') }),
      ['Styles!I2 error panel-not-in-groove'],
    ],
    [
      'a pane that just reaches',
      styled({ infill: glass('1/8'), grooveDepth: length('3/32'), tongueLength: length('3/32') }),
      [],
    ],
    [
      'a groove narrower than the fit',
      styled({ grooveWidth: length('0.004') }),
      ['Styles!J2 error panel-tongue-too-thin'],
    ],
    [
      'a panel that rattles: 1/4 - 0.23 = 0.5 mm',
      styled({ infill: ply('0.23') }, {}, thin('0.23')),
      ['Styles!Q2 warning panel-loose-in-groove'],
    ],
    ['a panel with 0.5 mm of play', styled({ infill: ply('5.85 mm') }, {}, thin('5.85 mm')), []],
    [
      'a panel proud of the back',
      styled({ infill: ply('33/64') }, {}, thin('33/64')),
      ['Styles!Q2 warning panel-proud-of-back'],
    ],
    ['a panel flush with the back', styled({ infill: ply('1/2') }, {}, thin('1/2')), []],
    ['glass that leaves no stop', styled({ infill: glass('1/2') }), ['Styles!Q2 error glass-without-stop']],
    [
      'glass that stands out at the back has no stop; it is not called proud',
      styled({ infill: glass('9/16') }),
      ['Styles!Q2 error glass-without-stop'],
    ],
    [
      'a panel as thick as its groove needs no tongue, whatever the fit',
      styled(
        { infill: ply('1/4') },
        {},
        { ...thin('1/4'), shop: { ...shop, panels: { ...shop.panels, rabbetFit: length('1/4') } } },
      ),
      [],
    ],
    ['glass that leaves a little', styled({ infill: glass('31/64') }), []],
    // 4 + 35 + 1 = 40 mm; 40 + 9.525 = 49.525 mm is 1.9498 in.
    [
      'a stile too narrow for the cup',
      styled({ stileWidth: length('1 15/16') }),
      ['Styles!C2 error cup-breaks-into-groove'],
    ],
    [
      'a stile just wide enough; the tape does not show it',
      styled({ stileWidth: length('49.525 mm') }),
      ['Styles!C2 note member-between-marks'],
    ],
    [
      'a rail that the tape does not show',
      styled({ topRail: length('2 1/64') }),
      ['Styles!D2 note member-between-marks'],
    ],
    [
      'the same on a tape of 64ths',
      styled(
        { topRail: length('2 1/64') },
        {},
        { shop: { ...shop, printing: { lengths: { units: 'inch', increment: length('1/64') } } } },
      ),
      [],
    ],
    ['a narrow stile that nothing hangs on', styled({ stileWidth: length('1 1/2') }, { hanging: fixed }), []],
    // 12.5 + 5 = 17.5 mm.
    [
      'too thin for the cup',
      styled({ frameThickness: length('17.4 mm') }),
      ['Styles!Q2 warning panel-proud-of-back', 'Styles!H2 error cup-breaks-through'],
    ],
    [
      'thick enough for the cup',
      styled({ frameThickness: length('17.5 mm'), infill: ply('0.4') }, { hanging: hung }, thin('0.4')),
      [],
    ],
    [
      'a slab too thin for the cup',
      one({ style: 'Slab' }, { styles: [aSlabStyle({ thickness: length('17 mm') })] }),
      ['Styles!H3 error cup-breaks-through', 'Styles!H3 warning sheet-thickness-differs'],
    ],
    [
      'a thin slab that nothing hangs on',
      one({ style: 'Slab', hanging: fixed }, { styles: [aSlabStyle({ thickness: length('17 mm'), stock: 'Ply 17' })] }),
      [],
    ],
    [
      'boards thinner than the frame',
      styled({}, {}, { stock: [aBoardStock({ thickness: length('5/8') }), aSheetStock()] }),
      ['Styles!H2 error stock-too-thin'],
    ],
    [
      'boards as thick as the frame',
      styled({}, {}, { stock: [aBoardStock({ thickness: length('3/4') }), aSheetStock()] }),
      [],
    ],
    [
      'a sheet that measures something else',
      styled({ infill: ply('0.48') }, {}, stock),
      ['Styles!Q2 warning sheet-thickness-differs'],
    ],
    ['a sheet that is not in Stock: the import has said so', styled({ infill: ply('0.48') }), []],
    [
      'a style that no door is made in',
      one({}, { styles: [aFrameStyle(), aFrameStyle({ name: 'Other', stileWidth: length('1/4') })] }),
      [],
    ],
  ])('%s', (_why, findings, expected) => {
    expect(findings()).toEqual(expected);
  });

  it('though only one of its doors hangs, or is divided', () => {
    const plain = (cabinet: string, row: number, changes: Partial<Opening> = {}) =>
      anOpening({ cabinet, from: aSource('Cabinets', row), hanging: fixed, ...changes });
    const narrow = { styles: [aFrameStyle({ stileWidth: length('1 1/2') })] };
    const pairOf = (changes: Partial<Opening>) => [plain('B1', 2), plain('B2', 3, changes)];
    expect(found(pairOf({ hanging: hung }), narrow)()).toEqual(['Styles!C2 error cup-breaks-into-groove']);
    expect(found(pairOf({}), narrow)()).toEqual([]);
    const thinSlab = { styles: [aSlabStyle({ name: 'Plain', thickness: length('17 mm'), stock: 'Ply 17' })] };
    expect(found(pairOf({ hanging: hung }), thinSlab)()).toEqual(['Styles!H3 error cup-breaks-through']);
    const slender = { styles: [aFrameStyle({ middleRail: length('3/4') })] };
    expect(found(pairOf({ grid: aGrid(2, 1) }), slender)()).toEqual(['Styles!F2 error groove-deeper-than-member']);
  });

  it('however many doors are made in it; they are left out without a word', () => {
    const openings = [1, 2, 3].map(row => anOpening({ cabinet: `B${row}`, from: aSource('Cabinets', row) }));
    const job = { styles: [aFrameStyle({ tongueLength: length('1') })] };
    expect(found(openings, job)()).toEqual(['Styles!L2 error tongue-longer-than-groove']);
    expect(calculate(aJob({ openings, ...job })).value).toEqual({ doors: [], parts: [] });
  });
});

describe('reveals', () => {
  const left = (changes: Partial<Opening>): Opening =>
    anOpening({ cabinet: 'B1', faceFrame: { ...FREE, rightNeighbour: 'B2' }, ...changes });
  const right = (changes: Partial<Opening> = {}): Opening =>
    anOpening({ cabinet: 'B2', from: aSource('Cabinets', 3), ...changes });
  const member = (right: string) => ({ faceFrame: { ...FREE, right: length(right), rightNeighbour: 'B2' } });
  it.each<Row>([
    // 1/2 + 1/2 + the wished 1/4.
    ['neighbours that fit on their stile', found([left(member('1 1/4')), right()]), []],
    [
      'neighbours that show too little',
      found([left(member('1 7/32')), right()]),
      ['Cabinets!J2 Cabinets!I3 error reveal-too-small'],
    ],
    [
      'neighbours that collide',
      found([left(member('3/4')), right()]),
      ['Cabinets!J2 Cabinets!I3 error reveal-too-small'],
    ],
    [
      'unequal overlays: only the facing ones count',
      found([left({ ...member('1 1/4'), mounting: overlay('2', '1/2') }), right({ mounting: overlay('1/2', '2') })]),
      [],
    ],
    ['an overlay and an inset neighbour', found([left(member('3/4')), right({ mounting: inset('3/32') })]), []],
    [
      'two inset neighbours',
      found([left({ ...member('1/8'), mounting: inset('3/32') }), right({ mounting: inset('3/32') })]),
      [],
    ],
    [
      'the member as the neighbour gives it',
      found([left({}), right({ faceFrame: { ...FREE, left: length('1') } })]),
      ['Cabinets!J2 Cabinets!I3 error reveal-too-small'],
    ],
    [
      'two widths for one member: the narrower counts',
      found([left(member('2')), right({ faceFrame: { ...FREE, left: length('1') } })]),
      ['Cabinets!J2 Cabinets!I3 error reveal-too-small'],
    ],
    [
      'and the other way round',
      found([left(member('1')), right({ faceFrame: { ...FREE, left: length('2') } })]),
      ['Cabinets!J2 Cabinets!I3 error reveal-too-small'],
    ],
    ['no width given', found([left({}), right()]), []],
    ['no such neighbour: the import has said so', found([left(member('1'))]), []],
    [
      'a cabinet of several openings',
      found([left(member('1')), right({ label: 'A' }), right({ label: 'B' })]),
      ['Cabinets!W2 warning neighbour-ambiguous'],
    ],
    [
      'one of them by its label',
      found([
        left({ faceFrame: { ...FREE, right: length('1'), rightNeighbour: 'B2/B' } }),
        right({ label: 'A' }),
        right({ label: 'B', from: aSource('Cabinets', 4) }),
      ]),
      ['Cabinets!J2 Cabinets!I4 error reveal-too-small'],
    ],
    [
      'the one above',
      found([anOpening({ faceFrame: { ...FREE, top: length('1'), topNeighbour: 'B2' } }), right()]),
      ['Cabinets!K2 Cabinets!L3 error reveal-too-small'],
    ],
    [
      'an overlay wider than the frame on the left',
      one({ faceFrame: { ...FREE, left: length('15/32') } }),
      ['Cabinets!I2 error overlay-wider-than-frame'],
    ],
    [
      'on the right',
      one({ faceFrame: { ...FREE, right: length('15/32') } }),
      ['Cabinets!J2 error overlay-wider-than-frame'],
    ],
    [
      'at the top',
      one({ faceFrame: { ...FREE, top: length('15/32') } }),
      ['Cabinets!K2 error overlay-wider-than-frame'],
    ],
    [
      'at the bottom',
      one({ faceFrame: { ...FREE, bottom: length('15/32') } }),
      ['Cabinets!L2 error overlay-wider-than-frame'],
    ],
    ['an overlay as wide as the frame', one({ faceFrame: { ...FREE, left: length('1/2') } }), []],
  ])('%s', (_why, findings, expected) => {
    expect(findings()).toEqual(expected);
  });

  it('names both cabinets, the member and what is left', () => {
    const { diagnostics } = calculate(aJob({ openings: [left(member('1 1/8')), right({ mounting: overlay('5/8') })] }));
    expect(diagnostics[0]?.facts).toEqual({
      door: 'B1',
      neighbour: 'B2',
      side: 'right',
      member: length('1 1/8'),
      overlays: length('1 1/8'),
      left: length('0'),
      reveal: length('1/4'),
    });
  });
});

/** The sentences that a job of one door is answered with. */
const said = (changes: Partial<Opening>, job: Partial<Job> = {}, more: readonly Opening[] = []): readonly string[] => {
  const drawn = aJob({ openings: [anOpening(changes), ...more], ...job });
  const size = (value: Length) => printLength(value, { units: 'inch', increment: length('1/64') });
  return calculate(drawn).diagnostics.map(diagnostic => say(diagnostic, 'en', size).what);
};

const styledAs = (changes: Partial<FrameStyle>): Partial<Job> => ({ styles: [aFrameStyle(changes)] });
const shopWith = (hinges: Partial<Job['shop']['hinges']>, pulls: Partial<Job['shop']['pulls']> = {}): Partial<Job> => ({
  shop: { ...shop, hinges: { ...shop.hinges, ...hinges }, pulls: { ...shop.pulls, ...pulls } },
});

describe('every finding gives the numbers that it comes from', () => {
  it.each<[answers: () => readonly string[], sentence: RegExp]>([
    // 14 3/8 − 2 · 7 1/4 and 30 − 14 1/2.
    [() => said({ mounting: inset('7 1/4') }), /^The door of B1 comes out −1\/8 wide and 15 1\/2 high\.$/],
    // 2 + 1 − 4.
    [() => said({ label: 'A', width: length('2') }), /^B1\/A is too narrow for its stiles: −1 is left between them\.$/],
    // (8 − 4 − 4) / 3.
    [() => said({ width: length('7'), grid: aGrid(1, 3) }), /each panel would show 0\.$/],
    // 2 in above the bottom rail stands the lower edge of the rail centred at 2 1/2: 2 1/2 − 1 − 2.
    [() => said({ grid: aGrid(2, 1, '2 1/2') }), /panel 1 from the bottom would show −1\/2\.$/],
    // Both at once: the second row from 30 1/2 up has 31 − 2 − 30 1/2.
    [() => said({ grid: aGrid(2, 1, '29 1/2') }), /panel 2 from the bottom would show −1 1\/2\.$/],
    [() => said({ height: length('60') }), /is 61 high and has no middle rail; above 60 a frame wants one\.$/],
    [() => said({ height: length('100'), grid: aGrid(3, 1) }), /^The door of B1, 101 high and 9\.\d kg/],
    [() => said({ width: length('1'), height: length('4'), style: 'Slab' }), /is 5 high: the plates of its 2 hinges/],
    [() => said({ width: length('24') }), /are 24 apart, and the door is 25 wide/],
    [
      () => said({ height: length('41'), grid: aGrid(2, 1) }, shopWith({ shiftMax: length('2') })),
      /at 21 from the top lies on .* within 2 is clear/,
    ],
    [
      () =>
        said(
          { height: length('5'), style: 'Slab', pull: 'bottom', width: length('1') },
          shopWith({}, { fromEnd: length('6') }),
        ),
      /1 from the left and 6 from the bottom, is not on the door/,
    ],
    [
      () => said({ pull: 'top' }, shopWith({}, { fromEdge: length('1 3/4') })),
      /1 3\/4 from the edge, .* solid for 1 5\/8 only/,
    ],
    [
      () => said({ faceFrame: { ...FREE, top: length('1/4') } }),
      /^The door of B1 lies 1\/2 over the face frame at the top, and the member there is 1\/4 wide\.$/,
    ],
    [
      () =>
        said({ faceFrame: { ...FREE, right: length('2'), rightNeighbour: 'B2' } }, {}, [
          anOpening({ cabinet: 'B2', label: 'A' }),
          anOpening({ cabinet: 'B2', label: 'B' }),
        ]),
      /^B1 names B2 as its neighbour, which has several/,
    ],
    [
      () => said({}, styledAs({ topRail: length('1/4') })),
      /^The top rail of style Plain is 1\/4 wide, and grooves take 3\/8 of it\.$/,
    ],
    [
      () => said({ grid: aGrid(2, 1) }, styledAs({ middleRail: length('1/2') })),
      /middle rail .* is 1\/2 wide, and grooves take 3\/4/,
    ],
    [() => said({}, styledAs({ stileWidth: length('2 1/64') })), /^The stile of style Plain .* printed as 2 1\/64\b/],
    [
      () => said({}, styledAs({ faceToGroove: length('5/8') })),
      /reaches 7\/8 behind the show face, and the frame is 3\/4 thick/,
    ],
    [() => said({}, styledAs({ tongueLength: length('1/2') })), /are 1\/2 long and bottom in grooves of 3\/8/],
    [
      () => said({}, styledAs({ grooveDepth: length('1/32'), tongueLength: length('0') })),
      /is 1\/32 deep, .* cut 1\/32 short/,
    ],
    [
      () => said({}, styledAs({ infill: glass('1/8'), grooveDepth: length('1/16'), tongueLength: length('0') })),
      /is 1\/16 deep, .* cut 1\/16 short/,
    ],
    [() => said({}, styledAs({ infill: ply('1/8') })), /^The panel of style Plain is 1\/8 thick in a groove of 1\/4/],
    [() => said({}, styledAs({ infill: ply('5/8') })), /^The panel of style Plain stands 1\/8 proud/],
    [() => said({}, styledAs({ infill: glass('5/8') })), /^Behind the glass of style Plain −1\/8 is left/],
    [
      () => said({}, { stock: [aBoardStock({ thickness: length('5/8') }), aSheetStock()] }),
      /^Style Plain wants parts 3\/4 thick from Maple 4\/4, which is 5\/8 thick/,
    ],
    [
      () => said({}, styledAs({ infill: { ...ply('1/2'), stock: 'Maple ply 1/2' } })),
      /^Style Plain reckons with a sheet 1\/2 thick, and Maple ply 1\/2 is 15\/32\+/,
    ],
    // 40 mm is 1.5748 in.
    [
      () => said({}, styledAs({ stileWidth: length('1 3/4') })),
      /wants 1 37\/64− of the stile of style Plain, and 1 3\/8 is solid/,
    ],
    // 1/2 in − 12.5 mm is 0.2 mm.
    [
      () => said({ style: 'Slab' }, { styles: [aSlabStyle({ thickness: length('1/2') })] }),
      /^Under a hinge cup 1\/64− of wood is left in style Slab, and 13\/64− should be/,
    ],
    [
      () =>
        said(
          {},
          {
            styles: [aFrameStyle({ infill: solid('Barn') })],
            stock: [aBoardStock(), aBoardStock({ name: 'Barn', species: 'barn oak' })],
          },
        ),
      /^The solid panels of style Plain are of Barn, and how "barn oak" moves/,
    ],
    [
      () => said({}, styledAs({ grooveWidth: length('0.004') })),
      /^The panel of style Plain wants a tongue for a groove of 0\+/,
    ],
    [
      () => said({}, { stock: [aBoardStock({ species: 'barn oak' }), aSheetStock()] }),
      /^Maple 4\/4 is of "barn oak", .* weighed with 750 kg/,
    ],
    [() => said({ style: 'Solid' }), /^The wood of style Solid reaches 5\.4 % moisture/],
    // 19 + 1 − 4 = 16 in of sight: cut 16 1/2, swells .0248 · 10 and shrinks as much as it dries: 10 in of 1000.
    [
      () => said({ style: 'Solid', width: length('19') }, moist(8, 1.5, 14)),
      /^The solid panel of B1, 16 1\/2 wide, swells 1\/4− and shrinks 17\/64\+: .* 7\/64\+ of it is left .* less than 1\/8\.$/,
    ],
    [
      () => said({ style: 'Solid', width: length('19') }, moist(14, 1, 20)),
      /^The solid panel of B1, 16 1\/2 wide, .* it stands 1\/64\+? out of its groove/,
    ],
  ])('%#', (answers, sentence) => {
    expect(
      answers().some(answer => sentence.test(answer)),
      answers().join('\n'),
    ).toBe(true);
  });
});
