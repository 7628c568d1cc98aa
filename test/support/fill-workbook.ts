import ExcelJS from 'exceljs';
import type { Units } from '../../src/units/read-length.ts';

/** Types a small job into the blank workbook, under its headings, as a person would. */
export async function fill(blank: Uint8Array, units: Units): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(blank as unknown as ExcelJS.Buffer);
  const [width, height, wide] = units === 'inch' ? ['14 3/8', '30', '28 1/2'] : ['365', '762', '724'];
  typeRow(book, 'Cabinets', 4, {
    Cabinet: 'B1',
    'Opening width': width,
    'Opening height': height,
    'Hinge side': 'left',
    Style: 'Shaker',
  });
  typeRow(book, 'Cabinets', 5, {
    Cabinet: 'B2',
    'Opening width': wide,
    'Opening height': height,
    Leaves: '2',
    Style: 'Shaker',
  });
  typeRow(book, 'Styles', 3, {
    Style: 'Shaker',
    'Stile width': units === 'inch' ? '2 1/4' : '57',
    'Frame stock': 'Cherry',
  });
  typeRow(book, 'Stock', 3, { Stock: 'Cherry', Kind: 'board', Thickness: units === 'inch' ? '4/4' : '26' });
  typeFact(book, 'Job', 'Job number', 'N-1');
  typeFact(book, 'Shop', 'Kerf', units === 'inch' ? '3/32' : '3');
  return new Uint8Array(await book.xlsx.writeBuffer());
}

function typeRow(
  book: ExcelJS.Workbook,
  sheet: string,
  row: number,
  texts: { readonly [heading: string]: string | undefined },
): void {
  const target = book.getWorksheet(sheet);
  if (target === undefined) throw new Error(`no sheet ${sheet}`);
  target.getRow(2).eachCell((heading, column) => {
    const text = texts[heading.text];
    if (text !== undefined) target.getRow(row).getCell(column).value = text;
  });
}

function typeFact(book: ExcelJS.Workbook, sheet: string, name: string, value: string): void {
  book.getWorksheet(sheet)?.eachRow(row => {
    if (row.getCell(1).text === name) row.getCell(2).value = value;
  });
}
