import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calculate/index.ts';
import { aJob, anOpening, aSource } from '../support/a-job.ts';
import { length } from '../support/length.ts';

/** Calculated inside of each test, where a mutant can be caught at it. */
const doorSetOf = (job = aJob()) => calculate(job).value;

describe('a job of every kind of opening', () => {
  it('is calculated without an error', () => {
    expect(calculate(aJob()).diagnostics.filter(found => found.severity !== 'note')).toEqual([]);
  });

  it('has a door for each leaf of each copy', () => {
    expect(doorSetOf().doors.map(door => door.code)).toEqual([
      ...['B1.1', 'B1.2', 'B2.A.1L', 'B2.A.1R', 'B2.Drawer.1', 'B3.1', 'B4.1L', 'B4.1R'],
      ...['W1.1', 'W2.1', 'W3.1', 'P1.1', 'P2.1', 'S1.1', 'E1.1'],
    ]);
  });

  it('lists each part once, under its door', () => {
    const doorSet = doorSetOf();
    const codes = doorSet.parts.map(part => part.code);
    expect(new Set(codes).size).toBe(codes.length);
    expect(doorSet.doors.flatMap(door => door.parts)).toEqual(codes);
    expect(doorSet.parts.every(part => part.code.startsWith(`${part.door}-`))).toBe(true);
  });

  it('is plain data', () => {
    const doorSet = doorSetOf();
    expect(JSON.parse(JSON.stringify(doorSet, keepUndefined), dropUndefined)).toEqual(doorSet);
  });
});

describe('codes and symbols', () => {
  it('stay when rows are sorted or put in', () => {
    const openings = [anOpening({ cabinet: 'New', from: aSource('Cabinets', 2) }), ...[...aJob().openings].reverse()];
    const again = calculate(aJob({ openings })).value;
    const codes = new Map(again.parts.map(part => [part.code, part]));
    for (const part of doorSetOf().parts) expect(codes.get(part.code)).toEqual(part);
  });

  it('of an edited opening stay, so that what was scanned can be compared', () => {
    const wider = aJob().openings.map(opening =>
      opening.cabinet === 'B3' ? { ...opening, width: length('15') } : opening,
    );
    const codes = calculate(aJob({ openings: wider })).value.parts.map(part => part.barcode);
    expect(codes).toEqual(doorSetOf().parts.map(part => part.barcode));
  });
});

describe('workings', () => {
  const ofDoor = (code: string) =>
    doorSetOf()
      .doors.find(door => door.code === code)
      ?.workings.map(working => working.of);
  const ofPart = (code: string) =>
    doorSetOf()
      .parts.find(part => part.code === code)
      ?.workings.map(working => working.of);
  const common = [
    'sight-width',
    'sight-height',
    'back-projection',
    'edge-allowance',
    'diagonal',
    'door-mass',
    'finish-area',
  ];
  const hung = ['hinge-count', 'hinge-place', 'hinge-place'];

  it.each([
    ['B1.1', ['overlay-right', 'overlay-bottom', ...common, ...hung, 'hinge-edge'], 'hinged on the left'],
    ['B2.A.1L', ['gap-between', 'overlay-bottom', ...common, ...hung, 'hinge-edge'], 'a pair'],
    ['B3.1', ['clearance-left', 'clearance-bottom', ...common, ...hung, 'hinge-edge'], 'inset, hinged on the right'],
    [
      'W1.1',
      ['overlay-left', 'overlay-bottom', 'diagonal', 'door-mass', 'finish-area', ...hung, 'hinge-edge'],
      'a slab',
    ],
    [
      'P1.1',
      [
        ...['overlay-right', 'overlay-bottom', 'sight-width', 'sight-height', 'sight-height', 'sight-height'],
        ...[...common.slice(2), ...hung, 'hinge-place', 'hinge-place', 'hinge-place', 'hinge-edge'],
      ],
      'rows of unequal heights',
    ],
    [
      'P2.1',
      ['overlay-right', 'overlay-bottom', ...common, ...hung, 'hinge-place', 'hinge-moved', 'hinge-edge'],
      'a hinge that was moved; rows and columns that share are worked out once',
    ],
    ['S1.1', ['overlay-right', 'overlay-bottom', ...common], 'hangs on nothing'],
  ])('of %s: %j (%s)', (code, expected) => {
    expect(ofDoor(code)).toEqual(expected);
  });

  it.each([
    ['B1.1-SL', ['mass']],
    ['B1.1-P', ['rabbet-depth', 'rabbet-width', 'panel-tongue', 'mass']],
    ['W2.1-G', ['mass']],
    ['W2.1-GST', ['stop-thickness', 'mass']],
    [
      'W3.1-P',
      [
        ...['moisture-made', 'moisture-driest', 'moisture-wettest', 'swell-room', 'panel-swells', 'panel-shrinks'],
        ...['engagement', 'clearance', 'rabbet-depth', 'rabbet-width', 'panel-tongue'],
        ...['blank-length', 'blank-width', 'strips', 'strip-width', 'mass'],
      ],
    ],
  ])('of %s: %j', (code, expected) => {
    expect(ofPart(code)).toEqual(expected);
  });

  it('have the surface to finish: both faces and four edges', () => {
    const door = doorSetOf().doors.find(each => each.code === 'B1.1');
    // 2 · 15.375 · 31 + 2 · 46.375 · 0.75 = 1022.8125 in².
    expect(door?.finishArea).toBeCloseTo(1022.8125 * 0.0254 ** 2, 9);
  });
});

