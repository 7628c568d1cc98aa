import { describe, expect, it } from 'vitest';
import { hangingOf, hingeCount } from '../../src/calculate/hinges.ts';
import { pullOf } from '../../src/calculate/pull.ts';
import type { Opening } from '../../src/import/job.ts';
import { shopDefaults } from '../../src/trade/shop-defaults.ts';
import { nm } from '../../src/units/length.ts';
import { fromPounds } from '../../src/units/mass.ts';
import { printLength } from '../../src/units/print-length.ts';
import { anOpening } from '../support/a-job.ts';
import { length } from '../support/length.ts';

const shop = shopDefaults('inch', 'letter');
const print = (value: Parameters<typeof printLength>[0]) =>
  printLength(value, { units: 'inch', increment: length('1/32') });

/** The hinges of a light door of so many inches, with middle rails of which the bottom and the top edge are given. */
function hinges(height: string, rails: readonly (readonly [bottom: string, top: string])[] = [], changes = {}) {
  const places = rails.map(([bottom, top]) => ({
    left: nm(0),
    bottom: length(bottom),
    width: length('10'),
    height: nm(length(top) - length(bottom)),
  }));
  const leaf = { height: length(height), mass: fromPounds(1) };
  return hangingOf(leaf, places, { ...shop, hinges: { ...shop.hinges, ...changes } }).hinges;
}

describe('places of hinges, from the top', () => {
  it.each([
    ['31', '3 1/2, 27 1/2', 'two, at their set distance from the ends'],
    ['14', '3 1/2, 10 1/2', 'a quarter of 14 in is 3 1/2 in'],
    ['13', '3 1/4, 9 3/4', 'lower: a quarter of the height'],
    ['10 1/32', '2 1/2, 7 17/32', 'a quarter of 10 1/32 in, down to 1/32 in'],
    ['50', '3 1/2, 25, 46 1/2', 'three: the middle one in the middle'],
    ['50 1/32', '3 1/2, 25, 46 17/32', 'half of 50 1/32 in, down to 1/32 in'],
    ['70', '3 1/2, 24 1/2, 45 1/2, 66 1/2', 'four: 63 / 3 = 21 in apart'],
    ['71', '3 1/2, 24 13/16, 46 5/32, 67 1/2', '64 / 3 = 21.333: each place is rounded by itself'],
    ['90', '3 1/2, 24 1/4, 45, 65 3/4, 86 1/2', 'five: 83 / 4 = 20 3/4 in apart'],
  ])('%s in: %s (%s)', (height, expected) => {
    expect(
      hinges(height)
        .map(hinge => print(hinge.fromTop))
        .join(', '),
    ).toBe(expected);
  });

  it('are bored alike, from the hinge edge', () => {
    expect(hinges('31')[0]).toEqual({
      fromTop: length('3 1/2'),
      fromEdge: length('21.5 mm'),
      cupDiameter: length('35 mm'),
      cupDepth: length('12.5 mm'),
      shifted: 0,
    });
  });
});

