import { lettersOf, numberOf } from '../cell-names.ts';
import { type Book, isTrue } from './book.ts';
import { type PlainCell, plainCell, type StoredCell, type Styles } from './plain-cell.ts';
import { damaged, refusal } from './refusal.ts';
import { type Attributes, readXml } from './xml.ts';

/** A sheet in the plainest form that a spreadsheet library reads, and the areas whose cells are merged. */
export type PlainSheet = { readonly xml: string; readonly merged: readonly string[] };

/** A shop's largest job has some thousands of openings. */
const ROWS_MAX = 12_000;
const COLUMNS_MAX = 256;
/** Of all the sheets together. */
const CELLS_MAX = 150_000;
const MERGED_MAX = 2_000;

/** The largest row and column that a sheet can have. */
const LAST_ROW = 1_048_576;
const LAST_COLUMN = 16_384;

/** What has been met so far in all the sheets of a workbook. */
export type Met = { cells: number; readonly styles: Styles };

/**
 * Reads a sheet and writes it again with nothing but its rows and those of its cells that hold something: formulas as
 * their results, texts in place, rows and cells with their names. Whole columns of formats, lists and merges, which cost
 * a library hours and gigabytes, are passed over here at the price of reading them once.
 */
export function plainSheet(book: Book, name: string, part: string, met: Met): PlainSheet {
  const rows: string[] = [];
  const merged: string[] = [];
  const seen = new Set<number>();
  let row = { number: 0, hidden: false, cells: [] as string[] };
  let column = 0;
  let cell: { column: number; stored: StoredCell } | undefined;
  let writes: 'value' | 'text' | 'formula' | undefined;

  const openRow = ({ r, hidden }: Attributes): void => {
    row = { number: r === undefined ? row.number + 1 : Number(r), hidden: isTrue(hidden), cells: [] };
    column = 0;
    if (!isIndex(row.number, LAST_ROW) || seen.has(row.number)) throw damaged(`${name}, row ${r}`);
    seen.add(row.number);
  };
  const openCell = ({ r, s, t }: Attributes): void => {
    column = r === undefined ? column + 1 : columnIn(r, row.number);
    if (!isIndex(column, LAST_COLUMN)) throw damaged(`${name}, row ${row.number}`);
    cell = { column, stored: { type: t ?? 'n', style: Number(s ?? 0), value: '', hasFormula: false, hasValue: false } };
  };
  const closeCell = (): void => {
    const plain = cell && plainCell(book, cell.stored, met.styles);
    if (cell === undefined || plain === undefined) return;
    if (cell.column > COLUMNS_MAX) throw refusal('sheet-too-large', { of: 'columns', limit: COLUMNS_MAX }, name);
    met.cells += 1;
    if (met.cells > CELLS_MAX) throw refusal('sheet-too-large', { of: 'cells', limit: CELLS_MAX }, name);
    row.cells.push(printCell(`${lettersOf(cell.column)}${row.number}`, plain));
    cell = undefined;
  };
  const closeRow = (): void => {
    if (row.cells.length === 0) return;
    rows.push(`<row r="${row.number}"${row.hidden ? ' hidden="1"' : ''}>${row.cells.join('')}</row>`);
    if (rows.length > ROWS_MAX) throw refusal('sheet-too-large', { of: 'rows', limit: ROWS_MAX }, name);
  };

  readXml(book.part(part), part, {
    open: (element, attributes) => {
      if (element === 'row') openRow(attributes);
      else if (element === 'c') openCell(attributes);
      else if (element === 'mergeCell' && merged.length < MERGED_MAX) merged.push(attributes['ref'] ?? '');
      else if (cell !== undefined && element in WRITES) {
        writes = WRITES[element];
        if (writes === 'formula') cell.stored.hasFormula = true;
        else cell.stored.hasValue = true;
      }
    },
    text: text => {
      if (cell !== undefined && (writes === 'value' || writes === 'text')) cell.stored.value += text;
    },
    close: element => {
      if (element in WRITES) writes = undefined;
      else if (element === 'c') closeCell();
      else if (element === 'row') closeRow();
    },
  });
  return { xml: `${SHEET_START}${rows.join('')}</sheetData></worksheet>`, merged };
}

const WRITES: { readonly [element: string]: 'value' | 'text' | 'formula' } = { v: 'value', t: 'text', f: 'formula' };

const isIndex = (value: number, last: number): boolean => Number.isInteger(value) && value >= 1 && value <= last;

/** `C7` in row 7 is column 3. */
function columnIn(name: string, row: number): number {
  const [, letters = '', digits = ''] = /^([A-Z]{1,3})(\d+)$/.exec(name) ?? [];
  return Number(digits) === row ? numberOf(letters) : Number.NaN;
}

const SHEET_START =
  '<?xml version="1.0" encoding="UTF-8"?>' +
  '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>';

function printCell(name: string, cell: PlainCell): string {
  switch (cell.kind) {
    case 'text':
      return `<c r="${name}" t="inlineStr"><is><t xml:space="preserve">${escaped(cell.text)}</t></is></c>`;
    case 'number':
      return `<c r="${name}" s="${cell.style}"><v>${escaped(cell.number)}</v></c>`;
    case 'truth':
      return `<c r="${name}" t="b"><v>${cell.truth ? 1 : 0}</v></c>`;
    case 'error':
      return `<c r="${name}" t="e"><v>${escaped(cell.error)}</v></c>`;
    case 'unfinished':
      return `<c r="${name}"><f>0</f></c>`;
  }
}

/** Text within markup. What XML cannot hold cannot have come out of it. */
const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/\r/g, '&#13;');