describe('what a door is told apart by', () => {
  const named = (code: string) => doorSetOf().doors.find(door => door.code === code);
  it.each([
    ['B1.2', { copy: 2, leaf: 'single', front: 'door', hingeSide: 'left', mounting: 'overlay', style: 'Plain' }],
    [
      'B2.A.1R',
      { label: 'A', leaf: 'right', hingeSide: 'right', opening: { width: length('29 5/16'), height: length('30') } },
    ],
    ['B3.1', { mounting: 'inset', hingeSide: 'right', edgeEasing: length('1/8'), thickness: length('3/4') }],
    ['W1.1', { build: 'slab', joint: undefined, sights: [], edgeEasing: length('1/16'), thickness: length('23/32') }],
    ['S1.1', { front: 'false-front', hingeSide: undefined, hinges: [], pull: undefined }],
  ])('%s: %j', (code, expected) => {
    expect(named(code)).toMatchObject(expected);
  });

  it('diagonals of a door of 24 in may differ by 1/32 in, of a higher one by 1/16', () => {
    const tolerance = (height: string) =>
      calculate(aJob({ openings: [anOpening({ height: length(height) })] })).value.doors[0]?.diagonal.tolerance;
    expect([tolerance('23'), tolerance('23 1/32')]).toEqual([length('1/32'), length('1/16')]);
  });

  it('the section of its joint is all that the drawing needs', () => {
    expect(named('B1.1')?.joint).toEqual({
      frameThickness: length('3/4'),
      grooveDepth: length('3/8'),
      grooveWidth: length('1/4'),
      faceToGroove: length('1/4'),
      tongueLength: length('3/8'),
      stileWidth: length('2'),
      infillKind: 'plywood',
      infillThickness: length('0.47'),
      rabbet: { depth: length('0.224'), width: length('3/8'), tongue: length('0.246') },
      // 0.25 + 0.47 − 0.75.
      backProjection: length('-0.03'),
      edgeAllowance: length('1/32'),
    });
    expect(named('W2.1')?.joint).toMatchObject({
      infillKind: 'glass',
      infillThickness: length('1/8'),
      rabbet: undefined,
      backProjection: length('-3/8'),
      edgeAllowance: length('1/16'),
    });
    expect(named('W3.1')?.joint).toMatchObject({ infillKind: 'solid', frameThickness: length('13/16') });
  });

  it('a slab is seen all over, and has no clear openings', () => {
    const slab = doorSetOf().parts.find(part => part.code === 'W1.1-SLAB');
    expect(slab?.place).toEqual({ left: 0, bottom: 0, width: length('15 3/8'), height: length('31') });
    expect(named('W1.1')?.sights).toEqual([]);
  });

  it('clear openings are numbered from the lower left, each with what fills it', () => {
    expect(named('P2.1')?.sights.map(({ row, column, infill }) => [row, column, infill])).toEqual([
      [1, 1, 'P2.1-P1A'],
      [1, 2, 'P2.1-P1B'],
      [2, 1, 'P2.1-P2A'],
      [2, 2, 'P2.1-P2B'],
    ]);
    expect(named('W2.1')?.sights.map(({ infill }) => infill)).toEqual(['W2.1-G']);
  });

  it('parts say how they are made', () => {
    const { parts } = calculate(aJob()).value;
    const make = (code: string) => parts.find(part => part.code === code)?.make;
    expect(make('P2.1-RM1')).toEqual({ kind: 'rail', groovedEdges: 2 });
    expect(make('P2.1-RT')).toEqual({ kind: 'rail', groovedEdges: 1 });
    expect(make('P2.1-SL')).toEqual({ kind: 'stile', groovedEdges: 1, horn: 0 });
    expect(make('P2.1-SM1A')).toEqual({ kind: 'middle-stile', groovedEdges: 2 });
    expect(make('W2.1-G')).toEqual({ kind: 'glass' });
    expect(make('W2.1-GSL')).toEqual({ kind: 'glass-stop' });
    expect(make('W1.1-SLAB')).toEqual({ kind: 'slab' });
  });

  it('a stile without horns is as long as the door, and says no more', () => {
    const { parts } = calculate(aJob()).value;
    expect(parts.find(part => part.code === 'B1.1-SL')?.length).toMatchObject({
      terms: [{ count: 1, symbol: 'H' }],
      given: { H: length('31') },
    });
  });

  it('strips that share a blank without a rest are not made wider: 12 1/2 / 4 = 3 1/8, + 1/4', () => {
    const { parts } = calculate(aJob()).value;
    expect(parts.find(part => part.code === 'W3.1-P')?.make).toMatchObject({
      glueUp: { strips: 4, stripWidth: length('3 3/8'), blankWidth: length('12 1/2'), blankLength: length('33 3/16') },
      movement: { species: 'black cherry', cut: 'flat-sawn', made: 8 },
    });
  });

  it('stops lie in their rabbet, round the pane', () => {
    const { parts } = calculate(aJob()).value;
    const place = (code: string) => parts.find(part => part.code === code)?.place;
    const at = (left: string, bottom: string, width: string, height: string) => ({
      left: length(left),
      bottom: length(bottom),
      width: length(width),
      height: length(height),
    });
    expect(place('W2.1-GST')).toEqual(at('1 5/8', '35', '12 1/8', '3/8'));
    expect(place('W2.1-GSB')).toEqual(at('1 5/8', '1 5/8', '12 1/8', '3/8'));
    expect(place('W2.1-GSL')).toEqual(at('1 5/8', '2', '3/8', '33'));
    expect(place('W2.1-GSR')).toEqual(at('13 3/8', '2', '3/8', '33'));
  });
});

