import ExcelJS from 'exceljs';
import { describe, expect, it } from 'vitest';
import type { Limits } from '../../src/import/apart.ts';
import { newWorkbook } from '../../src/import/blank-workbook.ts';
import { importJob } from '../../src/import/index.ts';
import { markedCopy } from '../../src/import/marked-copy.ts';
import { MARK_WORDS, marksOf } from '../../src/import/marks.ts';
import { readCsv } from '../../src/import/read-csv.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';
import type { Workbook } from '../../src/import/workbook.ts';
import { archive, HEADINGS, textRow, workbookParts } from '../support/archive.ts';
import { findings } from '../support/drawn-workbook.ts';

/** Reads, imports and marks, as the inbox does. */
async function mark(bytes: Uint8Array) {
  const { value } = await readXlsx(bytes, 'a.xlsx');
  return markRead(bytes, value ?? { file: '', sheets: [] });
}

async function markRead(bytes: Uint8Array, workbook: Workbook, limits?: Limits) {
  const { diagnostics } = importJob(workbook);
  const copy =
    (await markedCopy(bytes, workbook, marksOf(diagnostics, 'en', String), MARK_WORDS.en, limits)) ?? new Uint8Array();
  return { copy, book: await opened(copy), found: findings(diagnostics) };
}

async function opened(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes as unknown as ExcelJS.Buffer);
  return book;
}

const written = async (book: ExcelJS.Workbook): Promise<Uint8Array> => new Uint8Array(await book.xlsx.writeBuffer());

/** A workbook as a person has it: with a list, a colour and a note of their own, and two cells to mend. */
async function toMend(): Promise<Uint8Array> {
  const book = await opened(await newWorkbook('inch'));
  const cabinets = book.getWorksheet('Cabinets');
  const type = (cell: string, text: string) => {
    if (cabinets !== undefined) cabinets.getCell(cell).value = text;
  };
  for (const [cell, text] of [
    ['A4', 'B1'],
    ['F4', '14 3/8'],
    ['G4', 'thirty'],
    ['A5', 'B2'],
    ['F5', '0'],
    ['G5', '30'],
    ['N5', 'left'],
  ] as const)
    type(cell, text);
  if (cabinets !== undefined) cabinets.getCell('G4').note = 'Measured twice.';
  return written(book);
}

const at = (book: ExcelJS.Workbook, cell: string) => {
  const found = book.getWorksheet('Cabinets')?.getCell(cell);
  const note = typeof found?.note === 'string' ? found.note : found?.note?.texts?.map(({ text }) => text).join('');
  const fill = found?.fill?.type === 'pattern' ? found.fill.fgColor?.argb : undefined;
  return { note, fill };
};

describe('a marked copy', () => {
  it('colours what is to be mended, and says in a note how, above what was noted before', async () => {
    const { book, found } = await mark(await toMend());
    expect(found).toEqual([
      'Cabinets!A3 note example-not-counted',
      'Cabinets!F5 error length-not-positive',
      'Cabinets!G4 error length-unreadable',
      'Cabinets!N4 error hinge-side-missing',
    ]);
    expect(at(book, 'G4').fill).toBe('FFFFC9C9');
    expect(at(book, 'G4').note).toBe(
      '✎ “thirty” in Opening height is not a length.\nWrite it like 14 3/8, 14.375 or 365 mm.\n— — —\nMeasured twice.',
    );
    expect(at(book, 'F5').note).toContain('✎ Opening width is 0');
    // Its neighbours share its style, and stay as they were.
    expect(at(book, 'F4')).toEqual({ note: undefined, fill: undefined });
    expect(at(book, 'A3').fill).toBe(undefined);
  });

  it('lists all of it on a first sheet, with links to the cells', async () => {
    const { book } = await mark(await toMend());
    const list = book.worksheets[0];
    expect(list?.name).toBe('To mend');
    const rows: unknown[] = [];
    list?.eachRow(row => rows.push([row.getCell(1).text, row.getCell(2).text, row.getCell(2).hyperlink]));
    expect(rows).toEqual([
      ['', 'Where', undefined],
      ['mend', 'Cabinets!G4', "#'Cabinets'!G4"],
      ['mend', 'Cabinets!N4', "#'Cabinets'!N4"],
      ['mend', 'Cabinets!F5', "#'Cabinets'!F5"],
      ['note', 'Cabinets!A3', "#'Cabinets'!A3"],
    ]);
  });

  it('keeps the lists, formats and sheets of the workbook', async () => {
    const { book } = await mark(await toMend());
    expect(book.worksheets.map(({ name }) => name)).toEqual([
      'To mend',
      'Read me',
      'Cabinets',
      'Job',
      'Styles',
      'Stock',
      'Shop',
      'Finish',
      'Hardware',
    ]);
    expect(book.getWorksheet('Cabinets')?.getCell('E9').dataValidation?.type).toBe('list');
    expect(book.getWorksheet('Cabinets')?.getColumn(6).numFmt).toBe('@');
  });

  it('has the same findings as the workbook, and none once it is mended', async () => {
    const { copy, book, found } = await mark(await toMend());
    expect((await mark(copy)).found).toEqual(found);
    const cabinets = book.getWorksheet('Cabinets');
    for (const [cell, text] of [
      ['G4', '30'],
      ['F5', '12'],
      ['N4', 'right'],
    ] as const) {
      if (cabinets !== undefined) cabinets.getCell(cell).value = text;
    }
    const mended = await mark(await written(book));
    expect(mended.found).toEqual(['Cabinets!A3 note example-not-counted']);
  });

  it('marked again, has the marks of this time only', async () => {
    const { book } = await mark(await toMend());
    const cabinets = book.getWorksheet('Cabinets');
    if (cabinets !== undefined) cabinets.getCell('G4').value = '30';
    const again = await mark(await written(book));
    expect(at(again.book, 'G4')).toEqual({ note: 'Measured twice.', fill: undefined });
    expect(at(again.book, 'F5').fill).toBe('FFFFC9C9');
    expect(at(again.book, 'F5').note?.match(/✎/g)).toHaveLength(1);
    expect(again.book.worksheets.filter(({ name }) => name === 'To mend')).toHaveLength(1);
  });

  it('of a list of openings as text is a workbook', async () => {
    const bytes = Buffer.from('Cabinet,W,H,Hinge\nB1,=1+1,30,left\nB2,14 3/8",30",left\n');
    const { value } = readCsv(bytes, 'a.csv');
    const { book, copy, found } = await markRead(bytes, value ?? { file: '', sheets: [] });
    expect(found).toEqual(['Cabinets!B2 error length-unreadable']);
    expect(at(book, 'B2').fill).toBe('FFFFC9C9');
    expect(book.getWorksheet('Cabinets')?.getCell('B2').value).toBe('=1+1');
    expect((await mark(copy)).found).toEqual(found);
  });

  it('of a workbook that would stop the library has the cells of it', async () => {
    const row = textRow(2, ['B1', 'wide', '30', 'left']);
    const merges = '<mergeCells><mergeCell ref="F1:XFD1048576"/></mergeCells>';
    const bytes = archive(workbookParts(`<sheetData>${HEADINGS}${row}</sheetData>${merges}`));
    const { value } = await readXlsx(bytes, 'a.xlsx');
    const { book, found } = await markRead(bytes, value ?? { file: '', sheets: [] }, {
      seconds: 2,
      heapMegabytes: 320,
    });
    expect(found).toEqual(['Cabinets!B2 error length-unreadable']);
    expect(at(book, 'B2').fill).toBe('FFFFC9C9');
  });
});
