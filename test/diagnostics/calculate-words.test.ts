import { describe, expect, it } from 'vitest';
import { problem } from '../../src/diagnostics/diagnostic.ts';
import type { Language } from '../../src/diagnostics/languages.ts';
import { type CalculateProblems, calculateSeverity } from '../../src/diagnostics/problems/calculate.ts';
import { say } from '../../src/diagnostics/words.ts';
import { kg } from '../../src/units/mass.ts';
import { printLength } from '../../src/units/print-length.ts';
import { length } from '../support/length.ts';

const size = (value: Parameters<typeof printLength>[0]): string =>
  printLength(value, { units: 'inch', increment: length('1/32') });

const door = 'B7/A';
const style = 'Plain';
const inches = (text: string) => length(text);

/** Facts as they could be, for every problem that the calculation knows. */
const FACTS: CalculateProblems = {
  'door-has-no-size': { door, width: inches('-1/4'), height: inches('30') },
  'rail-has-no-length': { door, shoulder: inches('-1') },
  'sight-has-no-width': { door, width: inches('0') },
  'sight-has-no-height': { door, row: 2, height: inches('0') },
  'panel-leaves-groove': {
    door,
    width: inches('24'),
    shrinks: inches('3/4'),
    swells: inches('1/2'),
    gap: inches('1/16'),
  },
  'panel-barely-held': {
    door,
    width: inches('24'),
    shrinks: inches('3/8'),
    swells: inches('1/2'),
    engagement: inches('1/16'),
    least: inches('1/8'),
  },
  'door-wants-middle-rail': { door, height: inches('72'), from: inches('60') },
  'door-beyond-hinge-table': { door, height: inches('101'), mass: kg(30) },
  'door-too-short-for-hinges': { door, height: inches('5'), hinges: 2 },
  'hinges-closer-than-width': { door, apart: inches('24'), width: inches('26') },
  'hinge-on-rail-joint': { door, fromTop: inches('20 1/2'), shiftMax: inches('2 1/2') },
  'pull-off-the-door': { door, fromLeft: inches('1'), fromBottom: inches('6') },
  'pull-in-groove': { door, fromEdge: inches('1 3/4'), solid: inches('1 5/8') },
  'overlay-wider-than-frame': { door, side: 'left', overlay: inches('2'), member: inches('1 1/2') },
  'reveal-too-small': {
    door,
    neighbour: 'B8',
    side: 'right',
    member: inches('1 1/2'),
    overlays: inches('1 3/8'),
    left: inches('1/8'),
    reveal: inches('1/4'),
  },
  'neighbour-ambiguous': { door, neighbour: 'B8' },
  'groove-deeper-than-member': { style, member: 'rail-top', width: inches('3/8'), grooves: inches('3/8') },
  'member-between-marks': { style, member: 'stile', width: inches('57 mm') },
  'groove-breaks-back': { style, reaches: inches('3/4'), frameThickness: inches('3/4') },
  'tongue-longer-than-groove': { style, tongue: inches('1/2'), groove: inches('3/8') },
  'panel-not-in-groove': { style, groove: inches('1/32'), allowance: inches('1/32') },
  'panel-tongue-too-thin': { style, groove: inches('1/4'), fit: inches('1/4') },
  'panel-loose-in-groove': { style, panel: inches('3/16'), groove: inches('1/4') },
  'panel-proud-of-back': { style, proud: inches('1/16') },
  'glass-without-stop': { style, left: inches('0') },
  'stock-too-thin': { style, stock: 'Maple 4/4', has: inches('5/8'), wants: inches('3/4') },
  'sheet-thickness-differs': { style, stock: 'Ply', has: inches('15/32'), wants: inches('1/2') },
  'cup-breaks-into-groove': { style, wants: inches('1 9/16'), has: inches('1 1/2') },
  'cup-breaks-through': { style, left: inches('1/8'), least: inches('3/16') },
  'movement-unknown': { style, stock: 'Barn oak', species: 'barn oak', known: 'red oak, white oak' },
  'moisture-beyond-table': { style, moisture: 5.36 },
  'species-unknown': { stock: 'Barn oak', species: 'barn oak', density: 750 },
  'barcode-clash': { one: 'B7.1-SL', other: 'B9.1-RT' },
};

describe.each<Language>(['en', 'es'])('what the calculation says in %s', language => {
  it('reads as written here', () => {
    const codes = Object.keys(FACTS) as (keyof CalculateProblems)[];
    const said = codes.map(code => {
      const found = problem(code, { kind: 'sheet', sheet: 'Cabinets' }, FACTS[code]);
      const { what, mend } = say(found, language, size);
      return `${found.severity} ${code}\n  ${what}\n  ${mend}`;
    });
    expect(said.join('\n')).toMatchSnapshot();
  });
});

it('knows a severity for each of its problems', () => {
  expect(Object.keys(calculateSeverity).sort()).toEqual(Object.keys(FACTS).sort());
});
