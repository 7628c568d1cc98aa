import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { importJob } from '../../src/import/index.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';
import type { CellValue, Workbook } from '../../src/import/workbook.ts';
import { archive, HEADINGS, main, part, relations, textRow, workbookParts } from '../support/archive.ts';

const ROW = textRow(2, ['B1', '14 3/8', '30', 'left']);
const data = (rows: string): string => `<sheetData>${rows}</sheetData>`;

const codes = async (bytes: Uint8Array): Promise<readonly string[]> =>
  (await readXlsx(bytes, 'file.xlsx')).diagnostics.map(({ code }) => code);

const read = async (bytes: Uint8Array): Promise<Workbook> => {
  const { value, diagnostics } = await readXlsx(bytes, 'file.xlsx');
  expect(diagnostics).toEqual([]);
  return value ?? { file: '', sheets: [] };
};

/** The value of one cell of the second row. */
const cell = async (markup: string, more: Parameters<typeof workbookParts>[1] = []): Promise<CellValue | undefined> => {
  const book = await read(archive(workbookParts(data(`${HEADINGS}<row r="2">${markup}</row>`), more)));
  return book.sheets[0]?.rows[1]?.cells[0]?.value;
};

describe('files that are no workbook are refused in plain words', () => {
  const good = archive(workbookParts(data(HEADINGS + ROW)));
  const compound = (text: string) =>
    Buffer.concat([Buffer.from('d0cf11e0a1b11ae1', 'hex'), Buffer.alloc(600), Buffer.from(text, 'utf16le')]);
  const many = (count: number) => Array.from({ length: count }, (_, index) => part(`x${index}`, ''));
  it.each<[string, Uint8Array, string]>([
    ['an empty file', new Uint8Array(), 'file-empty'],
    ['an old .xls', compound('Workbook'), 'file-is-old-workbook'],
    ['a locked one', compound('EncryptedPackage'), 'file-has-password'],
    ['a web page', Buffer.from('\n<!DOCTYPE html><table></table>'), 'file-is-no-workbook'],
    ['a PDF', Buffer.from('%PDF-1.7'), 'file-is-no-workbook'],
    ['plain text', Buffer.from('Cabinet,Width'), 'file-is-no-workbook'],
    ['noise', Buffer.from([1, 2, 3, 0, 255]), 'file-is-no-workbook'],
    ['an archive of something else', archive([part('word/document.xml', '<a/>')]), 'file-is-no-workbook'],
    ['a copy that stopped half-way', good.subarray(0, good.length / 2), 'file-damaged'],
    ['a copy that lost its first bytes', good.subarray(40), 'file-is-no-workbook'],
    [
      'an archive with a password',
      archive(workbookParts(data(ROW)).map(each => ({ ...each, flags: 1 }))),
      'file-has-password',
    ],
    [
      'a way of packing that is not known',
      archive(workbookParts(data(ROW)).map(each => ({ ...each, method: 12 }))),
      'file-damaged',
    ],
    [
      'a part that is there twice',
      archive([...workbookParts(data(ROW)), part('xl/workbook.xml', '<a/>')]),
      'file-damaged',
    ],
    [
      'a part that is larger than it says',
      archive(
        workbookParts(data(ROW), [
          part('xl/styles.xml', 'x'.repeat(1000)),
          part('xl/worksheets/sheet1.xml', `<a>${'y'.repeat(5000)}</a>`, { saysSize: 10 }),
        ]),
      ),
      'file-damaged',
    ],
    ['thousands of parts', archive([...workbookParts(data(ROW)), ...many(3000)]), 'file-damaged'],
    [
      'a sheet that is not in the archive',
      archive(
        workbookParts('', [
          part('xl/_rels/workbook.xml.rels', relations([['rId1', 'worksheet', 'worksheets/none.xml']])),
        ]),
      ),
      'file-damaged',
    ],
    [
      'markup that breaks off',
      archive(workbookParts('', [part('xl/worksheets/sheet1.xml', '<worksheet><sheetData>')])),
      'file-damaged',
    ],
    [
      'entities of its own',
      archive(
        workbookParts('', [
          part('xl/worksheets/sheet1.xml', '<!DOCTYPE a [<!ENTITY b "c">]><worksheet>&b;</worksheet>'),
        ]),
      ),
      'file-has-foreign-entities',
    ],
    [
      'a text that is not there',
      archive(workbookParts(data('<row r="1"><c r="A1" t="s"><v>7</v></c></row>'))),
      'file-damaged',
    ],
    [
      'a row that no sheet has',
      archive(workbookParts(data('<row r="4294967295"><c t="n"><v>1</v></c></row>'))),
      'file-damaged',
    ],
    [
      'one row twice: the library would lose the first',
      archive(workbookParts(data(HEADINGS + ROW + ROW))),
      'file-damaged',
    ],
    [
      'a cell in another row than its own',
      archive(workbookParts(data('<row r="1"><c r="A7"><v>1</v></c></row>'))),
      'file-damaged',
    ],
    [
      'markup nested a thousand deep',
      archive(workbookParts(`${'<a>'.repeat(1000)}${'</a>'.repeat(1000)}`)),
      'file-damaged',
    ],
    [
      'more rows than a job has',
      archive(
        workbookParts(
          data(Array.from({ length: 12_001 }, (_, row) => `<row r="${row + 1}"><c><v>1</v></c></row>`).join('')),
        ),
      ),
      'sheet-too-large',
    ],
    [
      'more columns than a job has',
      archive(workbookParts(data('<row r="1"><c r="XFD1"><v>1</v></c></row>'))),
      'sheet-too-large',
    ],
    [
      'more cells than a job has',
      archive(
        workbookParts(
          data(
            Array.from({ length: 1000 }, (_, row) => `<row r="${row + 1}">${'<c><v>1</v></c>'.repeat(200)}</row>`).join(
              '',
            ),
          ),
        ),
      ),
      'sheet-too-large',
    ],
    [
      'a part of 49 MB in a few KB',
      archive(
        workbookParts('', [part('xl/worksheets/sheet1.xml', `<worksheet>${' '.repeat(49_000_000)}</worksheet>`)]),
      ),
      'file-unpacks-too-large',
    ],
    ['more than any workbook has', new Uint8Array(26_000_000), 'file-too-large'],
  ])('%s', async (_, bytes, code) => {
    expect(await codes(bytes)).toEqual([code]);
  });
});

