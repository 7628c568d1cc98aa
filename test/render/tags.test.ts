import { beforeAll, describe, expect, it } from 'vitest';
import { posterBarcode } from '../../src/codes/poster.ts';
import type { RenderInput } from '../../src/render/draft.ts';
import { render } from '../../src/render/index.ts';
import type { LabelSheet } from '../../src/trade/shop.ts';
import { THIRTY_ON_LETTER, TWENTY_ONE_ON_A4 } from '../../src/trade/shop-defaults.ts';
import { aJob } from '../support/a-job.ts';
import { length } from '../support/length.ts';
import { assets, laidOut, sheetsOf } from '../support/packet.ts';
import { rasterise, readPages } from '../support/pdf.ts';
import { readByBoth, scan } from '../support/scan.ts';
import { complaints, pdfOf } from '../support/typeset.ts';

let input: RenderInput;
beforeAll(async () => {
  // A door and a pair: few enough tags to read them all, on every kind of label.
  input = await laidOut(aJob({ openings: aJob().openings.slice(0, 2) }));
});

const on = (labels: LabelSheet): RenderInput => ({
  ...input,
  job: { ...input.job, paper: labels.page === 'A4' ? 'A4' : 'letter', shop: { ...input.job.shop, labels } },
});

const single = (width: string, height: string): LabelSheet => ({
  ...THIRTY_ON_LETTER,
  page: 'single',
  rows: 1,
  columns: 1,
  width: length(width),
  height: length(height),
});

/** 4 × 10 of 1/2 × 1 3/4 in would not hold a symbol; these are the sheets that open label data describes. */
const SHEETS: readonly (readonly [name: string, sheet: LabelSheet])[] = [
  ['30 on letter', THIRTY_ON_LETTER],
  ['21 on A4', TWENTY_ONE_ON_A4],
  [
    '14 on letter',
    {
      ...THIRTY_ON_LETTER,
      rows: 7,
      columns: 2,
      width: length('4'),
      height: length('1 1/2'),
      left: length('5/32'),
      top: length('1/4'),
      pitchAcross: length('4 3/16'),
      pitchDown: length('1 1/2'),
    },
  ],
  ['single labels of 50 × 25 mm', single('50 mm', '25 mm')],
  ['single labels of 4 × 6 in', single('4', '6')],
];

describe.each(SHEETS)('tags on %s', (_, labels) => {
  it('are laid out without a complaint', () => {
    expect(complaints(sheetsOf(on(labels), ['tags']).diagnostics)).toEqual([]);
  });

  it('are read back, each and every one, by two decoders at 203 dots to the inch', async () => {
    // Labels as large as a page take the decoders long: those of one door are enough.
    const [door] = input.doorSet.doors;
    const tagsOf = labels.height > length('4') && door !== undefined ? [door.code, ...door.parts] : undefined;
    const { value } = await render(on(labels), assets('en'), { only: ['tags'], tagsOf });
    const asked = [...value.manifest.parts, ...value.manifest.doors]
      .filter(({ code }) => tagsOf === undefined || tagsOf.some(each => each === code))
      .map(({ barcode }) => barcode);
    const all = value.manifest.cutPlans.flatMap(plan => plan.offcuts.map(({ barcode }) => barcode));
    const offcuts = tagsOf === undefined ? all : [];
    const read = await Promise.all((await rasterise(value.tagsPdf, 203)).map(readByBoth));
    for (const decoder of [0, 1]) {
      const found = new Set(read.flatMap(both => both[decoder] ?? []));
      expect([...asked, ...offcuts].filter(code => !found.has(code))).toEqual([]);
      expect(found.size).toBe(asked.length + offcuts.length);
    }
  });

  it('stand whole on their labels', async () => {
    const { value: pages } = sheetsOf(on(labels), ['tags']);
    for (const page of await readPages(await pdfOf(pages))) {
      for (const word of page.words) {
        expect(word.text).not.toContain('…');
        expect(labelAt(labels, word.x, word.y), word.text).toBe(
          labelAt(labels, word.x + word.width, word.y - word.size * 0.7),
        );
      }
    }
  });

  it('have bars of whole printer dots, a quarter of a millimetre at least, and quiet zones of ten modules', () => {
    const { value: pages } = sheetsOf(on(labels), ['tags']);
    for (const page of pages) {
      for (const item of page.items) {
        if (item.kind !== 'symbol') continue;
        // Two dots of 8 to the millimetre are a quarter of a millimetre: 9.8 mil.
        const dots = (item.module / 72) * (labels.page === 'single' ? 203 : 300);
        expect(dots).toBeCloseTo(Math.round(dots), 9);
        expect(item.module / 0.072).toBeGreaterThanOrEqual(9.8);
        const [left, right] = [item.x - 10 * item.module, item.x + (item.symbol.width + 10) * item.module];
        expect(labelAt(labels, left, item.y)).toBe(labelAt(labels, right, item.y));
        expect(labelAt(labels, left, item.y)).toBeDefined();
      }
    }
  });
});

const inPoints = (size: number): number => (size / 25_400_000) * 72;

