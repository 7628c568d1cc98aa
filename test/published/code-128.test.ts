import { describe, expect, it } from 'vitest';
import { openSymbols } from '../../src/render/symbols.ts';
import { rasterise } from '../support/pdf.ts';
import { scan } from '../support/scan.ts';
import { pagesOf, pdfOf } from '../support/typeset.ts';

/**
 * ISO/IEC 15417. The element widths of the first rows were worked out from the standard's table of values and agree
 * with the worked example of its check character that encyclopedias carry (PJJ123C).
 */
describe('Code 128', () => {
  /** Widths of bars and spaces in turn, from the dark parts. */
  const widthsOf = (text: string): string => {
    const symbol = openSymbols().bar(text);
    const dark = symbol?.dark ?? new Uint16Array();
    return Array.from({ length: dark.length / 4 }, (_, bar) => {
      const [across = 0, , wide = 0, , next = symbol?.width ?? 0] = dark.subarray(4 * bar);
      return `${wide}${next === across + wide ? '' : next - across - wide}`;
    }).join('');
  };

  // Start B, the characters, the check character (value 55), stop.
  it('draws PJJ123C as the table says', () => {
    const elements = '211214 313121 112133 112133 123221 223211 221132 131321 311321 2331112';
    expect(widthsOf('PJJ123C')).toBe(elements.replaceAll(' ', ''));
  });

  // 11 modules for start, each character and the check character, 13 for stop.
  it.each([
    ['PJJ123C', 7, 'letters and three digits: a character each'],
    ['AbCdEfGhIj', 10, 'letters'],
    ['12345678', 4, 'digits, two to a character (set C)'],
  ])('makes %s %d characters wide: %s', (text, characters) => {
    expect(openSymbols().bar(text)).toMatchObject({ width: 11 * (characters + 2) + 13, quiet: 10, height: 1 });
  });

  // The whole of ASCII that a scanner types, through an independent decoder, which checks the check character too.
  it('reads back character by character', async () => {
    const characters = Array.from({ length: 95 }, (_, index) => String.fromCharCode(32 + index));
    const texts = characters.map((character, index) => `${index}${character}x${character}7`);
    const { pages } = pagesOf(
      '<section margin="10mm"><table widths="* * *" rules="none">{{#each rows}}<tr>{{#each this}}<td><bar code="{{this}}"/></td>{{/each}}</tr>{{/each}}</table></section>',
      { rows: Array.from({ length: 32 }, (_, row) => texts.slice(3 * row, 3 * row + 3)) },
    );
    const pictures = await rasterise(await pdfOf(pages), 200);
    const read = (await Promise.all(pictures.map(picture => scan(picture)))).flat().map(each => each.text);
    expect(read.sort()).toEqual(texts.sort());
  });
});
