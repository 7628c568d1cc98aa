import { type Area, squareFeet } from '../units/area.ts';
import { type Duration, inMinutes } from '../units/duration.ts';
import { gallons, litres, type Mass, pounds, type Volume } from '../units/mass.ts';
import type { Units } from '../units/read-length.ts';

/** How quantities that are no lengths are written: in the units of the job, rounded to what a person can use. */
export type Quantities = {
  readonly mass: (mass: Mass) => string;
  readonly area: (area: Area) => string;
  readonly volume: (volume: Volume) => string;
  readonly time: (time: Duration) => string;
};

export const quantities = (units: Units): Quantities =>
  units === 'inch'
    ? {
        mass: mass => `${decimal(pounds(mass), 1)} lb`,
        area: area => `${decimal(squareFeet(area), 1)} ft²`,
        volume: volume =>
          gallons(volume) < 1 ? `${decimal(gallons(volume) * 128, 1)} fl oz` : `${decimal(gallons(volume), 2)} gal`,
        time: printTime,
      }
    : {
        mass: mass => `${decimal(mass, 1)} kg`,
        area: area => `${decimal(area, 2)} m²`,
        volume: volume =>
          litres(volume) < 1 ? `${decimal(litres(volume) * 1000, 0)} ml` : `${decimal(litres(volume), 2)} l`,
        time: printTime,
      };

/** 2 h 30 min; 45 min; 48 h. */
function printTime(time: Duration): string {
  const minutes = Math.round(inMinutes(time));
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** With at most so many figures after the point, and none that say nothing. */
export const decimal = (value: number, digits: number): string => {
  const text = value.toFixed(digits);
  return digits === 0 ? text : text.replace(/\.?0+$/, '');
};