describe('workbooks that stop a library for hours are read in no time', () => {
  it.each([
    [
      'lists over whole sheets',
      `${data(HEADINGS + ROW)}<dataValidations count="1"><dataValidation type="list" sqref="A1:XFD1048576"><formula1>"a,b"</formula1></dataValidation></dataValidations>`,
    ],
    [
      'merges over whole sheets',
      `${data(HEADINGS + ROW)}<mergeCells count="1"><mergeCell ref="F1:XFD1048576"/></mergeCells>`,
    ],
    [
      'formats over whole sheets',
      `<cols><col min="1" max="16384" width="9"/></cols>${data(HEADINGS + ROW)}<conditionalFormatting sqref="A1:XFD1048576"/>`,
    ],
    [
      '100,000 rows of nothing but style',
      data(
        HEADINGS + ROW + Array.from({ length: 100_000 }, (__, row) => `<row r="${row + 3}"><c s="3"/></row>`).join(''),
      ),
    ],
    ['a claim to a million rows', `<dimension ref="A1:XFD1048576"/>${data(HEADINGS + ROW)}`],
    ['the last row of all', data(`${HEADINGS}${ROW}<row r="1048576"><c><v>1</v></c></row>`)],
  ])('%s', async (_, sheet) => {
    const started = performance.now();
    const names = main(
      '<sheet name="Cabinets" sheetId="1" r:id="rId1"/>',
      '<definedNames><definedName name="_xlnm.Print_Area" localSheetId="0">Cabinets!$A$1:$XFD$1048576</definedName></definedNames>',
    );
    const book = await read(archive(workbookParts(sheet, [part('xl/workbook.xml', names)])));
    expect(importJob(book).value.openings.map(({ cabinet }) => cabinet)).toContain('B1');
    expect(performance.now() - started).toBeLessThan(4000);
  });
});