/** Which label of a sheet a place in points is on, counted along the rows; undefined between labels. */
function labelAt(labels: LabelSheet, x: number, y: number): number | undefined {
  const [left, top] = labels.page === 'single' ? [0, 0] : [inPoints(labels.left), inPoints(labels.top)];
  for (let row = 0; row < labels.rows; row += 1) {
    for (let column = 0; column < labels.columns; column += 1) {
      const [x0, y0] = [left + column * inPoints(labels.pitchAcross), top + row * inPoints(labels.pitchDown)];
      const isHere =
        x >= x0 - 0.1 &&
        x <= x0 + inPoints(labels.width) + 0.1 &&
        y >= y0 - 0.1 &&
        y <= y0 + inPoints(labels.height) + 0.1;
      if (isHere) return row * labels.columns + column;
    }
  }
  return undefined;
}

// Open label-template data, both grids of 30 on letter: 2 5/8 × 1 in, with equal margins left and right.
describe('a sheet of labels', () => {
  it.each([
    ['variant A', '3/16', '2 3/4'],
    ['variant B', '5/32', '2 25/32'],
  ])('of 30 on letter, %s, fills the sheet evenly', (_, left, pitch) => {
    const right = 8.5 - (toInches(left) + 2 * toInches(pitch) + toInches('2 5/8'));
    expect(right).toBeCloseTo(toInches(left), 6);
    expect(toInches('1/2') * 2 + 10).toBe(11);
  });

  it('is the one that the shop takes where it says nothing', () => {
    expect([
      THIRTY_ON_LETTER.left,
      THIRTY_ON_LETTER.top,
      THIRTY_ON_LETTER.pitchAcross,
      THIRTY_ON_LETTER.pitchDown,
    ]).toEqual(['3/16', '1/2', '2 3/4', '1'].map(length));
  });
});

const toInches = (text: string): number => length(text) / 25_400_000;

describe('the tags of a job', () => {
  it('begin at the first label that is left on a used sheet', async () => {
    const { value } = await render(on({ ...THIRTY_ON_LETTER, startAt: 8 }), assets('en'), { only: ['tags'] });
    const [first] = await readPages(value.tagsPdf);
    const labels = (first?.words ?? []).map(({ x, y }) => labelAt(THIRTY_ON_LETTER, x, y) ?? -1);
    expect(Math.min(...labels)).toBe(7);
  });

  it('are printed again for the codes that are asked for, and for no others', async () => {
    const codes = [input.doorSet.parts[3]?.code ?? '', input.doorSet.doors[0]?.code ?? ''];
    const { value } = await render(input, assets('en'), { only: ['tags'], tagsOf: codes });
    const barcodes = [input.doorSet.parts[3]?.barcode, input.doorSet.doors[0]?.barcode].sort();
    const [picture] = await rasterise(value.tagsPdf, 300);
    if (picture === undefined) throw new Error('no page of tags');
    expect((await scan(picture)).map(({ text }) => text).sort()).toEqual(barcodes);
  });

  it('come together where parts are cut from one board or sheet, in the order in which they lie', async () => {
    const { value } = await render(input, assets('en'), { only: ['tags'] });
    const words = (await readPages(value.tagsPdf)).flatMap(page => page.words.map(({ text }) => text.trim()));
    const cutFrom = new Map(value.manifest.parts.map(part => [part.code, part.cutFrom]));
    const order = words.filter(word => cutFrom.has(word));
    expect(order.length).toBe(cutFrom.size);
    const bins = order.map(code => cutFrom.get(code)).filter((bin, index, all) => bin !== all[index - 1]);
    expect(bins.length).toBe(new Set(bins).size);
  });

  it('say what a hand needs: what it is, how large, on which face it sits, and what comes next', async () => {
    const { value } = await render(input, assets('en'), { only: ['tags'] });
    const text = (await readPages(value.tagsPdf)).map(page => page.text).join('\n');
    for (const said of ['left stile', 'on the BACK', 'inside edge', 'groove', 'hinges LEFT from the front'])
      expect(text).toContain(said);
  });
});

describe('a large label', () => {
  const large = () => on(single('4', '6'));

  it('has its code in the largest type, a drawing for each piece, and a round tag for each door with cups', () => {
    const { value: pages } = sheetsOf(large(), ['tags']);
    const kinds = pages.map(page => page.items.filter(({ kind }) => kind === 'figure').length);
    const { doors, parts } = input.doorSet;
    const cups = doors.filter(({ hinges }) => hinges.length > 0).length;
    expect(kinds.reduce((sum, figures) => sum + figures, 0)).toBe(parts.length + 2 * cups);
  });

  it('takes the longest words that a workbook may hold, in both languages', () => {
    for (const language of ['en', 'es'] as const) {
      const doors = input.doorSet.doors.map(door => ({ ...door, cabinet: 'W'.repeat(80), room: 'W '.repeat(40) }));
      const job = { ...large().job, language };
      const longNamed = { ...input, job, doorSet: { ...input.doorSet, doors } };
      expect(complaints(sheetsOf(longNamed, ['tags']).diagnostics)).toEqual([]);
    }
  });
});

describe('posters', () => {
  it('are read back by two decoders', async () => {
    const { value: pages } = sheetsOf(input, ['posters']);
    const [picture] = await rasterise(await pdfOf(pages), 203);
    if (picture === undefined) throw new Error('no poster');
    const stations = [...new Set(input.plan.operations.map(({ station }) => station))];
    const asked = stations.map(station => posterBarcode({ kind: 'station', station }));
    for (const read of await readByBoth(picture)) expect(read).toEqual(expect.arrayContaining(asked));
  });
});
