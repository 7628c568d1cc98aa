import ExcelJS from 'exceljs';
import { withoutDates } from './zip-dates.ts';

/** Rows below their headings, in a sheet of this title; widths in figures. */
export type Table = {
  readonly title: string;
  readonly columns: readonly { readonly header: string; readonly width: number }[];
  readonly rows: readonly (readonly (string | number)[])[];
};

/** Writes a table as a workbook of one sheet. Words are written as words, so that no cell is a formula; the same table gives the same bytes. */
export async function tableWorkbook({ title, columns, rows }: Table): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  book.created = book.modified = new Date(Date.UTC(2000, 0, 1));
  const sheet = book.addWorksheet(sheetName(title), { views: [{ state: 'frozen', ySplit: 1 }] });
  sheet.columns = columns.map(({ header, width }) => ({ header, width }));
  sheet.getRow(1).font = { bold: true };
  sheet.addRows(rows.map(row => [...row]));
  return withoutDates(new Uint8Array(await book.xlsx.writeBuffer()));
}

/** A workbook's sheets have names of at most 31 characters without some signs. */
const sheetName = (name: string): string => name.replace(/[*?:\\/[\]]/g, ' ').slice(0, 31);
