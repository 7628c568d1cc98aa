import type { Density } from '../units/mass.ts';

/** Hardwood plywood, where Stock does not give its density; common practice. */
export const PLYWOOD_DENSITY: Density = 600;

/** Soda-lime float glass: 2 500 kg/m³, the figure of EN 572-1; from memory. */
export const GLASS_DENSITY: Density = 2500;

/** A board of a species that the tables do not have, taken to be as heavy as the heavier hardwoods; common practice. */
export const UNKNOWN_WOOD_DENSITY: Density = 750;

/** The moisture at which the tables give specific gravity, and at which doors are weighed in this program. */
export const GRAVITY_MOISTURE = 12;

/** 1 000 kg/m³: what specific gravity is held against. */
export const WATER_DENSITY: Density = 1000;
