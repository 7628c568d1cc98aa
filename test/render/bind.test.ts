import { createCanvas, Path2D } from '@napi-rs/canvas';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../src/render/figure.ts';
import { meaningOf, typeset } from '../../src/render/typeset.ts';
import { faultsOf, openPdf, type Picture, rasterise, readPages, readText } from '../support/pdf.ts';
import { ABOUT, FONTS, pagesOf, pdfOf } from '../support/typeset.ts';

const TEMPLATE = `<section title="Cover ⅜ é" bookmark="cover"><t style="title">{{name}}</t><t to="parts">Parts <at to="parts"/></t></section>
<section title="Doors" bookmark="doors"><t>Doors</t>
{{#each doors}}<mark bookmark="{{this}}" title="{{this}}"/><t>{{this}} is 14 3/8 x 30 15/16+, 63/64 less 1/2</t><break/>{{/each}}<figure name="door"/></section>
<section title="Parts" bookmark="parts"><t>end</t></section>`;

const TRIANGLE = [
  [10, 10],
  [190, 10],
  [190, 90],
] as const;

const door: Figure = {
  width: 200,
  height: 120,
  marks: [
    { kind: 'line', x1: 0, y1: 0, x2: 200, y2: 0, weight: 0.5, dash: [4, 2] },
    { kind: 'polygon', points: TRIANGLE, closed: true, weight: 1, fill: 0.9 },
    { kind: 'circle', x: 100, y: 50, radius: 20, weight: 0.75, fill: 1 },
    { kind: 'text', x: 100, y: 113, text: '15 3/8', size: 10, align: 'centre', mask: true },
    { kind: 'text', x: 12, y: 55, text: '30 15/16', size: 10, align: 'centre', turn: 90, bold: true, mask: true },
  ],
};

const built = () =>
  pagesOf(TEMPLATE, { name: 'Kitchen <Ash & Lane> 漢 😀', doors: ['B7.A.1L', 'B7.A.1R'] }, new Map([['door', door]]));

describe('a bound document', () => {
  it('is sound to a validity checker', async () => {
    expect(await faultsOf(await pdfOf(built().pages))).toEqual([]);
    const cut = (await pdfOf(built().pages)).slice(0, 9000);
    expect((await faultsOf(cut)).length).toBeGreaterThan(0);
  });

  it('has the same bytes for the same pages, and others for others', async () => {
    const bytes = await pdfOf(built().pages);
    expect(Buffer.from(await pdfOf(built().pages)).equals(bytes)).toBe(true);
    expect(Buffer.from(await pdfOf(built().pages, { date: '2025-03-15' })).equals(bytes)).toBe(false);
  });

  it('has an outline, page labels and links that lead where they say', async () => {
    const document = await openPdf(await pdfOf(built().pages));
    const pageOf = async (dest: unknown) =>
      Array.isArray(dest) ? 1 + (await document.getPageIndex(dest[0] as { num: number; gen: number })) : undefined;
    const outline = await document.getOutline();
    const seen = await Promise.all(
      outline.map(async ({ title, dest, items }) => [title, await pageOf(dest), items.map(item => item.title)]),
    );
    expect(seen).toEqual([
      ['Cover ⅜ é', 1, []],
      ['Doors', 2, ['B7.A.1L', 'B7.A.1R']],
      ['Parts', 5, []],
    ]);
    expect(await pageOf(outline[1]?.items[1]?.dest)).toBe(3);
    expect(await document.getPageLabels()).toEqual(['1', '2', '3', '4', '5']);
    const links = await (await document.getPage(1)).getAnnotations();
    expect(links.map(link => link.subtype)).toEqual(['Link']);
    expect(await pageOf(links[0]?.dest)).toBe(5);
    await document.destroy();
  });

  it('says what it is, when and in which language, and carries its files', async () => {
    const manifest = Buffer.from('{"schemaVersion":1}');
    const attachments = [
      { name: 'manifest.json', mime: 'application/json', description: 'The packet as data', bytes: manifest },
    ];
    const document = await openPdf(await pdfOf(built().pages, { title: 'Küche & "Co"', language: 'es', attachments }));
    const { info, metadata } = await document.getMetadata();
    expect(info).toMatchObject({ Title: 'Küche & "Co"', Language: 'es', CreationDate: 'D:20250314000000Z' });
    expect(metadata?.get('dc:title')).toBe('Küche & "Co"');
    expect(metadata?.get('xmp:createdate')).toBe('2025-03-14T00:00:00Z');
    const files = await document.getAttachments();
    expect(Object.keys(files)).toEqual(['manifest.json']);
    expect(Buffer.from(files['manifest.json'].content).equals(manifest)).toBe(true);
    const marks = await document.getViewerPreferences();
    expect(marks).toMatchObject({ PrintScaling: 'None', DisplayDocTitle: true });
    await document.destroy();
  });

  it('gives two readers its words with blanks, fractions and foreign letters whole', async () => {
    const bytes = await pdfOf(built().pages);
    for (const texts of [(await readPages(bytes)).map(page => page.text), await readText(bytes)]) {
      expect(texts[0]).toContain('Kitchen <Ash & Lane> 漢 😀');
      expect(texts[1]).toContain('B7.A.1L is 14 3/8 x 30 15/16+, 63/64 less 1/2');
      expect(texts[3]).toContain('15 3/8');
      expect(texts[3]).toContain('30 15/16');
    }
  });
});

