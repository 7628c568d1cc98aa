import { type Area, area } from './area.ts';
import type { Length } from './length.ts';

declare const kilograms: unique symbol;

/** A mass in kilograms: a branded float that is printed, added up and held against steps of a table. */
export type Mass = number & { readonly [kilograms]: true };

declare const cubicMetres: unique symbol;

/** A volume in cubic metres. */
export type Volume = number & { readonly [cubicMetres]: true };

/** A density in kg/m³. */
export type Density = number;

export const kg = (value: number): Mass => value as Mass;
export const addMasses = (masses: readonly Mass[]): Mass => kg(masses.reduce((total, each) => total + each, 0));
export const volume = (length: Length, width: Length, thickness: Length): Volume =>
  (area(length, width) * (thickness / 1e9)) as Volume;
export const spread = (surface: Area, film: Length): Volume => (surface * (film / 1e9)) as Volume;
export const massOf = (solid: Volume, density: Density): Mass => kg(solid * density);

/** 1 lb = 0.45359237 kg exactly (international avoirdupois pound). */
export const POUND = 0.45359237;
export const pounds = (mass: Mass): number => mass / POUND;
export const fromPounds = (value: number): Mass => kg(value * POUND);

/** 1 US gallon = 231 in³ exactly. */
export const US_GALLON = (231 * 0.0254 ** 3) as Volume;
export const gallons = (value: Volume): number => value / US_GALLON;
export const litres = (value: Volume): number => value * 1000;