describe('what stands in a cell', () => {
  const styles = (formats: string, used: string) =>
    part(
      'xl/styles.xml',
      `<styleSheet><numFmts>${formats}</numFmts><cellXfs><xf numFmtId="0"/>${used}</cellXfs></styleSheet>`,
    );
  const format = (code: string) => [styles(`<numFmt numFmtId="164" formatCode="${code}"/>`, '<xf numFmtId="164"/>')];
  const strings = (markup: string) => [
    part(
      'xl/_rels/workbook.xml.rels',
      relations([
        ['rId1', 'worksheet', 'worksheets/sheet1.xml'],
        ['rId2', 'sharedStrings', '/xl/texts.xml'],
      ]),
    ),
    part('xl/texts.xml', `<sst>${markup}</sst>`),
  ];
  const text = (value: string): CellValue => ({ kind: 'text', text: value });
  it.each<[string, string, Parameters<typeof workbookParts>[1], CellValue | undefined]>([
    ['a number as it is written', '<c r="A2"><v>14.375</v></c>', [], { kind: 'number', number: 14.375, format: '' }],
    [
      'the noise of arithmetic, kept',
      '<c r="A2"><v>23.249999999999996</v></c>',
      [],
      { kind: 'number', number: 23.249999999999996, format: '' },
    ],
    ['a number without an end', '<c r="A2"><v>1e400</v></c>', [], text('1e400')],
    [
      'a fraction shown as one',
      '<c r="A2" s="1"><v>0.75</v></c>',
      format('# ?/?'),
      { kind: 'number', number: 0.75, format: '' },
    ],
    [
      'a unit in the format',
      '<c r="A2" s="1"><v>600</v></c>',
      format('0&quot; mm&quot;'),
      { kind: 'number', number: 600, format: ' mm' },
    ],
    [
      'a unit of escaped letters, which is no month',
      '<c r="A2" s="1"><v>600</v></c>',
      format('0\\ \\m\\m'),
      { kind: 'number', number: 600, format: ' mm' },
    ],
    [
      'an inch mark in the format',
      '<c r="A2" s="1"><v>14.5</v></c>',
      format('0.00\\&quot;'),
      { kind: 'number', number: 14.5, format: '"' },
    ],
    [
      'a percentage',
      '<c r="A2" s="1"><v>0.25</v></c>',
      [styles('', '<xf numFmtId="9"/>')],
      { kind: 'number', number: 0.25, format: '%' },
    ],
    [
      '3/4 that became the fourth of March',
      '<c r="A2" s="1"><v>46085</v></c>',
      format('d\\-mmm'),
      { kind: 'date', year: 2026, month: 3, day: 4 },
    ],
    [
      'a day counted from 1904',
      '<c r="A2" s="1"><v>44623</v></c>',
      [
        ...format('yyyy'),
        part('xl/workbook.xml', main('<sheet name="Cabinets" sheetId="1" r:id="rId1"/>', '<workbookPr date1904="1"/>')),
      ],
      { kind: 'date', year: 2026, month: 3, day: 4 },
    ],
    [
      'a day written out',
      '<c r="A2" t="d"><v>2026-03-04T00:00:00</v></c>',
      [],
      { kind: 'date', year: 2026, month: 3, day: 4 },
    ],
    ['a time of the day', '<c r="A2" s="1"><v>0.3125</v></c>', [styles('', '<xf numFmtId="20"/>')], text('07:30')],
    ['a formula by its result', '<c r="A2"><f>1+1</f><v>2</v></c>', [], { kind: 'number', number: 2, format: '' }],
    ['a formula whose result is text', '<c r="A2" t="str"><f>A1</f><v>a &amp;amp; b</v></c>', [], text('a &amp; b')],
    ['a formula whose result is no text', '<c r="A2" t="str"><f>""</f><v></v></c>', [], undefined],
    ['a formula without a result', '<c r="A2"><f>1+1</f></c>', [], { kind: 'unfinished' }],
    ['a formula that failed', '<c r="A2" t="e"><f>A1</f><v>#REF!</v></c>', [], { kind: 'error', error: '#REF!' }],
    ['a shared formula', '<c r="A2"><f t="shared" si="0"/><v>7</v></c>', [], { kind: 'number', number: 7, format: '' }],
    ['true', '<c r="A2" t="b"><v>1</v></c>', [], { kind: 'truth', truth: true }],
    [
      'a shared text in runs, without how it sounds',
      '<c r="A2" t="s"><v>0</v></c>',
      strings('<si><r><t>14 </t></r><r><t>3/8</t></r><rPh><t>x</t></rPh></si>'),
      text('14 3/8'),
    ],
    [
      'a text in runs in its place',
      '<c r="A2" t="inlineStr"><is><r><t>a</t></r><r><t xml:space="preserve"> b</t></r></is></c>',
      [],
      text('a b'),
    ],
    [
      'a character that XML has no place for',
      '<c r="A2" t="inlineStr"><is><t>a_x0007_b</t></is></c>',
      [],
      text('a\u0007b'),
    ],
    ['markup as text', '<c r="A2" t="inlineStr"><is><t>&lt;b&gt;&amp;lt;</t></is></c>', [], text('<b>&lt;')],
    ['a cell without its name', '<c><v>7</v></c>', [], { kind: 'number', number: 7, format: '' }],
  ])('%s', async (_, markup, more, value) => {
    expect(await cell(markup, more)).toEqual(value);
  });

  it('reads prefixes, UTF-16, parts of other names and hidden sheets and rows', async () => {
    const sheet = `<?xml version="1.0" encoding="utf-16"?><x:worksheet xmlns:x="urn:x"><x:sheetData><x:row r="1" hidden="1"><x:c r="B1" t="inlineStr"><x:is><x:t>ü</x:t></x:is></x:c></x:row></x:sheetData></x:worksheet>`;
    const bytes = archive(
      [
        part('_rels/.rels', relations([['r1', 'officeDocument', '/book/main.xml']])),
        part('book/main.xml', main('<sheet name="A" sheetId="9" state="veryHidden" r:id="r7"/>')),
        part('book/_rels/main.xml.rels', relations([['r7', 'worksheet', '../tables/one.xml']])),
        { name: 'tables/one.xml', bytes: Buffer.from(`\ufeff${sheet}`, 'utf16le') },
      ],
      'a comment behind the archive',
    );
    expect(await read(bytes)).toEqual({
      file: 'file.xlsx',
      sheets: [
        { name: 'A', hidden: true, rows: [{ number: 1, hidden: true, cells: [{ column: 'B', value: text('ü') }] }] },
      ],
    });
  });

  it('tells which cells lie under a merged area, where their row and column hold something', async () => {
    const rows = `${HEADINGS}${textRow(2, ['B1', '14 3/8'])}<row r="3"><c r="B3"><v>30</v></c></row>`;
    const book = await read(archive(workbookParts(`${data(rows)}<mergeCells><mergeCell ref="A2:A4"/></mergeCells>`)));
    expect(book.sheets[0]?.rows[2]?.cells).toEqual([
      { column: 'A', value: { kind: 'merged', area: 'A2:A4' } },
      { column: 'B', value: { kind: 'number', number: 30, format: '' } },
    ]);
  });
});