/**
 * A broken subset reads right to a text extractor and shows wrong letters. So each letter is drawn twice, from the
 * outlines of the font file as it was published, and as a reader draws the embedded one, and the pictures compared.
 */
describe('letters on paper', () => {
  /** Two ways of smoothing edges differ by less than this; two letters by more. */
  const LIKE = 0.2;
  const SIZE = 40;
  const CELL = 60;
  const ACROSS = 10;
  const text = `${'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789'}+−×·=()[],.;:/&%#"'ñáéíóúü¿¡ÅÄÖß…•–☐`;
  const signs = [...text, ...typeset('1/2 3/4 5/8 7/16 9/64 ').replaceAll(' ', '')];

  const page = (bold: boolean) => ({
    width: ACROSS * CELL,
    height: Math.ceil(signs.length / ACROSS) * CELL,
    tints: [],
    links: [],
    targets: [],
    bookmarks: [],
    items: signs.map((set, index) => {
      const [x, y] = [(index % ACROSS) * CELL + 10, Math.floor(index / ACROSS) * CELL + 42];
      return { kind: 'text', x, y, set, size: SIZE, bold } as const;
    }),
  });

  function drawn(bold: boolean): Picture {
    const { width, height, items } = page(bold);
    const canvas = createCanvas(2 * width, 2 * height);
    const pen = canvas.getContext('2d');
    pen.fillStyle = 'white';
    pen.fillRect(0, 0, 2 * width, 2 * height);
    pen.fillStyle = 'black';
    const face = bold ? FONTS.bold : FONTS.regular;
    for (const { x, y, set } of items) {
      const code = set.charCodeAt(0);
      const isFraction = code >= 0xe010 && code <= 0xe029;
      const scale = (2 * SIZE * (isFraction ? 1.3 : 1)) / face.font.unitsPerEm;
      pen.setTransform(scale, 0, 0, -scale, 2 * x, 2 * (y + (isFraction ? 0.09 * SIZE : 0)));
      pen.fill(new Path2D(face.font.getGlyph(face.glyph(code)).path.toSVG()));
    }
    const { data } = pen.getImageData(0, 0, 2 * width, 2 * height);
    return {
      width: 2 * width,
      height: 2 * height,
      grey: data.filter((_, at) => at % 4 === 0) as unknown as Uint8Array,
    };
  }

  /** How much of the ink of two cells is not shared, 0 to 1. */
  function difference(one: Picture, a: number, other: Picture, b: number): number {
    let [apart, ink] = [0, 0];
    for (let y = 0; y < 2 * CELL; y += 1) {
      for (let x = 0; x < 2 * CELL; x += 1) {
        const [p, q] = [inkAt(one, a, x, y), inkAt(other, b, x, y)];
        apart += Math.abs(p - q);
        ink += Math.max(p, q);
      }
    }
    return ink === 0 ? 0 : apart / ink;
  }

  function inkAt({ width, grey }: Picture, cell: number, x: number, y: number): number {
    const row = Math.floor(cell / ACROSS) * 2 * CELL + y;
    return 255 - (grey[row * width + (cell % ACROSS) * 2 * CELL + x] ?? 255);
  }

  it.each([
    ['regular', false],
    ['bold', true],
  ])('are those of the %s font file', async (_, bold) => {
    const [printed] = await rasterise(await pdfOf([page(bold)], ABOUT), 144);
    const expected = drawn(bold);
    if (printed === undefined) throw new Error('nothing was drawn');
    const wrong = signs.flatMap((sign, index) => {
      const share = difference(printed, index, expected, index);
      return share < LIKE ? [] : [`${meaningOf(sign.charCodeAt(0))} ${share.toFixed(2)}`];
    });
    expect(wrong).toEqual([]);
    // The comparison tells letters apart: each from the next one.
    const alike = signs.slice(0, 50).filter((_, index) => difference(printed, index, expected, index + 1) < LIKE);
    expect(alike).toEqual([]);
  });
});
