import assert from 'node:assert';
import * as z from 'zod';
import { type Diagnosed, type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import { cellOf, type Place, type Source } from '../diagnostics/place.ts';
import type { Units } from '../units/read-length.ts';
import { type Complaint, complain, type FieldCell, isComplaint, type Reader } from './cells.ts';
import type { Columns } from './columns.ts';
import { findHeadings, type Headings } from './headings.ts';
import { visibleText } from './visible-text.ts';
import type { Cell, CellValue, Row, Sheet } from './workbook.ts';

/** A row of a sheet: its cells that hold something, under the names of our fields. */
export type Entry<Field extends string> = {
  readonly from: Source;
  readonly cells: { readonly [F in Field]?: FieldCell };
};

/** The rows under the headings of a sheet. Rows with nothing in any column of ours are passed over. */
export function readTable<Field extends string>(
  sheet: Sheet,
  columns: Columns<Field>,
  units: Units,
): Diagnosed<readonly Entry<Field>[]> {
  const { value: headings, diagnostics } = findHeadings(sheet, columns);
  if (headings === undefined) return { value: [], diagnostics };
  const found: Diagnostic[] = [...diagnostics];
  const entries: Entry<Field>[] = [];
  for (const row of sheet.rows) {
    if (row.number <= headings.row) continue;
    const entry = entryOf(sheet, row, columns, headings, units);
    if (entry.value === undefined) continue;
    entries.push(entry.value);
    found.push(...entry.diagnostics);
  }
  return { value: entries, diagnostics: [...found, ...hiddenRows(sheet, entries)] };
}

/** What a row says: all of it, or undefined where a cell does not read; and what can be read of it all the same. */
export type ReadEntry<T> = Diagnosed<T | undefined> & { readonly readable: Partial<T> };

/** Reads a row. Every cell that does not read is reported. */
export function readEntry<Field extends string, T extends Readings<Field>>(
  entry: Entry<Field>,
  columns: Columns<Field>,
  readings: T,
): ReadEntry<ReadRow<T>> {
  const row: { [field: string]: FieldCell | undefined } = {};
  for (const field of Object.keys(readings)) row[field] = entry.cells[field as Field];
  const result = schemaOf(readings).safeParse(row);
  if (result.success) {
    const value = result.data as ReadRow<T>;
    return { value, diagnostics: [], readable: value };
  }
  const { issues } = result.error;
  const failed = new Set(issues.map(({ path }) => String(path[0])));
  const rest = Object.entries<Reading<unknown>>(readings).filter(([field]) => !failed.has(field));
  const readable = Object.fromEntries(rest.map(([field, reading]) => [field, reading(row[field])])) as Partial<
    ReadRow<T>
  >;
  return { value: undefined, diagnostics: issues.flatMap(issue => diagnosticOf(issue, entry, columns)), readable };
}

/** How each field of a row is read. */
export type Readings<Field extends string> = { readonly [F in Field]: Reading<unknown> };
export type Reading<T> = (cell: FieldCell | undefined) => T | Complaint;
export type ReadRow<T> = { readonly [F in keyof T]: T[F] extends Reading<infer V> ? Exclude<V, Complaint> : never };

export const needed =
  <T>(reader: Reader<T>): Reading<T> =>
  cell =>
    cell === undefined ? complain('cell-empty', {}) : reader(cell);

export const optional =
  <T>(reader: Reader<T>): Reading<T | undefined> =>
  cell =>
    cell === undefined ? undefined : reader(cell);

/** Where an empty cell has one plain meaning: one leaf, no note. */
export const otherwise =
  <T>(value: NoInfer<T>, reader: Reader<T>): Reading<T> =>
  cell =>
    cell === undefined ? value : reader(cell);

/** The diagnosis of a complaint about a record's field, with the column named as we name it. */
export const complaintOf = <Field extends string>(
  complaint: Complaint,
  entry: Entry<Field>,
  field: Field,
  column: string,
): Diagnostic => problem(complaint.complaint, cellOf(entry.from, field), { column, ...complaint.facts } as never);

// Schemas are made once for each sheet, not for each row.
const schemas = new WeakMap<object, z.ZodType>();

function schemaOf(readings: { readonly [field: string]: Reading<unknown> }): z.ZodType {
  const made = schemas.get(readings);
  if (made !== undefined) return made;
  const fields = Object.entries(readings).map(([field, reading]) => [field, cellSchema(reading)]);
  const schema = z.object(Object.fromEntries(fields));
  schemas.set(readings, schema);
  return schema;
}

const cellSchema = (reading: Reading<unknown>): z.ZodType =>
  z.custom<FieldCell | undefined>().transform((cell, context) => {
    const read = reading(cell);
    if (!isComplaint(read)) return read;
    context.addIssue({ code: 'custom', params: { complaint: read } });
    return z.NEVER;
  });

/** The issue's path becomes a cell, and its message is thrown away: the words are ours. */
function diagnosticOf<Field extends string>(
  issue: z.core.$ZodIssue,
  entry: Entry<Field>,
  columns: Columns<Field>,
): readonly Diagnostic[] {
  const field = String(issue.path[0]) as Field;
  const complaint = issue.code === 'custom' ? issue.params?.['complaint'] : undefined;
  assert(isComplaint(complaint), `a reader of ${field} answered with ${issue.code}`);
  // A column that is not there has been said once.
  if (complaint.complaint === 'cell-empty' && entry.from.columns[field] === undefined) return [];
  return [complaintOf(complaint, entry, field, columns[field].name)];
}

function entryOf<Field extends string>(
  sheet: Sheet,
  row: Row,
  columns: Columns<Field>,
  headings: Headings<Field>,
  units: Units,
): Diagnosed<Entry<Field> | undefined> {
  const cells: { [F in Field]?: FieldCell } = {};
  const places: { [field: string]: string } = {};
  const diagnostics: Diagnostic[] = [];
  for (const cell of row.cells) {
    const heading = headings.columns.get(cell.column);
    const { value, changed } = cleaned(cell);
    if (heading === undefined || value === undefined) continue;
    if (changed && value.kind === 'text') {
      const at: Place = { kind: 'cell', sheet: sheet.name, cell: `${cell.column}${row.number}` };
      diagnostics.push(problem('characters-removed', at, { column: columns[heading.field].name, kept: value.text }));
    }
    cells[heading.field] = { value, units: heading.units ?? units };
  }
  const filled = Object.values<FieldCell | undefined>(cells).some(cell => cell?.value.kind !== 'merged');
  for (const [column, { field }] of headings.columns) places[field] = column;
  const from: Source = { sheet: sheet.name, row: row.number, columns: places };
  return { value: filled ? { from, cells } : undefined, diagnostics };
}

/** The cell's value, its text as it can be seen; undefined where nothing is left. */
function cleaned(cell: Cell): { readonly value: CellValue | undefined; readonly changed: boolean } {
  if (cell.value.kind !== 'text') return { value: cell.value, changed: false };
  const { text, changed } = visibleText(cell.value.text);
  return { value: text === '' ? undefined : { kind: 'text', text }, changed };
}

function hiddenRows<Field extends string>(sheet: Sheet, entries: readonly Entry<Field>[]): readonly Diagnostic[] {
  const counted = new Set(entries.map(entry => entry.from.row));
  const hidden = sheet.rows.filter(row => row.hidden && counted.has(row.number)).map(row => row.number);
  return hidden.length === 0
    ? []
    : [problem('rows-hidden', { kind: 'sheet', sheet: sheet.name }, { rows: hidden.join(', ') })];
}
