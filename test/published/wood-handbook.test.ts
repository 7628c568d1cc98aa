import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calculate/index.ts';
import { equilibriumMoisture } from '../../src/calculate/moisture.ts';
import type { GrainCut } from '../../src/import/job.ts';
import { densityOf, woodDensity } from '../../src/trade/materials.ts';
import { shopDefaults } from '../../src/trade/shop-defaults.ts';
import { findSpecies, SPECIES } from '../../src/trade/species.ts';
import { INCH, nm, plus, times } from '../../src/units/length.ts';
import { POUND } from '../../src/units/mass.ts';
import { aBoardStock, aFrameStyle, aJob, anOpening } from '../support/a-job.ts';
import { length } from '../support/length.ts';

/**
 * USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010), tables 4–2, 4–3, 5–3b and 13–5. Each row of the
 * fixture tells whether it was read in a copy of the source or is from memory.
 */
type Handbook = {
  readonly humidity: readonly number[];
  readonly equilibriumMoisture: readonly { readonly fahrenheit: number; readonly moisture: readonly number[] }[];
  readonly movement: readonly { readonly species: string; readonly radial: number; readonly tangential: number }[];
  readonly gravity: readonly {
    readonly species: string;
    readonly gravity: number;
    readonly kgPerCubicMetre: number;
    readonly poundsPerCubicFoot: number;
  }[];
  readonly shrinkage: readonly { readonly species: string; readonly radial: number; readonly tangential: number }[];
};

const handbook = JSON.parse(
  readFileSync(new URL('../../fixtures/published/wood-handbook.json', import.meta.url), 'utf8'),
) as Handbook;

const moisture = (temperatureC: number, humidity: number): number =>
  equilibriumMoisture('moisture-made', { temperatureC, humidity }).value.value;

describe('equilibrium moisture content, eq. 4–5 in °C, against table 4–2', () => {
  it.each(handbook.equilibriumMoisture)('at $fahrenheit °F', ({ fahrenheit, moisture: row }) => {
    for (const [at, humidity] of handbook.humidity.entries()) {
      const difference = moisture(((fahrenheit - 32) * 5) / 9, humidity) - (row[at] ?? Number.NaN);
      // The table is the equation rounded to 0.1 % (± 0.05), and its °F rows are met by the °C constants to 0.02 more.
      expect(Math.abs(difference), `${humidity} %`).toBeLessThan(0.07);
    }
  });

  it.each([
    [20, 50, 9.271141],
    [20, 65, 11.996267],
  ])('at %i °C and %i %% is %f, worked from the same equation elsewhere', (temperature, humidity, expected) => {
    expect(moisture(temperature, humidity)).toBeCloseTo(expected, 5);
  });

  it('names all that goes into it', () => {
    const { inputs, given } = equilibriumMoisture('moisture-made', { temperatureC: 20, humidity: 50 });
    expect(inputs.map(({ symbol }) => symbol)).toEqual(['θ', 'W', 'K', 'h', 'K1', 'K2']);
    expect([inputs[0], given['θ']]).toEqual([{ symbol: 'θ', unit: '°C' }, 20]);
  });

  it.each([
    [70, 30, 6.1717],
    [70, 50, 9.2463],
    [70, 65, 11.9638],
    [140, 55, 8.3775],
  ])('at %i °F and %i %% is %f by the constants for °F, within 0.03', (fahrenheit, humidity, expected) => {
    expect(Math.abs(moisture(((fahrenheit - 32) * 5) / 9, humidity) - expected)).toBeLessThan(0.03);
  });
});

/** The handbook's names as the table of species has them. */
const named = (name: string) => findSpecies(name.replace(/ \(.*\)|, "commercial" group|shagbark \/ mockernut /g, ''));

