import { openBook } from './book.ts';
import { type Met, plainSheet } from './plain-sheet.ts';
import { pack } from './zip.ts';

/** A workbook rewritten so that any library reads it quickly: its archive, and what a library is not asked to read. */
export type PlainBook = {
  readonly bytes: Uint8Array;
  /** In the order of the sheets. */
  readonly sheets: readonly { readonly name: string; readonly hidden: boolean; readonly merged: readonly string[] }[];
  readonly written: readonly string[];
};

/** Rewrites a workbook. Throws a `Refusal` where it is damaged, unsafe or too large. */
export function plainBook(bytes: Uint8Array): PlainBook {
  const book = openBook(bytes);
  const met: Met = { cells: 0, styles: { written: [] } };
  const sheets = book.sheets.map(sheet => ({ ...sheet, ...plainSheet(book, sheet.name, sheet.part, met) }));
  const files: readonly (readonly [string, string])[] = [
    ['[Content_Types].xml', contentTypes(sheets.length)],
    ['_rels/.rels', relations([['officeDocument', 'xl/workbook.xml']])],
    ['xl/workbook.xml', main(sheets.length)],
    [
      'xl/_rels/workbook.xml.rels',
      relations([...sheets.map((_, index) => ['worksheet', partOf(index)] as const), ['styles', 'styles.xml']]),
    ],
    ['xl/styles.xml', styleSheet(met.styles.written)],
    ...sheets.map(({ xml }, index) => [`xl/${partOf(index)}`, xml] as const),
  ];
  return {
    bytes: pack(files),
    sheets: sheets.map(({ name, hidden, merged }) => ({ name, hidden, merged })),
    written: met.styles.written,
  };
}

const partOf = (index: number): string => `worksheets/sheet${index + 1}.xml`;
const HEAD = '<?xml version="1.0" encoding="UTF-8"?>';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RELATION = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

const contentTypes = (sheets: number): string =>
  `${HEAD}<Types xmlns="${PACKAGE}/content-types">` +
  '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
  `<Override PartName="/xl/workbook.xml" ContentType="${TYPE}.sheet.main+xml"/>` +
  `<Override PartName="/xl/styles.xml" ContentType="${TYPE}.styles+xml"/>` +
  times(sheets, index => `<Override PartName="/xl/${partOf(index)}" ContentType="${TYPE}.worksheet+xml"/>`) +
  '</Types>';

const relations = (all: readonly (readonly [type: string, target: string])[]): string =>
  `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">` +
  all
    .map(
      ([type, target], index) => `<Relationship Id="rId${index + 1}" Type="${RELATION}/${type}" Target="${target}"/>`,
    )
    .join('') +
  '</Relationships>';

/** Sheets are numbered: their own names come back from `PlainBook`, whatever is in them. */
const main = (sheets: number): string =>
  `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${RELATION}"><sheets>` +
  times(sheets, index => `<sheet name="${index + 1}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`) +
  '</sheets></workbook>';

/** A text that number formats write goes by its number in `written`: it may hold marks that a format cannot quote. */
const styleSheet = (written: readonly string[]): string =>
  `${HEAD}<styleSheet xmlns="${MAIN}"><numFmts>` +
  times(written.length, index => `<numFmt numFmtId="${164 + index}" formatCode="0&quot;${index}&quot;"/>`) +
  '</numFmts><fonts><font/></fonts><fills><fill/></fills><borders><border/></borders>' +
  '<cellStyleXfs><xf/></cellStyleXfs><cellXfs><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/>' +
  times(written.length, index => `<xf numFmtId="${164 + index}" applyNumberFormat="1"/>`) +
  '</cellXfs></styleSheet>';

/** The text that a number format of the plain form stands for. */
export const writtenBy = (format: string, written: readonly string[]): string =>
  written[Number(/^0"(\d+)"$/.exec(format)?.[1] ?? Number.NaN)] ?? '';

const times = (count: number, each: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => each(index)).join('');