describe('two codes of one symbol', () => {
  // Found by trying 900,000 names: these two have the same digest in job J-101.
  const slab = (cabinet: string, row: number) =>
    anOpening({ cabinet, style: 'Slab', from: aSource('Cabinets', row), hanging: { kind: 'fixed' } });
  it('are reported, and both are named', () => {
    const openings = [slab('C10958', 2), slab('C517393', 3), slab('C1', 4)];
    expect(calculate(aJob({ openings })).diagnostics).toEqual([
      {
        severity: 'error',
        code: 'barcode-clash',
        at: { kind: 'part', code: 'C517393.1-SLAB' },
        also: [],
        facts: { one: 'C10958.1-SLAB', other: 'C517393.1-SLAB' },
      },
    ]);
  });

  it('are none in another job', () => {
    const openings = [slab('C10958', 2), slab('C517393', 3)];
    expect(calculate(aJob({ number: 'J-102', openings })).diagnostics).toEqual([]);
  });
});

/** JSON has no undefined: it is spelt so that a round trip shows that there is nothing else that JSON lacks. */
const keepUndefined = (_key: string, value: unknown): unknown => (value === undefined ? UNDEFINED : value);
const dropUndefined = (_key: string, value: unknown): unknown => (value === UNDEFINED ? undefined : value);
const UNDEFINED = '\u0000undefined';
