import ExcelJS from 'exceljs';
import type { Mark, MarkWords } from './marks.ts';
import { TO_MEND } from './own-sheets.ts';
import type { CellValue, Workbook } from './workbook.ts';
import { readDirectory, UNPACKED_MAX, unpack } from './xlsx/zip.ts';

/**
 * A copy of a workbook with its findings marked: the cells coloured, each with a note that says what is wrong and how to
 * mend it, and a first sheet that lists all of them with links. Marks of an earlier time are taken off first. Undefined
 * where the library cannot read and write this workbook.
 */
export async function markUp(
  bytes: Uint8Array,
  marks: readonly Mark[],
  words: MarkWords,
): Promise<Uint8Array | undefined> {
  try {
    unpackAll(bytes);
    const book = new ExcelJS.Workbook();
    // The library's types ask for its own idea of a Buffer.
    await book.xlsx.load(bytes as unknown as ExcelJS.Buffer);
    takeOffMarks(book);
    return await marked(book, marks, words);
  } catch {
    return undefined;
  }
}

/** The same for what can be read of a workbook, where the library cannot write the workbook itself; its looks are lost. */
export function markUpCells(workbook: Workbook, marks: readonly Mark[], words: MarkWords): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  for (const { name, hidden, rows } of workbook.sheets) {
    const sheet = book.addWorksheet(uniqueName(book, name), { state: hidden ? 'hidden' : 'visible' });
    for (const row of rows) {
      if (row.hidden) sheet.getRow(row.number).hidden = true;
      for (const { column, value } of row.cells) write(sheet.getCell(`${column}${row.number}`), value);
    }
  }
  return marked(book, marks, words);
}

/** An archive that says less than it unpacks to, or too much altogether, is not for the library. */
function unpackAll(bytes: Uint8Array): void {
  const entries = [...readDirectory(bytes).values()];
  if (entries.reduce((total, { size }) => total + size, 0) > UNPACKED_MAX) throw new Error('too large');
  for (const entry of entries) unpack(bytes, entry);
}

async function marked(book: ExcelJS.Workbook, marks: readonly Mark[], words: MarkWords): Promise<Uint8Array> {
  for (const mark of marks) {
    if (mark.cell !== undefined && mark.severity !== 'note') markCell(book, mark);
  }
  addList(book, marks, words);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

const COLOURS = { error: 'FFFFC9C9', warning: 'FFFFF0B3' } as const;
/** What our notes begin with, and what sets them off from a note that was there before. */
const SIGN = '✎ ';
const BEFORE = '\n— — —\n';

function markCell(book: ExcelJS.Workbook, { sheet, cell: name, severity, what, mend }: Mark): void {
  const cell = name === undefined ? undefined : book.getWorksheet(sheet)?.getCell(name);
  if (cell === undefined || severity === 'note') return;
  const before = noteText(cell);
  const mine = `${SIGN}${what}\n${mend}`;
  const isMarked = before.startsWith(SIGN);
  const text = before === '' ? mine : `${mine}${isMarked ? '\n' : BEFORE}${before}`;
  cell.note = { texts: [{ text }] };
  // Errors come first, and their colour stays. Cells share their styles: each gets its own before it is changed.
  if (!isMarked)
    cell.style = { ...cell.style, fill: { type: 'pattern', pattern: 'solid', fgColor: { argb: COLOURS[severity] } } };
}

const noteText = ({ note }: ExcelJS.Cell): string =>
  typeof note === 'string' ? note : (note?.texts ?? []).map(({ text }) => text).join('');

/** Takes off what an earlier marking put on: its sheet, its colours, its notes. */
function takeOffMarks(book: ExcelJS.Workbook): void {
  for (const sheet of book.worksheets) {
    if (sheet.name === TO_MEND) book.removeWorksheet(sheet.id);
    else sheet.eachRow({ includeEmpty: false }, row => row.eachCell({ includeEmpty: true }, takeOffMark));
  }
}

function takeOffMark(cell: ExcelJS.Cell): void {
  const note = noteText(cell);
  if (!note.startsWith(SIGN)) return;
  const before = note.split(BEFORE)[1];
  if (before === undefined) Reflect.deleteProperty(cell, '_comment');
  else cell.note = before;
  const { fill, ...style } = cell.style;
  const isOurs = fill?.type === 'pattern' && Object.values<string | undefined>(COLOURS).includes(fill.fgColor?.argb);
  if (isOurs) cell.style = style;
}

const LIST_WIDTH = 70;
const LINE_POINTS = 15;

function addList(book: ExcelJS.Workbook, marks: readonly Mark[], words: MarkWords): void {
  const list = book.addWorksheet(TO_MEND, {
    views: [{ state: 'frozen', ySplit: 1 }],
    properties: { tabColor: { argb: COLOURS.error } },
    pageSetup: { orientation: 'landscape', fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
  });
  // The library keeps sheets in the order of this number, and gives ours the last one.
  Object.assign(list, { orderNo: -1 });
  list.columns = [{ width: 10 }, { width: 18 }, { width: LIST_WIDTH }, { width: LIST_WIDTH }];
  const headings = list.addRow(words.headings);
  headings.font = { bold: true };
  for (const { sheet, cell, where, severity, what, mend } of marks) {
    const row = list.addRow([words.severities[severity], where, what, mend]);
    row.alignment = { wrapText: true, vertical: 'top' };
    // No program works out the height of a row that it did not write itself.
    row.height = LINE_POINTS * Math.max(...[what, mend].map(text => Math.ceil(text.length / (LIST_WIDTH - 8))));
    const target = book.getWorksheet(sheet);
    if (target === undefined) continue;
    row.getCell(2).value = { text: where, hyperlink: `#'${target.name.replace(/'/g, "''")}'!${cell ?? 'A1'}` };
    row.getCell(2).font = { underline: true, color: { argb: 'FF1F4E9E' } };
  }
  book.views = [{ x: 0, y: 0, width: 20_000, height: 12_000, firstSheet: 0, activeTab: 0, visibility: 'visible' }];
}

/** Names that the library will have: up to 31 characters, without the marks of a formula, and each of its own. */
function uniqueName(book: ExcelJS.Workbook, name: string): string {
  const plain =
    name
      .replace(/[*?:\\/[\]]/g, ' ')
      .replace(/^'+|'+$/g, '')
      .slice(0, 31)
      .trim() || 'Sheet';
  if (book.getWorksheet(plain) === undefined) return plain;
  return `${plain.slice(0, 24)} (${book.worksheets.length + 1})`;
}

function write(cell: ExcelJS.Cell, value: CellValue): void {
  switch (value.kind) {
    case 'text':
      cell.value = value.text;
      // Text stays text when it is typed over: 3/4 is no date.
      cell.numFmt = '@';
      return;
    case 'number':
      cell.value = value.number;
      if (value.format !== '') cell.numFmt = value.format === '%' ? '0%' : `General"${value.format.replace(/"/g, '')}"`;
      return;
    case 'truth':
      cell.value = value.truth;
      return;
    case 'date':
      cell.value = new Date(Date.UTC(value.year, value.month - 1, value.day));
      cell.numFmt = 'yyyy-mm-dd';
      return;
    case 'error':
      cell.value = value.error;
      return;
    case 'unfinished':
    case 'merged':
      return;
  }
}
