import { barcodeFor } from '../../src/codes/barcode.ts';
import { rasterise } from '../support/pdf.ts';
import { scan, scanAgain } from '../support/scan.ts';
import { pagesOf, pdfOf } from '../support/typeset.ts';
import { type Worsening, worsened } from '../support/worsen.ts';
import type { Measurement } from './measurement.ts';

/** A sheet of 30 symbols such as tags and route sheets carry, printed and read back under hard conditions. */
const CODES = Array.from({ length: 30 }, (_, index) => barcodeFor('J-2025-031', `B${index}.A.1L-SL`));

const TEMPLATE = `<section dots="{{dots}}" margin="10mm"><table widths="* * *" rules="none">
{{#each rows}}<tr>{{#each this}}<td><bar code="{{this}}" height="28" align="centre"/></td>{{/each}}</tr>{{/each}}
</table></section>`;

const CONDITIONS: readonly (readonly [name: string, worsening: Worsening])[] = [
  ['clean', {}],
  ['black and white alone', { oneBit: true }],
  ['turned by 2°', { turn: 2 }],
  ['at 30 % contrast', { contrast: 0.3 }],
  ['blurred', { blur: 1 }],
  ['blurred, turned by 2°, at 30 % contrast', { blur: 1, turn: 2, contrast: 0.3 }],
];

export async function measure(): Promise<readonly Measurement[]> {
  const measurements: Measurement[] = [];
  for (const dots of [203, 300]) {
    const rows = Array.from({ length: 10 }, (_, row) => CODES.slice(3 * row, 3 * row + 3));
    const [picture] = await rasterise(await pdfOf(pagesOf(TEMPLATE, { dots, rows }).pages), dots);
    if (picture === undefined) throw new Error('nothing was printed');
    for (const [name, worsening] of CONDITIONS) {
      const poor = worsened(picture, worsening);
      const reads = [(await scan(poor)).map(each => each.text), await scanAgain(poor)];
      for (const [index, read] of reads.entries()) {
        const must = name === 'clean' ? { target: 'all', met: share(read) === 100 } : {};
        const what = `Code 128, 10 mil at ${dots} dots/in, ${name}: decoder ${index + 1}`;
        measurements.push({ what, unit: '% read', ours: share(read), ...must });
      }
    }
  }
  return measurements;
}

const share = (read: readonly string[]): number =>
  Math.round((100 * CODES.filter(code => read.includes(code)).length) / CODES.length);
