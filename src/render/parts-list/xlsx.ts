import { zip } from './zip.ts';

/** A table with bold heads that stay in sight, and how wide its columns are, in figures. */
export type Table = {
  readonly title: string;
  readonly heads: readonly string[];
  readonly widths: readonly number[];
  readonly rows: readonly (readonly (string | number)[])[];
};

/**
 * A workbook of one sheet (ECMA-376, parts 1 and 2), written by hand: a spreadsheet library takes longer to load than a
 * small packet takes to print. Words are written as words, so that no cell is a formula.
 */
export const xlsx = ({ title, heads, widths, rows }: Table): Uint8Array =>
  zip([
    part('[Content_Types].xml', CONTENT_TYPES),
    part(
      '_rels/.rels',
      `<Relationships xmlns="${PACKAGE}/relationships">${related('officeDocument', 'xl/workbook.xml')}</Relationships>`,
    ),
    part(
      'xl/workbook.xml',
      `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="${escaped(sheetName(title))}" sheetId="1" r:id="worksheet"/></sheets></workbook>`,
    ),
    part(
      'xl/_rels/workbook.xml.rels',
      `<Relationships xmlns="${PACKAGE}/relationships">${related('worksheet', 'worksheets/sheet1.xml')}${related('styles', 'styles.xml')}</Relationships>`,
    ),
    part('xl/styles.xml', STYLES),
    part('xl/worksheets/sheet1.xml', worksheet(heads, widths, rows)),
  ]);

const part = (name: string, body: string) => ({
  name,
  text: `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${body}`,
});

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const KIND = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

const CONTENT_TYPES = `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="${KIND}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${KIND}.worksheet+xml"/><Override PartName="/xl/styles.xml" ContentType="${KIND}.styles+xml"/></Types>`;

/** Style 0 for cells, 1 for heads. */
const STYLES = `<styleSheet xmlns="${MAIN}"><fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf xfId="0"/><xf xfId="0" fontId="1" applyFont="1"/></cellXfs></styleSheet>`;

const related = (kind: string, target: string): string =>
  `<Relationship Id="${kind}" Type="${OFFICE}/${kind}" Target="${target}"/>`;

function worksheet(heads: Table['heads'], widths: Table['widths'], rows: Table['rows']): string {
  const view = `<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>`;
  const columns = widths.map((width, at) => `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"/>`);
  const row = (cells: readonly (string | number)[], number: number, style = '') =>
    `<row r="${number}">${cells.map((cell, column) => cellOf(cell, `${LETTERS[column]}${number}`, style)).join('')}</row>`;
  const written = rows.map((cells, index) => row(cells, index + 2));
  return `<worksheet xmlns="${MAIN}">${view}<cols>${columns.join('')}</cols><sheetData>${row(heads, 1, BOLD)}${written.join('')}</sheetData></worksheet>`;
}

/** Of the columns: a parts list has fewer. */
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
const BOLD = ' s="1"';

const cellOf = (value: string | number, place: string, style: string): string =>
  typeof value === 'number'
    ? `<c r="${place}"${style}><v>${value}</v></c>`
    : `<c r="${place}" t="inlineStr"${style}><is><t xml:space="preserve">${escaped(value)}</t></is></c>`;

/** What no XML can hold is shown as U+FFFD. */
const escaped = (text: string): string =>
  text.replace(/(?![\t\n])[\p{Cc}\p{Cs}\ufffe\uffff]/gu, '\ufffd').replace(/[&<>"]/g, sign => SIGNS[sign] ?? sign);

const SIGNS: { readonly [sign: string]: string } = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** A sheet has a name of at most 31 characters without some signs. */
const sheetName = (name: string): string => name.replace(/[*?:\\/[\]]/g, ' ').slice(0, 31);
