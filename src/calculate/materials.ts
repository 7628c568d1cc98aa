import { type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import { cellOf } from '../diagnostics/place.ts';
import type { Job, Style } from '../import/job.ts';
import { densityOf, UNKNOWN_WOOD_DENSITY } from '../trade/materials.ts';
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
  const densities = new Map(job.stock.map(stock => [stock.name, densityOf(stock)]));
  return {
    densityOf: name => densities.get(name) ?? UNKNOWN_WOOD_DENSITY,
    speciesOf: name => findSpecies(stocks.get(name)?.species ?? ''),
    speciesNameOf: name => stocks.get(name)?.species ?? '',
  };
}

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
