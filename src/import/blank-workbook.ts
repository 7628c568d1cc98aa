import ExcelJS from 'exceljs';
import type { Units } from '../units/read-length.ts';
import { type BlankColumn, type BlankSheet, blankSheets } from './blank-sheets.ts';
import { lettersOf } from './cell-names.ts';

/** Rows that are made ready for typing. */
const ROWS = 400;

/** A face that is on every machine, so that nothing moves from one to the next. */
const PLAIN: Partial<ExcelJS.Font> = { name: 'Arial', size: 10 };
const GREY: Partial<ExcelJS.Font> = { ...PLAIN, color: { argb: 'FF767676' } };
const HEADING_FILL: ExcelJS.Fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFE8E8E8' } };

/**
 * A workbook to start a job with: every sheet with its headings, a note on each, lists to choose from, what is taken for
 * an empty cell in grey, and one example. Cells hold text, so that no spreadsheet program makes a date of 3/4.
 */
export async function newWorkbook(units: Units): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  // Fixed, so that the same program makes the same workbook on every day.
  book.created = book.modified = new Date(Date.UTC(2026, 0, 1));
  for (const blank of blankSheets(units)) addSheet(book, blank, units);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

function addSheet(book: ExcelJS.Workbook, blank: BlankSheet, units: Units): void {
  const headings = blank.above.length + 1;
  const sheet = book.addWorksheet(blank.name, {
    views: [{ state: 'frozen', xSplit: blank.columns.length > 8 ? 1 : 0, ySplit: headings }],
    pageSetup: {
      paperSize: units === 'inch' ? LETTER : A4,
      orientation: blank.columns.length > 8 ? 'landscape' : 'portrait',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      printTitlesRow: `${headings}:${headings}`,
    },
  });
  blank.columns.forEach((column, index) => {
    sheet.getColumn(index + 1).width = column.width;
    sheet.getColumn(index + 1).numFmt = '@';
    sheet.getColumn(index + 1).font = PLAIN;
  });
  for (const line of blank.above) styleRow(sheet.addRow(line), { ...GREY, italic: true });
  addHeadings(sheet.addRow(blank.columns.map(({ name }) => name)), blank.columns);
  for (const line of blank.rows) addLine(sheet, line, blank.columns);
  for (const [index, column] of blank.columns.entries()) addList(sheet, column, index + 1, headings + 1);
}

/** Numbers of paper sizes: ECMA-376 part 1, 18.3.1.63. */
const LETTER = 1 as ExcelJS.PaperSize;
const A4 = 9 as ExcelJS.PaperSize;

function addHeadings(row: ExcelJS.Row, columns: readonly BlankColumn[]): void {
  columns.forEach(({ explains }, index) => {
    const cell = row.getCell(index + 1);
    cell.font = { ...PLAIN, bold: true };
    cell.alignment = { wrapText: true, vertical: 'bottom' };
    cell.fill = HEADING_FILL;
    cell.border = { bottom: { style: 'thin' } };
    if (columns.length > 8) row.height = 42;
    if (explains !== '') cell.note = { texts: [{ text: explains }] };
  });
}

function addLine(sheet: ExcelJS.Worksheet, line: readonly string[], columns: readonly BlankColumn[]): void {
  const row = sheet.addRow(line.map(text => (text === '' ? null : text)));
  columns.forEach(({ isGrey }, index) => {
    if (isGrey) row.getCell(index + 1).font = GREY;
  });
}

const styleRow = (row: ExcelJS.Row, font: Partial<ExcelJS.Font>): void =>
  row.eachCell(cell => {
    cell.font = font;
  });

/** The library's types leave out what it keeps a sheet's lists in. */
type WithLists = { readonly dataValidations: { add: (cells: string, list: ExcelJS.DataValidation) => void } };

function addList(sheet: ExcelJS.Worksheet, { list }: BlankColumn, column: number, first: number): void {
  if (list === undefined) return;
  const letters = lettersOf(column);
  (sheet as unknown as WithLists).dataValidations.add(`${letters}${first}:${letters}${ROWS}`, {
    type: 'list',
    allowBlank: true,
    formulae: [list],
    // Other words are understood, too, so a word that is not in the list is no error here.
    showErrorMessage: false,
  });
}
