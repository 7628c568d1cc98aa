import type { Units } from '../units/read-length.ts';

/** The columns of a sheet: under each field of ours, the name we print and the other names people give it. */
export type Columns<Field extends string> = { readonly [F in Field]: Names };

export type Names = {
  readonly name: string;
  readonly also?: readonly string[];
  /** One line for the note on the heading, and for the README. */
  readonly explains: string;
  /** The words that may stand in it, where there are only a few. */
  readonly choices?: readonly string[];
  /** The sheet says nothing without it. */
  readonly needed?: true;
};

/** A heading that was understood; `units` where it names them: `Width (mm)`. */
export type Heading<Field extends string> = { readonly field: Field; readonly units: Units | undefined };

/** Finds the field that a heading stands for, without regard to case, spaces, punctuation and accents. */
export function findField<Field extends string>(heading: string, columns: Columns<Field>): Heading<Field> | undefined {
  const whole = fieldNamed(heading, columns);
  if (whole !== undefined) return { field: whole, units: undefined };
  const [, name = '', unit = ''] = UNIT_AT_END.exec(heading.trim()) ?? [];
  const field = fieldNamed(name, columns);
  return field === undefined ? undefined : { field, units: /^(mm|mil)/i.test(unit) ? 'mm' : 'inch' };
}

const UNIT_AT_END = /^(.*?)[\s,([]+(mm|millimet(?:er|re)s?|in|inch|inches|")[)\].]*$/i;

function fieldNamed<Field extends string>(heading: string, columns: Columns<Field>): Field | undefined {
  const wanted = bare(heading);
  if (wanted === '') return undefined;
  return (Object.keys(columns) as Field[]).find(field =>
    [columns[field].name, ...(columns[field].also ?? [])].some(name => bare(name) === wanted),
  );
}

/** A name with all that people write in different ways taken off: `Opening W.` and `opening-w` are one. */
export const bare = (name: string): string =>
  name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/#/g, 'number')
    .replace(/&/g, 'and')
    .replace(/%/g, 'percent')
    .replace(/[^\p{L}\p{N}]/gu, '');

/** The known name that was probably meant: at most two in five of its letters wrong. */
export function nearest(typed: string, known: readonly string[]): string | undefined {
  const wanted = bare(typed);
  let best: { readonly name: string; readonly wrong: number } | undefined;
  for (const name of known) {
    const wrong = lettersWrong(wanted, bare(name));
    if (wrong * 5 <= Math.max(wanted.length, 3) * 2 && (best === undefined || wrong < best.wrong))
      best = { name, wrong };
  }
  return best?.name;
}

/** Longer names are not compared letter by letter: the table grows with the product of the two. */
const COMPARED_MAX = 60;

/** Levenshtein's distance: letters put in, left out or changed. */
function lettersWrong(a: string, b: string): number {
  if (a.length > COMPARED_MAX || b.length > COMPARED_MAX) return a === b ? 0 : Number.POSITIVE_INFINITY;
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(changed, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}

/** The first few of many names, for a sentence. */
export const some = (names: readonly string[]): string =>
  names.slice(0, NAMES_MAX).join(', ') + (names.length > NAMES_MAX ? ' …' : '');

const NAMES_MAX = 8;
