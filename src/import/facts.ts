import { type Diagnosed, type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import type { Place } from '../diagnostics/place.ts';
import type { Complaint } from './cells.ts';
import { bare, nearest } from './columns.ts';
import { visibleText } from './visible-text.ts';
import type { CellValue, Row, Sheet } from './workbook.ts';

/** A sheet of names and values, one to a row: Job and Shop. */
export type Named = { readonly name: string; readonly also: readonly string[] };

/** A fact that the sheet states: what it is, its value, and where. */
export type Fact<F extends Named> = { readonly of: F; readonly value: CellValue; readonly at: Place };

/** Reads the facts of a sheet. Names that are not known are said once each; an empty value states nothing. */
export function readFacts<F extends Named>(
  sheet: Sheet | undefined,
  known: readonly F[],
): Diagnosed<readonly Fact<F>[]> {
  if (sheet === undefined) return { value: [], diagnostics: [] };
  const byName = new Map(known.flatMap(each => [each.name, ...each.also].map(name => [bare(name), each] as const)));
  const columns = columnsOf(sheet);
  const facts: Fact<F>[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const row of sheet.rows) {
    const stated = row.number > columns.headings ? statementOf(sheet, row, columns) : undefined;
    if (stated === undefined) continue;
    const of = byName.get(bare(stated.name));
    const first = facts.find(fact => fact.of === of);
    if (of === undefined) diagnostics.push(unknownFact(stated, known));
    else if (first !== undefined) diagnostics.push(problem('setting-twice', stated.at, other(of, first)));
    else facts.push({ of, value: stated.value, at: stated.at });
    if (stated.changed) diagnostics.push(removed(stated));
  }
  return { value: facts, diagnostics };
}

/** What is wrong with a fact's value, at its cell. */
export const complaintAt = ({ of, at }: Fact<Named>, { complaint, facts }: Complaint): Diagnostic =>
  problem(complaint, at, { column: of.name, ...facts } as never);

type Columns = { readonly headings: number; readonly name: string; readonly value: string };
type Statement = {
  readonly name: string;
  readonly nameAt: Place;
  readonly value: CellValue;
  readonly at: Place;
  readonly changed: boolean;
};

const VALUE_HEADINGS: readonly string[] = ['value', 'valor'];

/** Names stand in A and values in B, unless a heading `Value` says otherwise; the names are then to its left. */
function columnsOf(sheet: Sheet): Columns {
  for (const row of sheet.rows.slice(0, 20)) {
    const index = row.cells.findIndex(
      ({ value }) => value.kind === 'text' && VALUE_HEADINGS.includes(bare(value.text)),
    );
    const [name, value] = [row.cells[index - 1], row.cells[index]];
    if (name !== undefined && value !== undefined)
      return { headings: row.number, name: name.column, value: value.column };
  }
  return { headings: 0, name: 'A', value: 'B' };
}

function statementOf(sheet: Sheet, row: Row, columns: Columns): Statement | undefined {
  const name = row.cells.find(({ column }) => column === columns.name)?.value;
  const value = row.cells.find(({ column }) => column === columns.value)?.value;
  if (name?.kind !== 'text' || value === undefined || value.kind === 'merged') return undefined;
  const at = (column: string): Place => ({ kind: 'cell', sheet: sheet.name, cell: `${column}${row.number}` });
  const named = { name: visibleText(name.text).text, nameAt: at(columns.name), at: at(columns.value) };
  if (value.kind !== 'text') return { ...named, value, changed: false };
  const { text, changed } = visibleText(value.text);
  return text === '' || named.name === '' ? undefined : { ...named, value: { kind: 'text', text }, changed };
}

const unknownFact = ({ name, nameAt }: Statement, known: readonly Named[]): Diagnostic =>
  problem('setting-unknown', nameAt, {
    typed: name,
    nearest:
      nearest(
        name,
        known.map(each => each.name),
      ) ?? '',
  });

const other = (of: Named, first: Fact<Named>) => ({
  setting: of.name,
  other: first.at.kind === 'cell' ? first.at.cell : '',
});

const removed = ({ name, value, at }: Statement): Diagnostic =>
  problem('characters-removed', at, { column: name, kept: value.kind === 'text' ? value.text : '' });