describe('a workbook that takes too much is given up', () => {
  const rows = Array.from({ length: 3000 }, (_, row) => textRow(row + 1, ['B1', '14 3/8', '30', 'left']));
  const bytes = archive(workbookParts(data(rows.join(''))));
  it.each([
    ['too much time', { seconds: 0.01, heapMegabytes: 320 }, 'file-takes-too-long'],
    ['too much memory', { seconds: 60, heapMegabytes: 12 }, 'file-takes-too-much-memory'],
  ])('%s', async (_, limits, code) => {
    const { diagnostics } = await readXlsx(bytes, 'file.xlsx', limits);
    expect(diagnostics.map(each => each.code)).toEqual([code]);
  });
});

describe('limits hold within the thread and outside of it', () => {
  it('reads the next workbook after one that was refused', async () => {
    expect(await codes(archive([part('a', '')]))).toEqual(['file-is-no-workbook']);
    const bytes = await readFile(new URL('../../fixtures/demo/small.xlsx', import.meta.url));
    expect(await codes(bytes)).toEqual([]);
  });

  it('reads several at once', async () => {
    const bytes = await readFile(new URL('../../fixtures/demo/small.xlsx', import.meta.url));
    const all = await Promise.all([1, 2, 3].map(() => readXlsx(bytes, 'small.xlsx')));
    expect(all.map(({ value }) => value?.sheets.length)).toEqual([2, 2, 2]);
  });
});
