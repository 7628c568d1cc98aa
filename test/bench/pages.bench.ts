import { pathToFileURL } from 'node:url';
import { deflateSync, inflateSync } from 'node:zlib';
import { barcodeFor } from '../../src/codes/barcode.ts';
import type { About } from '../../src/render/bind.ts';
import type { Section } from '../../src/render/markup.ts';
import type { Item, Page } from '../../src/render/page.ts';
import type { Symbology } from '../../src/render/symbols.ts';
import { fontFile } from '../support/font-file.ts';
import { bundled } from './bundled.ts';
import { type Measurement, peakMemory, timed } from './measurement.ts';

/**
 * Route sheets of 28 rows and 8 columns with real fractions and a symbol in each row. Ours are made from a template:
 * filled, laid out, drawn and bound. One peer makes the same sheets of the same data, as its manual shows it: rows at
 * fixed heights, words in columns by its own breaking of lines, the same symbols. The others are handed the finished
 * places of every word, line and bar and only draw them.
 */
const PAGES = 2000;
const ROWS = 28;
/** Each piece stands on the sheets of seven operations. */
const PIECES = (PAGES * ROWS) / 7;
/** It is too slow for more. */
const LIB_PAGES = 100;

const TEMPLATE = `<section title="Route sheet {{sheet}}" bookmark="r{{sheet}}" margin="0.5in">
<header><t style="small">Kitchen · J-2025-031 · revision B</t><rule/></header>
<footer><rule/><row><col><t style="small">Ash Lane</t></col><col><t style="small" align="right">Page <page/> of <pages/></t></col></row></footer>
<t style="heading">Cut to length: sheet {{sheet}}</t>
<table pad="2" widths="24 78 58 * 56 46 40 135" aligns="left left left left right right right left">
<tr head="yes"><td>Done</td><td>Piece</td><td>Role</td><td>Cabinet</td><td>Length</td><td>Width</td><td>Thick</td><td>Tag</td></tr>
{{#each rows}}<tr><td><box/></td><td bold="yes">{{code}}</td><td>{{role}}</td><td>{{cabinet}}</td><td bold="yes">{{long}}</td><td>{{wide}}</td><td>3/4</td><td><bar code="{{tag}}" height="14"/></td></tr>
{{/each}}</table></section>`;

const ROLES = ['stile left', 'stile right', 'rail top', 'rail bottom', 'panel'];

const sheetData = (sheet: number) => ({
  sheet,
  rows: Array.from({ length: ROWS }, (_, row) => {
    const number = (sheet * ROWS + row) % PIECES;
    const code = `B${Math.floor(number / 5)}.A.1L-${ROLES[number % 5]?.slice(0, 2).toUpperCase()}`;
    const cabinet = `Base cabinet ${Math.floor(number / 5)}`;
    const long = `${10 + (number % 60)} ${1 + 2 * (number % 16)}/32`;
    return {
      code,
      role: ROLES[number % 5],
      cabinet,
      long,
      wide: `2 ${1 + 2 * (number % 4)}/8`,
      tag: barcodeFor('J', code),
    };
  }),
});

const { bind, meaningOf, openDraw, openFlow, openFonts, openSymbols, prepare, readMarkup } = (await import(
  pathToFileURL(bundled('pages-render')).href
)) as typeof import('./pages-render.ts');

const fonts = openFonts(fontFile('400Regular'), fontFile('600SemiBold'));

const ABOUT: About = {
  title: 'Route sheets',
  subject: '',
  author: '',
  program: 'stilebook',
  language: 'en',
  date: '2025-03-14',
  attachments: [],
};

function* sections(count: number): Generator<Section> {
  const fill = prepare([{ file: 'templates/route.hbs', text: TEMPLATE }], {});
  for (let sheet = 1; sheet <= count; sheet += 1) yield* readMarkup(fill('route', sheetData(sheet)).value).value;
}

function* layOut(count: number): Generator<Page> {
  const flow = openFlow({ paper: 'letter', fonts, symbols: openSymbols(), complain: () => {} });
  for (const section of sections(count)) yield* flow.pagesOf(section, new Map());
}

const bound = async (pages: Iterable<Page>): Promise<Uint8Array> => (await bind(pages, openDraw(fonts), ABOUT)).pdf;