// The plate reaches 32 mm = 1.26 in up and down.
describe('a hinge is moved off the joint of a middle rail', () => {
  const middle = (rails: readonly (readonly [string, string])[], changes = {}) =>
    hinges('50', rails, changes).map(hinge => `${print(hinge.fromTop)} ${print(hinge.shifted)}`)[1];
  it.each([
    // From the top the rail lies at 24–26; 24 − 1.26 = 22.74, down to 22 23/32.
    ['centred on it: up, since the upper hinges carry the door', [['24', '26']], '22 23/32 −2 9/32'],
    // 24 1/2 – 26 1/2 from the top: up to 23.24, down to 23 7/32 (1 25/32) is nearer than down 27.76.
    ['a rail a little lower: up', [['23 1/2', '25 1/2']], '23 7/32 −1 25/32'],
    // 23 1/2 – 25 1/2 from the top: 25 1/2 + 1.26 = 26.76, up to 26 25/32.
    ['a rail a little higher: down', [['24 1/2', '26 1/2']], '26 25/32 1 25/32'],
    // 635 mm is 25 in; 667 − 635 = 635 − 603 = 32.
    ['a joint that it only touches from above stays', [['560 mm', '603 mm']], '25 0'],
    ['a joint that it only touches from below stays', [['667 mm', '700 mm']], '25 0'],
    ['a joint a hair nearer does not', [['560 mm', '603.1 mm']], '24 31/32 −1/32'],
    ['a rail beside it stays', [['27', '29']], '25 0'],
    // The plate of 2.52 in lies on a rail of 4 in without covering a joint.
    ['a rail wider than the plate carries it', [['23', '27']], '25 0'],
    // Up from 24 to 22 23/32 is barred by the joint at 22; down 26 + 1.26 is free.
    [
      'two rails: where the one way is barred, the other',
      [
        ['24', '26'],
        ['27', '29'],
      ],
      '27 9/32 2 9/32',
    ],
  ] as const)('%s', (_why, rails, expected) => {
    expect(middle(rails)).toBe(expected);
  });

  it('and no farther than the shop allows', () => {
    expect(middle([['24', '26']], { shiftMax: length('2 1/4') })).toBe('25 0');
    expect(middle([['24', '26']], { shiftMax: length('2 9/32') })).toBe('22 23/32 −2 9/32');
  });

  it('to the nearer of two clear places, though the farther one was met first', () => {
    // 23 1/2 – 25 1/2 from the top: up to 22 7/32 is 2 25/32, down to 26 25/32 is 1 25/32.
    expect(middle([['24 1/2', '26 1/2']], { shiftMax: length('4') })).toBe('26 25/32 1 25/32');
  });

  it('towards the top of two that are as near, though the lower one was met first', () => {
    // From the top 25 1/2 – 27 and 23 – 24 1/2: clear from 21 23/32 up and from 28 9/32 down.
    expect(
      middle(
        [
          ['23', '24 1/2'],
          ['25 1/2', '27'],
        ],
        { shiftMax: length('4') },
      ),
    ).toBe('21 23/32 −3 9/32');
  });

  it('not into the plate of the one above', () => {
    // Hinges at 2 1/4 and 6 3/4 of 9 in; the rail at 5 3/4 – 7 3/4 from the top: 4 15/32 is 2.22 in below the upper one.
    const places = hinges('9', [['1 1/4', '3 1/4']], { shiftMax: length('9') });
    expect(places.map(hinge => print(hinge.fromTop))).toEqual(['2 1/4', '6 3/4']);
    // Of 10 in: hinges at 2 1/2 and 7 1/2, the rail at 6 1/2 – 8 1/2: 5 7/32 is 2.72 in below, enough for two plates.
    const roomier = hinges('10', [['1 1/2', '3 1/2']], { shiftMax: length('9') });
    expect(roomier.map(hinge => print(hinge.fromTop))).toEqual(['2 1/2', '5 7/32']);
  });

  it('and not into the plates of its neighbours, nor off the door', () => {
    // Ends at 2 1/2 and 7 1/2 of 10 in; the rail at 1 1/2 – 3 1/2 from the top: up to 0.24 would leave the door.
    const [top] = hinges('10', [['6 1/2', '8 1/2']], { shiftMax: length('9') });
    // 3 1/2 + 1.26 = 4.76, up to 4 25/32: 2.72 in above the lower hinge, enough for two plates of 1.26.
    expect(print(top?.fromTop ?? nm(0))).toBe('4 25/32');
    const [barred] = hinges('9', [['5 1/2', '7 1/2']], { shiftMax: length('9') });
    // 3 1/2 + 1.26 = 4.76; the lower hinge stands at 6 3/4, 1.99 in below: it stays where it was.
    expect(print(barred?.fromTop ?? nm(0))).toBe('2 1/4');
  });

  it('keeps off the one above as that was moved', () => {
    const rails = [
      ['34', '36'],
      ['18', '20'],
    ] as const;
    const places = hinges('60', rails, { counts: [{ hinges: 4, heightUpTo: length('60'), massUpTo: fromPounds(9) }] });
    // 53 / 3 = 17.667: wished 3 1/2, 21 5/32, 38 13/16, 56 1/2. Rails from the top 24–26 and 40–42.
    expect(places.map(hinge => print(hinge.fromTop))).toEqual(['3 1/2', '21 5/32', '38 23/32', '56 1/2']);
  });
});