describe('species', () => {
  it.each(handbook.movement)('$species moves as in table 13–5', ({ species, radial, tangential }) => {
    expect(named(species)).toMatchObject({ radial, tangential });
  });

  it.each(handbook.gravity)('$species weighs as in table 5–3b', ({ species, gravity, ...density }) => {
    expect(named(species)).toMatchObject({ gravity });
    // Printed to 0.1 kg/m³ and 0.01 lb/ft³; the pounds are reckoned with water of 62.43 lb/ft³.
    expect(Math.abs(woodDensity(gravity, 12) - density.kgPerCubicMetre)).toBeLessThan(0.06);
    expect(Math.abs((woodDensity(gravity, 12) * 0.3048 ** 3) / POUND - density.poundsPerCubicFoot)).toBeLessThan(0.01);
  });

  it('are all in both tables', () => {
    expect(SPECIES).toHaveLength(handbook.movement.length);
    expect(new Set(handbook.movement.map(({ species }) => named(species)?.name)).size).toBe(SPECIES.length);
    expect(new Set(handbook.gravity.map(({ species }) => named(species)?.name)).size).toBe(SPECIES.length);
  });

  // The oaks of table 13–5 are commercial groups and hickory is one too: they do not follow from a single species.
  const single = handbook.shrinkage.filter(({ species }) => !/oak|hickory/.test(species));
  it.each(single)('$species: coefficients follow from the total shrinkage of table 4–3', row => {
    const known = named(row.species);
    // From 30 % to oven-dry, linear, held against the size at 10 %: C = (S / 30) / (1 − S · 20 / 30).
    const coefficient = (percent: number) => percent / 100 / 30 / (1 - ((percent / 100) * 20) / 30);
    expect(known?.radial).toBeCloseTo(coefficient(row.radial), 4);
    expect(known?.tangential).toBeCloseTo(coefficient(row.tangential), 4);
  });

  it('0.40 at 12 % is 448 kg/m³: a published example', () => {
    expect(woodDensity(0.4, 12)).toBeCloseTo(448, 9);
  });

  it('a figure of the workbook comes first; sheets and unknown boards have their usual one', () => {
    const board = { kind: 'board', species: 'sugar maple', density: undefined } as const;
    expect(densityOf(board)).toBeCloseTo(705.6, 9);
    expect(densityOf({ ...board, density: 690 })).toBe(690);
    expect(densityOf({ ...board, kind: 'sheet' })).toBe(600);
    expect(densityOf({ ...board, species: 'barn oak' })).toBe(750);
  });

  it.each([
    ['Hard Maple', 'sugar maple'],
    ['maple, hard', 'sugar maple'],
    ['hard-maple', 'sugar maple'],
    ['CHERRY', 'black cherry'],
    ['tulip poplar', 'yellow poplar'],
    ['beech', 'American beech'],
    ['plastic', undefined],
    ['', undefined],
  ])('"%s" is %s', (typed, name) => {
    expect(findSpecies(typed)?.name).toBe(name);
  });
});

/** What a solid panel of so much width swells from 6 to 12 %, in inches: a frame is sought that takes such a panel. */
function swelling(width: string, species: string, cut: GrainCut = 'flat-sawn'): number {
  const shop = shopDefaults('inch', 'letter');
  const moist = { ...shop.climate, shopMoisture: 6, driestMoisture: 6, wettestMoisture: 12 };
  const infill = { kind: 'solid', stock: 'Board', thickness: length('1/4'), cut } as const;
  // 1 in of overlays, 4 in of stiles, 3/4 in of grooves: the opening is 2 1/4 in wider than the panel, and a little more.
  for (let more = 0; more < 24; more += 1) {
    const opening = anOpening({
      width: plus(length(width), length('2 1/4'), times(more, length('1/32'))),
      height: length('20'),
    });
    const { value } = calculate(
      aJob({
        openings: [{ ...opening, hanging: { kind: 'fixed' } }],
        styles: [aFrameStyle({ infill, frameStock: 'Board' })],
        stock: [aBoardStock({ name: 'Board', species })],
        shop: { ...shop, climate: moist },
      }),
    );
    const panel = value.parts.find(part => part.role === 'panel');
    if (panel?.make.kind === 'solid-panel' && panel.width.value === length(width))
      return panel.make.movement.swells / INCH;
  }
  return Number.NaN;
}

describe('movement, eq. 13–2: ΔD = D · C · ΔM', () => {
  // Worked from table 13–5 and eq. 13–2, 12 in flat-sawn from 6 to 12 %, by two programs.
  it.each([
    ['sugar maple', 0.25416],
    ['red oak', 0.26568],
    ['black cherry', 0.17856],
    ['black walnut', 0.19728],
    ['yellow poplar', 0.20808],
  ])('12 in of %s swell %f in', (species, expected) => {
    expect(swelling('12', species)).toBeCloseTo(expected, 6);
  });

  it('quarter-sawn maple moves by its radial coefficient: 12 · .00165 · 6', () => {
    expect(swelling('12', 'sugar maple', 'quarter-sawn')).toBeCloseTo(0.1188, 6);
  });

  it('8 in of red alder: 0.1248 in a chart of a woodworking magazine (2021), that rounds .00256 to .0026', () => {
    expect(Math.abs(swelling('8', 'red alder') - 0.1248)).toBeLessThan(8 * 6 * 0.00005);
  });

  it('takes the moisture from the humidity where that is given', () => {
    const shop = shopDefaults('inch', 'letter');
    const climate = { ...shop.climate, temperatureC: 20, shopHumidity: 50, driestHumidity: 50, wettestHumidity: 65 };
    const { value } = calculate(
      aJob({ openings: [anOpening({ style: 'Solid' })], shop: { ...shop, climate: { ...climate, shopMoisture: 1 } } }),
    );
    const panel = value.parts.find(part => part.role === 'panel');
    expect(panel?.make).toMatchObject({ movement: { shrinks: nm(0) } });
    const { made, driest, wettest } =
      panel?.make.kind === 'solid-panel' ? panel.make.movement : { made: 0, driest: 0, wettest: 0 };
    expect([made, driest, wettest].map(percent => percent.toFixed(6))).toEqual(['9.271141', '9.271141', '11.996267']);
  });
});
