import { createRequire } from 'node:module';
import { PDFiumLibrary } from '@hyzyla/pdfium';
import createQpdf from '@neslinesli93/qpdf-wasm';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** Words where they stand: points from the page's top left corner, `y` being the base line. */
export type Words = {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
  readonly upright: boolean;
};

export type ReadPage = {
  readonly width: number;
  readonly height: number;
  readonly words: readonly Words[];
  readonly text: string;
};

/** Opens a PDF with a reader that shares nothing with its writer. */
export const openPdf = (bytes: Uint8Array) =>
  getDocument({ data: bytes.slice(), disableFontFace: true, useSystemFonts: false, verbosity: 0 }).promise;

/** What a reader gets of each page: its words in the order of the file, blanks between lines. */
export async function readPages(bytes: Uint8Array): Promise<readonly ReadPage[]> {
  const document = await openPdf(bytes);
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent();
    const strings = items.flatMap(item => ('str' in item ? [item] : []));
    const words = strings.map(({ str, transform, width: wide }) => ({
      text: str,
      x: transform[4],
      y: height - transform[5],
      width: wide,
      size: Math.abs(transform[0] || transform[1]),
      upright: transform[1] === 0,
    }));
    pages.push({ width, height, words: words.filter(({ text }) => text.trim() !== ''), text: textOf(strings) });
  }
  await document.destroy();
  return pages;
}

const textOf = (strings: readonly { readonly str: string; readonly hasEOL: boolean }[]): string =>
  strings.map(({ str, hasEOL }) => str + (hasEOL ? '\n' : '')).join('');

/** A second reader's text of each page. */
export async function readText(bytes: Uint8Array): Promise<readonly string[]> {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(bytes);
  const texts = [...document.pages()].map(page => page.getText().replaceAll('\r\n', '\n'));
  document.destroy();
  library.destroy();
  return texts;
}

/** A picture in greys, 0 black to 255 white, row by row. */
export type Picture = { readonly width: number; readonly height: number; readonly grey: Uint8Array };

/** Pages as pictures at so many dots to the inch. */
export async function rasterise(
  bytes: Uint8Array,
  dpi: number,
  pages?: readonly number[],
): Promise<readonly Picture[]> {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(bytes);
  const pictures: Picture[] = [];
  for (const number of pages ?? [...document.pages()].map((_, index) => index)) {
    const render = { scale: dpi / 72, render: 'bitmap', colorSpace: 'BGRA' } as const;
    const { data, width, height } = await document.getPage(number).render(render);
    const grey = Uint8Array.from({ length: width * height }, (_, at) => data[4 * at + 1] ?? 0);
    pictures.push({ width, height, grey });
  }
  document.destroy();
  library.destroy();
  return pictures;
}

/** What a validity checker says of a file; nothing where it is sound. */
export async function faultsOf(bytes: Uint8Array): Promise<readonly string[]> {
  const said: string[] = [];
  const locateFile = () => createRequire(import.meta.url).resolve('@neslinesli93/qpdf-wasm/dist/qpdf.wasm');
  // It takes hold of the console when it is made, and of nothing else.
  const { log, error } = console;
  console.log = console.error = (line: string) => said.push(line);
  const qpdf = await createQpdf({ locateFile });
  Object.assign(console, { log, error });
  (qpdf.FS as unknown as { writeFile: (path: string, bytes: Uint8Array) => void }).writeFile('/in.pdf', bytes);
  const exit = qpdf.callMain(['--check', '/in.pdf']);
  return exit === 0 ? [] : [`exit ${exit}`, ...said];
}
