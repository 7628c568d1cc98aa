import fc from 'fast-check';
import type { Blank } from '../../../src/layout/shop-plan.ts';
import { type Length, nm } from '../../../src/units/length.ts';
import { lengthOf } from '../../../src/units/read-length.ts';
import { aBlank, aShop, aSize, aStock, type CuttingJob } from './a-job.ts';

const EIGHTH = 3_175_000;
const eighths = (least: number, most: number): fc.Arbitrary<Length> =>
  fc.integer({ min: least * 8, max: most * 8 }).map(count => nm(count * EIGHTH));

/** Panels or frame parts of a kitchen: 5 to 30 different sizes, each several times, on the usual sheets and boards. */
export const aShopLikeJob: fc.Arbitrary<CuttingJob> = fc
  .record({
    kind: fc.constantFrom('sheet' as const, 'board' as const),
    sizes: fc.array(
      fc.record({
        panel: fc.record({ length: eighths(6, 42), width: eighths(5, 22) }),
        stick: fc.record({ length: eighths(8, 44), width: fc.constantFrom('2 1/4', '2 1/2', '3 1/4').map(lengthOf) }),
        copies: fc.integer({ min: 2, max: 8 }),
      }),
      { minLength: 5, maxLength: 30 },
    ),
  })
  .map(({ kind, sizes }) => ({
    stock: [
      kind === 'sheet'
        ? aStock([aSize('96 x 48')], { name: 'wood' })
        : aStock([aSize('96 x 6')], { name: 'wood', kind: 'board' }),
    ],
    shop: aShop(),
    blanks: sizes
      .flatMap(({ panel, stick, copies }) => Array.from({ length: copies }, () => (kind === 'sheet' ? panel : stick)))
      .map((size, index) => aBlank('wood', `P${index + 1}`, size.length, size.width)),
  }));

/** The stiles, rails and panels of so many doors of a shop: widths and heights in eighths, some of them often. */
export function aShopOfDoors(doors: number): CuttingJob {
  const blanks: Blank[] = [];
  for (let door = 0; door < doors; door += 1) {
    const width = nm((80 + ((door * 7) % 97)) * EIGHTH);
    const height = nm((100 + ((door * 13) % 211)) * EIGHTH);
    const stick = lengthOf('2 1/2');
    const rail = nm(width - 2 * lengthOf('2') + lengthOf('1 3/4'));
    blanks.push(
      aBlank('boards', `D${door}-SL`, nm(height + lengthOf('1')), stick),
      aBlank('boards', `D${door}-SR`, nm(height + lengthOf('1')), stick),
      aBlank('boards', `D${door}-RT`, rail, stick),
      aBlank('boards', `D${door}-RB`, rail, stick),
      aBlank('sheets', `D${door}-P`, nm(height - lengthOf('3 5/16')), nm(width - lengthOf('3 5/16'))),
    );
  }
  return {
    stock: [
      aStock([aSize('96 x 6')], { name: 'boards', kind: 'board' }),
      aStock([aSize('96 x 48')], { name: 'sheets' }),
    ],
    shop: aShop(),
    blanks,
  };
}
