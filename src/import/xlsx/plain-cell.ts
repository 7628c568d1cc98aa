import type { Book } from './book.ts';
import { damaged } from './refusal.ts';

/** A cell as it is stored: ECMA-376 part 1, 18.3.1.4 and 18.18.11. */
export type StoredCell = {
  readonly type: string;
  readonly style: number;
  value: string;
  hasValue: boolean;
  hasFormula: boolean;
};

/** What a cell holds once it is read. A number stays as it is written, with the style that tells its format. */
export type PlainCell =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'number'; readonly number: string; readonly style: number }
  | { readonly kind: 'truth'; readonly truth: boolean }
  | { readonly kind: 'error'; readonly error: string }
  | { readonly kind: 'unfinished' };

/** Style 0 is a plain number and 1 a date; from 2 on there is one for each text that number formats write. */
export type Styles = { readonly written: string[] };

const DATE_STYLE = 1;
const FIRST_WRITTEN_STYLE = 2;

/** Reads a stored cell; undefined where it holds nothing. A formula without a result is none that counts. */
export function plainCell(book: Book, stored: StoredCell, styles: Styles): PlainCell | undefined {
  const { type, value } = stored;
  if (stored.hasFormula && (!stored.hasValue || (value === '' && type === 'n'))) return { kind: 'unfinished' };
  if (value === '') return undefined;
  switch (type) {
    case 's':
      return shared(book, value);
    case 'str':
    case 'inlineStr':
      return { kind: 'text', text: value };
    case 'b':
      return { kind: 'truth', truth: value !== '0' && value !== 'false' };
    case 'e':
      return { kind: 'error', error: value };
    case 'd':
      return isoDate(value);
    default:
      return numberCell(book, value, stored.style, styles);
  }
}

function shared(book: Book, value: string): PlainCell | undefined {
  const text = book.strings[Number(value)];
  if (text === undefined) throw damaged(`text ${value}`);
  return text === '' ? undefined : { kind: 'text', text };
}

function numberCell(book: Book, value: string, style: number, styles: Styles): PlainCell {
  const number = Number(value);
  // Nobody's length or count, but somebody's cell: it is told as it stands.
  if (!Number.isFinite(number)) return { kind: 'text', text: value };
  const format = book.formats[style];
  if (format?.isDate)
    return { kind: 'number', number: String(number + (book.from1904 ? DAYS_TO_1904 : 0)), style: DATE_STYLE };
  return { kind: 'number', number: value, style: styleOf(format?.written ?? '', styles) };
}

/** From the first day of 1900 to that of 1904, as spreadsheets count them. */
const DAYS_TO_1904 = 1462;

function styleOf(written: string, { written: known }: Styles): number {
  if (written === '') return 0;
  const index = known.indexOf(written);
  return FIRST_WRITTEN_STYLE + (index >= 0 ? index : known.push(written) - 1);
}

/** `2026-03-04T00:00:00` as a day's number, which is what all other writers store. */
function isoDate(value: string): PlainCell {
  const time = /^\d{4}-\d\d-\d\d/.test(value) ? Date.parse(`${value.slice(0, 10)}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(time)) return { kind: 'text', text: value };
  return { kind: 'number', number: String(Math.round(time / 86_400_000) + DAYS_TO_1970), style: DATE_STYLE };
}

const DAYS_TO_1970 = 25_569;
