import ExcelJS from 'exceljs';
import type { Cell, CellValue, Row, Sheet } from './workbook.ts';

/** The sheets of a workbook whose bytes have been found safe to read. Throws on what the library cannot read. */
export async function sheetsOf(bytes: Uint8Array): Promise<readonly Sheet[]> {
  const book = new ExcelJS.Workbook();
  // The library's types ask for its own idea of a Buffer.
  await book.xlsx.load(bytes as unknown as ExcelJS.Buffer, { ignoreNodes: [...NOT_READ] });
  return book.worksheets.map(sheetOf);
}

/** Parts of a sheet that say nothing of the job, and that take the library hours when they span whole columns. */
const NOT_READ = [
  'dataValidations',
  'conditionalFormatting',
  'extLst',
  'drawing',
  'legacyDrawing',
  'tableParts',
  'hyperlinks',
];

function sheetOf(sheet: ExcelJS.Worksheet): Sheet {
  const rows: Row[] = [];
  sheet.eachRow({ includeEmpty: false }, row => {
    const cells: Cell[] = [];
    row.eachCell({ includeEmpty: false }, cell => {
      const value = cellValue(cell);
      if (value !== undefined) cells.push({ column: lettersOf(cell), value });
    });
    if (cells.length > 0) rows.push({ number: row.number, hidden: row.hidden === true, cells });
  });
  return { name: sheet.name, hidden: sheet.state !== 'visible', rows };
}

const lettersOf = (cell: ExcelJS.Cell): string => cell.address.replace(/\d+$/, '');

function cellValue(cell: ExcelJS.Cell): CellValue | undefined {
  if (cell.isMerged && cell.master !== cell) return { kind: 'merged', area: cell.master.address };
  return plainValue(cell.value, cell.numFmt ?? '');
}

/** What stands in a cell. Formulas count by their stored result. */
function plainValue(value: ExcelJS.CellValue, format: string): CellValue | undefined {
  if (value === null || value === undefined) return undefined;
  if (typeof value === 'string') return textOf(value);
  if (typeof value === 'number')
    return Number.isFinite(value) ? { kind: 'number', number: value, format } : textOf(String(value));
  if (typeof value === 'boolean') return { kind: 'truth', truth: value };
  if (value instanceof Date) return dateOf(value);
  if ('error' in value) return { kind: 'error', error: String(value.error) };
  if ('richText' in value) return textOf(value.richText.map(run => run.text).join(''));
  if ('hyperlink' in value) return plainValue(value.text as ExcelJS.CellValue, format);
  if ('formula' in value || 'sharedFormula' in value) {
    return value.result === undefined ? { kind: 'unfinished' } : plainValue(value.result as ExcelJS.CellValue, format);
  }
  return undefined;
}

/** Files write a character that XML has no place for as `_x0007_`. */
const textOf = (text: string): CellValue | undefined =>
  text === ''
    ? undefined
    : {
        kind: 'text',
        text: text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code) => String.fromCharCode(Number.parseInt(code, 16))),
      };

/** A date without a day is a time of the day: 7:30, or a ratio such as 2:1 that was taken for one. */
function dateOf(date: Date): CellValue {
  if (Number.isNaN(date.getTime())) return { kind: 'error', error: '#VALUE!' };
  if (date.getUTCFullYear() < 1900) return { kind: 'text', text: date.toISOString().slice(11, 16) };
  return { kind: 'date', year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}