describe('number of hinges', () => {
  it('is two at least, whatever the table says', () => {
    const leaf = { height: length('20'), mass: fromPounds(1) };
    expect(hingeCount(leaf, []).value.value).toBe(2);
    expect(hingeCount(leaf, [{ hinges: 1, heightUpTo: length('30'), massUpTo: fromPounds(5) }]).value.value).toBe(2);
  });

  it('goes up beyond a step, not at it', () => {
    const at = (pounds: number) => hingeCount({ height: length('20'), mass: fromPounds(pounds) }, shop.hinges.counts);
    expect([15, 30, 45].map(pounds => at(pounds).value.value)).toEqual([2, 3, 4]);
  });

  it('is the most of the table where a door is beyond it', () => {
    const leaf = { height: length('120'), mass: fromPounds(1) };
    expect(hingeCount(leaf, shop.hinges.counts).value.value).toBe(5);
    expect(hingeCount({ ...leaf, height: length('20'), mass: fromPounds(99) }, shop.hinges.counts).value.value).toBe(5);
  });

  it('says what height and mass ask for', () => {
    const count = hingeCount({ height: length('50'), mass: fromPounds(40) }, shop.hinges.counts);
    expect([count.formula, ...count.inputs.map(({ symbol }) => `${symbol} ${count.given[symbol]}`)]).toEqual([
      'max(n(H), n(m))',
      `H ${length('50')}`,
      `m ${fromPounds(40)}`,
      'n(H) 3',
      'n(m) 4',
    ]);
  });
});

type End = 'top' | 'bottom' | 'middle';

describe('holes of a pull', () => {
  const size = { width: length('15'), height: length('31') };
  const holes = (opening: Partial<Opening>, hingeSide: 'left' | 'right' | undefined, spacing = '3') =>
    pullOf(
      anOpening(opening),
      { ...size, hingeSide },
      {
        ...shop,
        pulls: { ...shop.pulls, spacing: length(spacing) },
      },
    );
  const at = (pull: ReturnType<typeof pullOf>) =>
    pull?.holes.map(({ fromLeft, fromBottom }) => `${print(fromLeft)}, ${print(fromBottom)}`);

  it.each<[End, 'left' | 'right', readonly string[], string]>([
    ['bottom', 'left', ['14, 2 1/2', '14, 5 1/2'], 'from the lower right corner, up'],
    ['bottom', 'right', ['1, 2 1/2', '1, 5 1/2'], 'from the lower left corner, up'],
    ['top', 'left', ['14, 28 1/2', '14, 25 1/2'], 'from the upper right corner, down'],
    ['top', 'right', ['1, 28 1/2', '1, 25 1/2'], 'from the upper left corner, down'],
    ['middle', 'left', ['14, 14', '14, 17'], '(31 − 3) / 2'],
  ])('a door, pull at its %s, hinged %s: %j (%s)', (pull, side, expected) => {
    const bored = holes({ pull }, side);
    expect(at(bored)).toEqual(expected);
    expect(bored).toMatchObject({ end: pull, runs: 'upright', diameter: length('5 mm') });
  });

  it.each<[Partial<Opening>, string, readonly string[], string]>([
    [{ kind: 'drawer-front' }, '3', ['6, 15 1/2', '9, 15 1/2'], '(15 − 3) / 2; half of 31'],
    [{ kind: 'drawer-front' }, '0', ['7 1/2, 15 1/2'], 'a knob has one hole'],
    [{ kind: 'false-front', pull: 'middle' }, '3', ['6, 15 1/2', '9, 15 1/2'], 'where it is asked for'],
    [{ kind: 'drawer-front', pull: 'top' }, '3', ['6, 15 1/2', '9, 15 1/2'], 'what pulls out is pulled at its middle'],
  ])('%j with %s in between the holes: %j (%s)', (opening, spacing, expected) => {
    const bored = holes(opening, undefined, spacing);
    expect(at(bored)).toEqual(expected);
    expect(bored).toMatchObject({ end: 'middle', runs: 'level', diameter: length('5 mm') });
  });

  it.each<[Partial<Opening>, 'left' | undefined, string]>([
    [{}, 'left', 'a door whose end is not named'],
    [{ pull: 'none' }, 'left', 'a door that wants none'],
    [{ kind: 'drawer-front', pull: 'none' }, undefined, 'a drawer front that wants none'],
    [{ kind: 'false-front' }, undefined, 'a false front'],
    [{ kind: 'end-panel' }, undefined, 'an end panel'],
  ])('none: %j (%s, %s)', (opening, side) => {
    expect(holes(opening, side)).toBeUndefined();
  });
});