export async function measure(): Promise<readonly Measurement[]> {
  const few = await timed(() => bound(layOut(200)));
  const all = await timed(() => bound(layOut(PAGES)));
  const memory = peakMemory();
  const pages = [...layOut(PAGES)];
  if (pages.length !== PAGES) throw new Error(`${pages.length} pages were laid out: a sheet takes more than one`);
  const printed = await timed(() => bound(pages));
  const draw = openDraw(fonts);
  const contents = pages.map(page => inflateSync(draw.page(page).head));
  const floor = await timed(() => contents.map(content => deflateSync(content)));
  const kit = await timed(() => byPdfKit(kit => drawn(kit, pages)));
  const made = await timed(() => byPdfKit(kit => fromData(kit, PAGES)));
  const lib = await timed(() => byPdfLib(pages.slice(0, LIB_PAGES)));

  const rate = (count: number, { processorSeconds }: { readonly processorSeconds: number }) =>
    Math.round(count / processorSeconds);
  const pdfkit = { name: 'pdfkit, drawing the same', value: rate(PAGES, kit) };
  const deflate = { name: 'deflate of the same contents', value: rate(PAGES, floor) };
  const unit = 'pages/s of processor';
  return [
    {
      what: `${PAGES} route sheets laid out already: drawn and bound`,
      unit,
      ours: rate(PAGES, printed),
      peer: pdfkit,
      floor: deflate,
      target: '≥ 2 × pdfkit',
      met: rate(PAGES, printed) >= 2 * pdfkit.value,
    },
    {
      what: `${PAGES} route sheets from template to file`,
      unit,
      ours: rate(PAGES, all),
      peer: { name: 'pdfkit, from the same data', value: rate(PAGES, made) },
      floor: deflate,
      target: '≥ 2 × pdfkit',
      met: rate(PAGES, all) >= 2 * rate(PAGES, made),
    },
    {
      what: `${PAGES} route sheets from template to file, drawText on ${LIB_PAGES}`,
      unit,
      ours: rate(PAGES, all),
      peer: { name: 'pdf-lib drawText', value: rate(LIB_PAGES, lib) },
    },
    { what: '200 route sheets from template to file, cold', unit, ours: rate(200, few) },
    { what: `${PAGES} route sheets, peak memory`, unit: 'MB', ours: memory, target: '≤ 400 MB', met: memory <= 400 },
    { what: `${PAGES} route sheets, size of the file`, unit: 'KB', ours: Math.round(all.value.length / 1024) },
  ];
}

type SymbolItem = Extract<Item, { kind: 'symbol' }>;

const readable = (set: string): string => Array.from(set, sign => meaningOf(sign.charCodeAt(0))).join('');

const barsOf = ({ dark }: Symbology): readonly (readonly [across: number, wide: number])[] =>
  Array.from({ length: dark.length / 4 }, (_, bar) => [dark[4 * bar] ?? 0, dark[4 * bar + 2] ?? 0]);

async function byPdfKit(fill: (kit: PDFKit.PDFDocument) => void): Promise<number> {
  const { default: PdfKit } = await import('pdfkit');
  const kit = new PdfKit({ autoFirstPage: false, bufferPages: false });
  let size = 0;
  const done = new Promise<number>(resolve => {
    kit.on('data', (chunk: Buffer) => {
      size += chunk.length;
    });
    kit.on('end', () => resolve(size));
  });
  kit.registerFont('R', Buffer.from(fontFile('400Regular')));
  kit.registerFont('B', Buffer.from(fontFile('600SemiBold')));
  fill(kit);
  kit.end();
  return done;
}

function drawn(kit: PDFKit.PDFDocument, pages: readonly Page[]): void {
  for (const page of pages) {
    kit.addPage({ size: [page.width, page.height], margin: 0 });
    for (const item of page.items) {
      if (item.kind === 'text') {
        kit.font(item.bold ? 'B' : 'R', item.size);
        kit.text(readable(item.set), item.x, item.y, { lineBreak: false, baseline: 'alphabetic' });
      } else if (item.kind === 'line') {
        kit.lineWidth(item.weight).moveTo(item.x1, item.y1).lineTo(item.x2, item.y2).stroke();
      } else if (item.kind === 'frame') {
        kit.lineWidth(item.weight).rect(item.x, item.y, item.width, item.height).stroke();
      } else if (item.kind === 'symbol') {
        barsBy(kit, item.symbol, item);
      }
    }
  }
}

