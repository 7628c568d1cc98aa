import type { Length } from '../units/length.ts';
import type { PacketWords } from './fill.ts';

/** What goes into the holes of a sentence. `{fence:length}` prints a number of nanometres as this job writes lengths. */
export type Facts = { readonly [name: string]: Length | number | string };

/** Words by key, with their holes filled. */
export type Say = (key: string, facts?: Facts) => string;

/**
 * The words of one language for what code decides to say: names of operations, roles, settings, reminders. A key that
 * a words file of the shop's own leaves out is shown as the last part of its name, so that a sheet is never blank.
 */
export const sayer =
  (words: PacketWords, print: (length: Length) => string): Say =>
  (key, facts = {}) =>
    (words[key] ?? plainName(key)).replace(
      /\{([\w-]+)(:length)?\}/g,
      (hole, name: string, form: string | undefined) => {
        const fact = facts[name];
        if (fact === undefined) return hole;
        return form !== undefined && typeof fact === 'number' ? print(fact as Length) : String(fact);
      },
    );

const plainName = (key: string): string => (key.split('.').at(-1) ?? key).replaceAll('-', ' ');
