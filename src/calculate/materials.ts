import { type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import { cellOf } from '../diagnostics/place.ts';
import type { Job, Stock, Style } from '../import/job.ts';
import { GRAVITY_MOISTURE, PLYWOOD_DENSITY, UNKNOWN_WOOD_DENSITY, WATER_DENSITY } from '../trade/materials.ts';
import { findSpecies, type Species } from '../trade/species.ts';
import type { Density } from '../units/mass.ts';

/** What the stock of the job is made of, by its name in the workbook. */
export type Materials = {
  readonly densityOf: (stock: string) => Density;
  readonly speciesOf: (stock: string) => Species | undefined;
  /** As the workbook writes it. */
  readonly speciesNameOf: (stock: string) => string;
};

export function materialsOf(job: Job): Materials {
  const stocks = new Map(job.stock.map(stock => [stock.name, stock]));
  const densities = new Map(job.stock.map(stock => [stock.name, density(stock)]));
  return {
    densityOf: name => densities.get(name) ?? UNKNOWN_WOOD_DENSITY,
    speciesOf: name => findSpecies(stocks.get(name)?.species ?? ''),
    speciesNameOf: name => stocks.get(name)?.species ?? '',
  };
}

/** The workbook's own figure first; then the species' for boards, the usual one for sheets. */
function density(stock: Stock): Density {
  if (stock.density !== undefined) return stock.density;
  if (stock.kind === 'sheet') return PLYWOOD_DENSITY;
  const species = findSpecies(stock.species);
  return species === undefined ? UNKNOWN_WOOD_DENSITY : woodDensity(species.gravity, GRAVITY_MOISTURE);
}

/**
 * Density in kg/m³ at a moisture content in percent, from the specific gravity on oven-dry mass and volume at that
 * moisture: USDA Forest Products Laboratory, Wood Handbook (FPL-GTR-190, 2010), ch. 4.
 */
export const woodDensity = (gravity: number, moisture: number): Density =>
  WATER_DENSITY * gravity * (1 + moisture / 100);

/** Boards whose species the tables do not have: their doors are weighed with a guess, and that is said once. */
export const unknownSpecies = (job: Job, styles: readonly Style[]): readonly Diagnostic[] =>
  job.stock
    .filter(stock => stock.kind === 'board' && stock.density === undefined && findSpecies(stock.species) === undefined)
    .filter(stock => styles.some(style => stocksOf(style).includes(stock.name)))
    .map(stock =>
      problem('species-unknown', cellOf(stock.from, 'species'), {
        stock: stock.name,
        species: stock.species,
        density: UNKNOWN_WOOD_DENSITY,
      }),
    );

const stocksOf = (style: Style): readonly string[] => {
  if (style.build === 'slab') return [style.stock];
  return style.infill.kind === 'glass' ? [style.frameStock] : [style.frameStock, style.infill.stock];
};