function barsBy(kit: PDFKit.PDFDocument, symbol: Symbology, at: Pick<SymbolItem, 'x' | 'y' | 'module' | 'tall'>): void {
  for (const [across, wide] of barsOf(symbol)) kit.rect(at.x + across * at.module, at.y, wide * at.module, at.tall);
  kit.fill();
}

/** Columns as the template has them: where each begins, and how wide its words may be. */
const COLUMNS = [24, 78, 58, 105, 56, 46, 40].map((wide, at, all) => ({
  x: 36 + all.slice(0, at).reduce((sum, each) => sum + each, 0),
  width: wide - 8,
}));
const RIGHT = new Set([4, 5, 6]);
const HEADS = ['Done', 'Piece', 'Role', 'Cabinet', 'Length', 'Width', 'Thick', 'Tag'];

function fromData(kit: PDFKit.PDFDocument, count: number): void {
  const { bar } = openSymbols();
  const rule = (y: number): void => void kit.lineWidth(0.5).moveTo(36, y).lineTo(576, y).stroke();
  const cell = (text: string, at: number, y: number): void => {
    const { x = 441, width = 135 } = COLUMNS[at] ?? {};
    kit.text(text, x + 4, y, { width, align: RIGHT.has(at) ? 'right' : 'left' });
  };
  for (let sheet = 1; sheet <= count; sheet += 1) {
    kit.addPage({ size: 'LETTER', margin: 0 });
    kit.font('R', 9).text('Kitchen · J-2025-031 · revision B', 36, 36, { width: 540 });
    rule(49);
    kit.font('B', 13).text(`Cut to length: sheet ${sheet}`, 36, 55, { width: 540 });
    kit.fontSize(9);
    for (const [at, head] of HEADS.entries()) cell(head, at, 76);
    rule(90);
    for (const [row, piece] of sheetData(sheet).rows.entries()) {
      const y = 92 + 22.5 * row;
      kit
        .lineWidth(1)
        .rect(40, y + 3, 11, 11)
        .stroke();
      const words = ['', piece.code, piece.role ?? '', piece.cabinet, piece.long, piece.wide, '3/4'];
      for (const [at, text] of words.entries()) {
        if (at === 0) continue;
        kit.font(at === 1 || at === 4 ? 'B' : 'R', 10);
        cell(text, at, y + 3);
      }
      const symbol = bar(piece.tag);
      if (symbol !== undefined) barsBy(kit, symbol, { x: 450, y: y + 2, module: 0.72, tall: 14 });
      rule(y + 22);
    }
    rule(740);
    kit.font('R', 9).text('Ash Lane', 36, 744, { width: 270 });
    kit.text(`Page ${sheet} of ${count}`, 306, 744, { width: 270, align: 'right' });
  }
}

async function byPdfLib(pages: readonly Page[]): Promise<number> {
  const { PDFDocument } = await import('pdf-lib');
  const document = await PDFDocument.create();
  // Its own way to embed fonts does not take this family; the drawing is what is timed.
  const regular = await document.embedFont('Helvetica');
  const bold = await document.embedFont('Helvetica-Bold');
  for (const { width, height, items } of pages) {
    const page = document.addPage([width, height]);
    for (const item of items) {
      if (item.kind === 'text') {
        const text = readable(item.set);
        page.drawText(text, { x: item.x, y: height - item.y, size: item.size, font: item.bold ? bold : regular });
      } else if (item.kind === 'line') {
        const [start, end] = [
          { x: item.x1, y: height - item.y1 },
          { x: item.x2, y: height - item.y2 },
        ];
        page.drawLine({ start, end, thickness: item.weight });
      } else if (item.kind === 'frame') {
        const corner = { x: item.x, y: height - item.y - item.height };
        page.drawRectangle({ ...corner, width: item.width, height: item.height, borderWidth: item.weight });
      } else if (item.kind === 'symbol') {
        const y = height - item.y - item.tall;
        for (const [across, wide] of barsOf(item.symbol)) {
          page.drawRectangle({ x: item.x + across * item.module, y, width: wide * item.module, height: item.tall });
        }
      }
    }
  }
  return (await document.save()).length;
}
