import { describe, expect, it } from 'vitest';
import { checkCharacter } from '../../src/codes/check-character.ts';
import { openSymbols } from '../../src/render/symbols.ts';
import { judge } from '../support/judge-pages.ts';
import { rasterise, readPages } from '../support/pdf.ts';
import { readByBoth, scan } from '../support/scan.ts';
import { pagesOf, pdfOf } from '../support/typeset.ts';

const codes = Array.from({ length: 24 }, (_, index) => {
  const payload = `K7${((index + 11) * 7919 * 7919 * 104729).toString(36).toUpperCase().slice(0, 8)}`;
  return `${payload}${checkCharacter(payload)}`;
});

const sorted = [...codes].sort();

const sheetOf = (dots: number, module: string) =>
  pagesOf(
    `<section dots="${dots}" paper="170mm 160mm" margin="10mm"><table widths="* * *" rules="none">{{#each rows}}<tr>{{#each this}}<td><bar code="{{this}}" module="${module}" text="yes" height="24" align="centre"/></td>{{/each}}</tr>{{/each}}</table></section>`,
    { rows: Array.from({ length: 8 }, (_, row) => codes.slice(3 * row, 3 * row + 3)) },
  );

describe('symbols on paper', () => {
  it.each([
    [300, '10mil', 300],
    [300, '10mil', 203],
    [203, '10mil', 203],
    [203, '10mil', 300],
  ])('made for %d dots with a module of %s are all read at %d dots to the inch', async (dots, module, dpi) => {
    const [picture] = await rasterise(await pdfOf(sheetOf(dots, module).pages), dpi);
    if (picture === undefined) throw new Error('nothing was drawn');
    expect(await readByBoth(picture)).toEqual([sorted, sorted]);
  });

  it('are read in black and white alone, as a label printer makes them', async () => {
    const [picture] = await rasterise(await pdfOf(sheetOf(203, '10mil').pages), 203);
    if (picture === undefined) throw new Error('nothing was drawn');
    const oneBit = { ...picture, grey: picture.grey.map(grey => (grey < 128 ? 0 : 255)) };
    expect(await readByBoth(oneBit)).toEqual([sorted, sorted]);
  });

  it('keep their quiet zones', async () => {
    const { pages, diagnostics } = sheetOf(300, '10mil');
    expect(diagnostics).toEqual([]);
    expect(judge(pages, await readPages(await pdfOf(pages)), 28.3)).toEqual([]);
  });

  it('stand on whole dots of the printer', () => {
    for (const dots of [203, 300]) {
      const symbols = sheetOf(dots, '10mil').pages.flatMap(page => page.items.filter(item => item.kind === 'symbol'));
      expect(symbols).toHaveLength(codes.length);
      for (const { x, y, module } of symbols) {
        for (const length of [x, y, module]) expect(((length * dots) / 72) % 1).toSatisfy(isWhole);
        expect(Math.round((module * dots) / 72)).toBe(dots === 203 ? 2 : 3);
      }
    }
  });

  const isWhole = (rest: number): boolean => rest < 1e-6 || rest > 1 - 1e-6;

  it('show the same code for a phone', async () => {
    const { pages } = pagesOf('<section><qr code="{{code}}"/></section>', { code: codes[0] });
    const [picture] = await rasterise(await pdfOf(pages), 200);
    if (picture === undefined) throw new Error('nothing was drawn');
    expect((await scan(picture, ['QRCode'])).map(each => each.text)).toEqual([codes[0]]);
  });
});

describe('a symbol', () => {
  it.each(['', '漢', 'a\n', 'é'])('of %j is none', text => {
    expect(openSymbols().bar(text)).toBeUndefined();
  });

  it('is worked out once', () => {
    const symbols = openSymbols();
    expect(symbols.bar('A7')).toBe(symbols.bar('A7'));
  });
});
