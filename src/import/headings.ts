import { type Diagnosed, type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import type { Place } from '../diagnostics/place.ts';
import { type Columns, findField, type Heading, nearest } from './columns.ts';
import { visibleText } from './visible-text.ts';
import type { Row, Sheet } from './workbook.ts';

/** The row with the headings, and what stands in each column that was understood. */
export type Headings<Field extends string> = {
  readonly row: number;
  readonly columns: ReadonlyMap<string, Heading<Field>>;
};

/** A table may have a title and some notes above its headings, not more. */
const ROWS_ABOVE_MAX = 20;

/** Finds the row that has most headings of ours, and says once what is missing, doubled or unknown in it. */
export function findHeadings<Field extends string>(
  sheet: Sheet,
  columns: Columns<Field>,
): Diagnosed<Headings<Field> | undefined> {
  const row = headingRow(sheet, columns);
  if (row === undefined) {
    if (sheet.rows.length === 0) return { value: undefined, diagnostics: [] };
    const wanted = neededColumns(columns).map(field => columns[field].name);
    const facts = { wanted: wanted.join(', ') };
    return {
      value: undefined,
      diagnostics: [problem('headings-missing', { kind: 'sheet', sheet: sheet.name }, facts)],
    };
  }
  return readHeadings(sheet, row, columns);
}

function headingRow<Field extends string>(sheet: Sheet, columns: Columns<Field>): Row | undefined {
  let best: { readonly row: Row; readonly known: number } | undefined;
  for (const row of sheet.rows.slice(0, ROWS_ABOVE_MAX)) {
    const known = texts(row).filter(([, text]) => findField(text, columns) !== undefined).length;
    if (known > (best?.known ?? 0)) best = { row, known };
  }
  return best?.row;
}

function readHeadings<Field extends string>(
  sheet: Sheet,
  row: Row,
  columns: Columns<Field>,
): Diagnosed<Headings<Field>> {
  const found = new Map<string, Heading<Field>>();
  const firstOf = new Map<Field, string>();
  const diagnostics: Diagnostic[] = [];
  const names = Object.values<Columns<Field>[Field]>(columns).map(each => each.name);
  for (const [column, text] of texts(row)) {
    const at: Place = { kind: 'cell', sheet: sheet.name, cell: `${column}${row.number}` };
    const heading = findField(text, columns);
    const first = heading && firstOf.get(heading.field);
    if (heading === undefined) {
      diagnostics.push(problem('column-unknown', at, { heading: text, nearest: nearest(text, names) ?? '' }));
    } else if (first !== undefined) {
      diagnostics.push(problem('column-twice', at, { column: columns[heading.field].name, other: first }));
    } else {
      found.set(column, heading);
      firstOf.set(heading.field, column);
    }
  }
  const seen = texts(row).map(([, text]) => text);
  const missing = neededColumns(columns).filter(field => !firstOf.has(field));
  for (const field of missing) {
    const facts = { column: columns[field].name, seen: seen.join(', ') };
    diagnostics.push(problem('column-missing', { kind: 'sheet', sheet: sheet.name }, facts));
  }
  return { value: { row: row.number, columns: found }, diagnostics };
}

const neededColumns = <Field extends string>(columns: Columns<Field>): readonly Field[] =>
  (Object.keys(columns) as Field[]).filter(field => columns[field].needed === true);

const texts = (row: Row): readonly (readonly [column: string, text: string])[] =>
  row.cells.flatMap(({ column, value }) => {
    const text = value.kind === 'text' ? visibleText(value.text).text : '';
    return text === '' ? [] : [[column, text] as const];
  });
