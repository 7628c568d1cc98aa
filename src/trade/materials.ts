import type { Density } from '../units/mass.ts';
import { findSpecies } from './species.ts';

/** Soda-lime float glass: 2 500 kg/m³, the figure of EN 572-1; from memory. */
export const GLASS_DENSITY: Density = 2500;

/** Hardwood plywood, where Stock does not give its density; common practice. */
const PLYWOOD_DENSITY: Density = 600;

/** A board of a species that the tables do not have, taken to be as heavy as the heavier hardwoods; common practice. */
export const UNKNOWN_WOOD_DENSITY: Density = 750;

/** Water, in kg/m³: what specific gravity is held against. */
const WATER_DENSITY: Density = 1000;

/** Percent of moisture at which the tables give specific gravity, and at which wood is weighed here. */
const GRAVITY_MOISTURE = 12;

/** In kg/m³. The workbook's own figure first; then the species' for boards, the usual one for sheets. */
export function densityOf(stock: {
  readonly kind: 'board' | 'sheet';
  readonly species: string;
  readonly density: Density | undefined;
}): Density {
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
