import type { Length } from '../units/length.ts';
import type { Mass } from '../units/mass.ts';
import type { PacketWords } from './fill.ts';

/**
 * What goes into the holes of a sentence. `{fence:length}` prints nanometres as this job writes lengths, `{kg:mass}`
 * kilograms as it writes masses.
 */
export type Facts = { readonly [name: string]: Length | number | string };

/** Words by key, with their holes filled. */
export type Say = (key: string, facts?: Facts) => string;

/** How a sentence's hole is written that names its kind. */
export type Printers = { readonly length: (length: Length) => string; readonly mass: (mass: Mass) => string };

/**
 * The words of one language for what code decides to say: names of operations, roles, settings, reminders. A key that
 * a words file of the shop's own leaves out is shown as the last part of its name, so that a sheet is never blank.
 */
export const sayer =
  (words: PacketWords, print: Printers): Say =>
  (key, facts) => {
    const text = words[key] ?? plainName(key);
    if (facts === undefined || !text.includes('{')) return text;
    return text.replace(HOLE, (hole, name: string, form: string | undefined) => {
      const fact = facts[name];
      if (typeof fact !== 'number') return fact ?? hole;
      if (form === 'length') return print.length(fact as Length);
      return form === 'mass' ? print.mass(fact as Mass) : `${fact}`;
    });
  };

const HOLE = /\{(\w+)(?::(length|mass))?\}/g;

const plainName = (key: string): string => (key.split('.').at(-1) ?? key).replaceAll('-', ' ');
