import ExcelJS from 'exceljs';
import type { Diagnosed } from '../diagnostics/diagnostic.ts';
import { lettersOf, numberOf } from './cell-names.ts';
import type { Cell, CellValue, Row, Sheet, Workbook } from './workbook.ts';
import { plainBook, writtenBy } from './xlsx/plain-book.ts';
import { Refusal } from './xlsx/refusal.ts';

/** Reads a workbook in this thread, with no limit of time: `readXlsx` is what to call. */
export async function readCells(bytes: Uint8Array, file: string): Promise<Diagnosed<Workbook | undefined>> {
  try {
    return { value: { file, sheets: await sheetsOf(bytes) }, diagnostics: [] };
  } catch (refused) {
    if (refused instanceof Refusal) return { value: undefined, diagnostics: [refused.diagnose(file)] };
    throw refused;
  }
}

async function sheetsOf(bytes: Uint8Array): Promise<readonly Sheet[]> {
  const plain = plainBook(bytes);
  const book = new ExcelJS.Workbook();
  // The library's types ask for its own idea of a Buffer.
  await book.xlsx.load(plain.bytes as unknown as ExcelJS.Buffer);
  return plain.sheets.map(({ name, hidden, merged }, index) => {
    const sheet = book.getWorksheet(String(index + 1));
    const rows = sheet === undefined ? [] : rowsOf(sheet, plain.written);
    return { name, hidden, rows: withMerged(rows, merged) };
  });
}

function rowsOf(sheet: ExcelJS.Worksheet, written: readonly string[]): readonly Row[] {
  const rows: Row[] = [];
  sheet.eachRow({ includeEmpty: false }, row => {
    const cells: Cell[] = [];
    row.eachCell({ includeEmpty: false }, (cell, column) => {
      const value = cellValue(cell.value, writtenBy(cell.numFmt ?? '', written));
      if (value !== undefined) cells.push({ column: lettersOf(column), value });
    });
    if (cells.length > 0) rows.push({ number: row.number, hidden: row.hidden === true, cells });
  });
  return rows;
}

/** What stands in a cell of the plain form. `format` is what its number format writes. */
function cellValue(value: ExcelJS.CellValue, format: string): CellValue | undefined {
  if (value === null || value === undefined || value === '') return undefined;
  if (typeof value === 'string') return { kind: 'text', text: unescaped(value) };
  if (typeof value === 'number') return { kind: 'number', number: value, format };
  if (typeof value === 'boolean') return { kind: 'truth', truth: value };
  if (value instanceof Date) return dateOf(value);
  if ('error' in value) return { kind: 'error', error: String(value.error) };
  return 'formula' in value ? { kind: 'unfinished' } : undefined;
}

/** Workbooks write a character that XML has no place for as `_x0007_`: ECMA-376 part 1, 22.9.2.19. */
const unescaped = (text: string): string =>
  text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

/** A date without a day is a time of the day: 7:30, or a ratio such as 2:1 that was taken for one. */
function dateOf(date: Date): CellValue {
  if (Number.isNaN(date.getTime())) return { kind: 'error', error: '#VALUE!' };
  if (date.getUTCFullYear() < 1900) return { kind: 'text', text: date.toISOString().slice(11, 16) };
  return { kind: 'date', year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/** Cells that lie under a merged area are told as such, as far as their rows and the sheet's columns hold something. */
function withMerged(rows: readonly Row[], merged: readonly string[]): readonly Row[] {
  const areas = merged.flatMap(areaOf);
  if (areas.length === 0) return rows;
  const last = Math.max(...rows.map(row => numberOf(row.cells.at(-1)?.column ?? 'A')));
  return rows.map(row => {
    const under = areas.filter(({ top, bottom }) => top <= row.number && row.number <= bottom);
    return under.length === 0 ? row : { ...row, cells: cellsUnder(row, under, last) };
  });
}

type Area = {
  readonly name: string;
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
};

function areaOf(name: string): readonly Area[] {
  const [, left, top, right, bottom] = /^([A-Z]{1,3})(\d{1,7}):([A-Z]{1,3})(\d{1,7})$/.exec(name) ?? [];
  if (left === undefined || right === undefined) return [];
  return [{ name, left: numberOf(left), right: numberOf(right), top: Number(top), bottom: Number(bottom) }];
}

function cellsUnder(row: Row, areas: readonly Area[], last: number): readonly Cell[] {
  const cells = new Map(row.cells.map(cell => [numberOf(cell.column), cell]));
  for (const { name, left, right, top } of areas) {
    for (let column = left; column <= Math.min(right, last); column++) {
      if (row.number === top && column === left) continue;
      cells.set(column, { column: lettersOf(column), value: { kind: 'merged', area: name } });
    }
  }
  return [...cells.entries()].sort(([a], [b]) => a - b).map(([, cell]) => cell);
}
