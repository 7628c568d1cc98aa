import type { CellProblems } from '../diagnostics/problems/import.ts';
import { type Length, ZERO } from '../units/length.ts';
import { readLength, type Units } from '../units/read-length.ts';
import { bare, nearest } from './columns.ts';
import { dateText, likelyFraction } from './dates.ts';
import type { CellValue } from './workbook.ts';

/** A cell under a heading; `units` is what a bare number in it means. */
export type FieldCell = { readonly value: CellValue; readonly units: Units };

/** What is wrong with a cell. The column's name is put in by whoever knows it. */
export type Complaint = {
  readonly [C in keyof CellProblems]: {
    readonly complaint: C;
    readonly facts: Omit<CellProblems[C], 'column'>;
  };
}[keyof CellProblems];

/** Reads a cell that holds something, or says what is wrong with it. */
export type Reader<T> = (cell: FieldCell) => T | Complaint;

export const complain = <C extends keyof CellProblems>(
  complaint: C,
  facts: Omit<CellProblems[C], 'column'>,
): Complaint =>
  // The compiler does not see that the two belong together once they are in one object.
  ({ complaint, facts }) as unknown as Complaint;

export const isComplaint = (reading: unknown): reading is Complaint =>
  typeof reading === 'object' && reading !== null && 'complaint' in reading;

/** Text as it stands; a number, too, is a name: cabinet 12. */
export const text =
  (limit: number): Reader<string> =>
  cell => {
    const written = writtenIn(cell);
    if (isComplaint(written)) return written;
    return written.length > limit ? complain('text-too-long', { limit }) : written;
  };

/** Names stand on tags and in codes. */
export const name = text(80);
export const note = text(2000);

const anyLength: Reader<Length> = cell => {
  const written = measureIn(cell);
  if (isComplaint(written)) return written;
  return readLength(written, cell.units) ?? complain('length-unreadable', { typed: typedIn(cell) });
};

/** A size: more than nothing. */
export const size: Reader<Length> = cell => {
  const length = anyLength(cell);
  return isComplaint(length) || length > ZERO ? length : complain('length-not-positive', { typed: typedIn(cell) });
};

/** An allowance: nothing, or more. */
export const allowance: Reader<Length> = cell => {
  const length = anyLength(cell);
  return isComplaint(length) || length >= ZERO ? length : complain('length-negative', { typed: typedIn(cell) });
};

export const sizes: Reader<readonly Length[]> = cell => {
  const written = measureIn(cell);
  if (isComplaint(written)) return written;
  const lengths = listed(written).map(each => readLength(each, cell.units));
  return lengths.every(each => each !== undefined && each > ZERO)
    ? lengths.filter(each => each !== undefined)
    : complain('form-unreadable', { typed: typedIn(cell), form: '20; 41 1/2' });
};

/** A number within bounds that are part of the meaning; a percentage counts as its share times a hundred. */
export const number =
  (from: number, to: number): Reader<number> =>
  cell => {
    const written = writtenIn(cell);
    if (isComplaint(written)) return written;
    const found = /^[-−]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(written)
      ? Number(written.replace('−', '-'))
      : Number.NaN;
    if (!Number.isFinite(found)) return complain('number-unreadable', { typed: typedIn(cell) });
    if (found < from || found > to) return complain('number-out-of-range', { typed: typedIn(cell), from, to });
    return found;
  };

export const count =
  (from: number, to: number): Reader<number> =>
  cell => {
    const found = number(from, to)(cell);
    if (isComplaint(found)) return found;
    return Number.isInteger(found) ? found : complain('number-not-whole', { typed: typedIn(cell) });
  };

/** Percent of a whole: `65 %`, 65, or a cell formatted as percent. */
export const percent =
  (to: number): Reader<number> =>
  cell => {
    const isShare = cell.value.kind === 'number' && cell.value.format.includes('%');
    const written = writtenIn(cell);
    if (isComplaint(written)) return written;
    const plain = written.replace(/\s*(%|percent)$/i, '');
    const value = number(0, isShare ? to / 100 : to)(textCell(plain, cell.units));
    // Whole thousandths of a percent: 0.07 × 100 is 7.000000000000001.
    return isComplaint(value) ? value : Math.round((isShare ? value * 100 : value) * 1000) / 1000;
  };

/** One of a few words, each with the other words people use for it. */
export const choice =
  <T extends string>(choices: { readonly [value in T]: readonly string[] }): Reader<T> =>
  cell => {
    const written = writtenIn(cell);
    if (isComplaint(written)) return written;
    const values = Object.keys(choices) as T[];
    const wanted = bare(written);
    const found = values.find(value => [value, ...choices[value]].some(word => bare(word) === wanted));
    const known = values.join(', ');
    return found ?? complain('choice-unknown', { typed: written, nearest: nearest(written, values) ?? '', known });
  };

export const yesOrNo: Reader<boolean> = cell => {
  if (cell.value.kind === 'truth') return cell.value.truth;
  const answer = choice({ yes: ['y', 'true', '1', 'x', 'sí', 's'], no: ['n', 'false', '0', '-'] })(cell);
  return isComplaint(answer) ? answer : answer === 'yes';
};

export const textCell = (written: string, units: Units): FieldCell => ({
  value: { kind: 'text', text: written },
  units,
});

export const listed = (written: string): readonly string[] =>
  written
    .split(/[;,]|\s+(?:and|y)\s+/)
    .map(each => each.trim())
    .filter(each => each !== '');

/** What the cell holds, as text. */
export function writtenIn(cell: FieldCell): string | Complaint {
  const { value } = cell;
  switch (value.kind) {
    case 'text':
      return value.text;
    case 'number':
      return String(value.number);
    case 'truth':
      return value.truth ? 'TRUE' : 'FALSE';
    case 'date':
      return complain('cell-is-date', { date: dateText(value), typed: likelyFraction(value) ?? '' });
    case 'error':
      return complain('cell-is-error', { error: value.error });
    case 'unfinished':
      return complain('cell-unfinished', {});
    case 'merged':
      return complain('cell-merged', { area: value.area });
  }
}

/** A length as text, with the unit that the number format shows and the stored number does not have. */
function measureIn(cell: FieldCell): string | Complaint {
  const written = writtenIn(cell);
  if (isComplaint(written) || cell.value.kind !== 'number') return written;
  if (cell.value.format.includes('%')) return complain('length-unreadable', { typed: `${cell.value.number * 100} %` });
  return `${written} ${unitOf(cell.value.format)}`.trim();
}

/** The unit that a number format writes behind the number; empty where it has none. */
const unitOf = (format: string): string =>
  /(mm|cm|in|inch|inches|ft|"|')[\s.]*$/i.exec(format)?.[1]?.toLowerCase() ?? '';

/** What a person sees in the cell; empty where that is no value. */
export function typedIn(cell: FieldCell | undefined): string {
  const written = cell === undefined ? '' : writtenIn(cell);
  return isComplaint(written) ? '' : written;
}
