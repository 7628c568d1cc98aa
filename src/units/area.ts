import type { Length } from './length.ts';

declare const squareMetres: unique symbol;

/** An area in square metres: a branded float that is printed and added up, and never compared with another. */
export type Area = number & { readonly [squareMetres]: true };

/** An area that was worked out in square metres. */
export const areaOf = (squareMetresCount: number): Area => squareMetresCount as Area;
export const area = (length: Length, width: Length): Area => ((length / 1e9) * (width / 1e9)) as Area;
export const addAreas = (areas: readonly Area[]): Area => areas.reduce((total, each) => total + each, 0) as Area;
export const timesArea = (count: number, each: Area): Area => (count * each) as Area;

/** 1 ft = 0.3048 m exactly (international foot). */
export const squareFeet = (value: Area): number => value / (0.3048 * 0.3048);
