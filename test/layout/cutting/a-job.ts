import fc from 'fast-check';
import type { BlankCode } from '../../../src/codes/codes.ts';
import type { Source } from '../../../src/diagnostics/place.ts';
import type { Stock, StockSize } from '../../../src/import/job.ts';
import type { Blank } from '../../../src/layout/shop-plan.ts';
import type { Shop } from '../../../src/trade/shop.ts';
import { shopDefaults } from '../../../src/trade/shop-defaults.ts';
import { type Length, nm } from '../../../src/units/length.ts';
import { lengthOf } from '../../../src/units/read-length.ts';

export const NOWHERE: Source = { sheet: 'Stock', row: 2, columns: { name: 'A' } };

/** `12 x 3`, twice as `2 * 12 x 3`. */
export function someBlanks(stock: string, ...sizes: readonly string[]): readonly Blank[] {
  return sizes
    .flatMap(text => {
      const [count, size] = text.includes('*') ? text.split('*') : ['1', text];
      const [length, width] = (size ?? '').split(' x ').map(each => lengthOf(each.trim()));
      return Array.from({ length: Number(count) }, () => ({ length, width }));
    })
    .map((size, index) => aBlank(stock, `P${index + 1}`, size.length ?? nm(0), size.width ?? nm(0)));
}

export const aBlank = (stock: string, code: string, length: Length, width: Length): Blank => ({
  code: code as BlankCode,
  purpose: 'part',
  parts: [],
  operation: undefined,
  stock,
  length,
  width,
});

export const aStock = (sizes: readonly StockSize[], change: Partial<Stock> = {}): Stock => ({
  name: 'ply',
  kind: 'sheet',
  species: 'maple',
  thickness: lengthOf('1/2'),
  grain: 'length',
  density: undefined,
  sizes,
  from: NOWHERE,
  ...change,
});

export const aSize = (text: string, change: Partial<StockSize> = {}): StockSize => {
  const [length, width] = text.split(' x ').map(each => lengthOf(each.trim()));
  return {
    length: length ?? nm(0),
    width: width ?? nm(0),
    onHand: 0,
    buy: true,
    price: undefined,
    defects: [],
    from: NOWHERE,
    ...change,
  };
};

export const aShop = (saw: Partial<Shop['saw']> = {}, planning: Partial<Shop['planning']> = {}): Shop => {
  const shop = shopDefaults('inch', 'letter');
  return { ...shop, saw: { ...shop.saw, ...saw }, planning: { ...shop.planning, ...planning } };
};

/** Lengths as shops have them, 64ths and tenths of a millimetre mixed, between two sizes in inches. */
const aLength = (least: number, most: number): fc.Arbitrary<Length> =>
  fc.oneof(
    { weight: 3, arbitrary: fc.integer({ min: least * 64, max: most * 64 }).map(count => nm(count * 396_875)) },
    {
      weight: 1,
      arbitrary: fc
        .integer({ min: Math.ceil(least * 254), max: Math.floor(most * 254) })
        .map(count => nm(count * 100_000)),
    },
  );

export type CuttingJob = { readonly stock: readonly Stock[]; readonly shop: Shop; readonly blanks: readonly Blank[] };

/** A job of a shop: a few sizes repeated, sheets or boards, some on hand, some with defects, any saw. */
export const aCuttingJob: fc.Arbitrary<CuttingJob> = fc
  .record({
    kind: fc.constantFrom('sheet' as const, 'board' as const),
    grain: fc.constantFrom('length' as const, 'none' as const),
    saw: fc.record({
      kerf: fc.constantFrom('0', '1/8', '3/32', '3.2 mm').map(lengthOf),
      sheetTrim: fc.constantFrom('0', '1/16', '1/4', '1/2').map(lengthOf),
      boardEndTrim: fc.constantFrom('0', '1', '2').map(lengthOf),
      boardEdgeLoss: fc.constantFrom('0', '1/8', '1/4').map(lengthOf),
      ripCapacity: fc.constantFrom('30', '50').map(lengthOf),
      crosscutCapacity: fc.constantFrom('52', '100').map(lengthOf),
      leastSkim: fc.constantFrom('0', '1/4').map(lengthOf),
      stages: fc.constantFrom(2 as const, 3 as const, 'free' as const),
    }),
    sizes: fc.array(
      fc.record({
        length: aLength(60, 110),
        width: fc.oneof(aLength(5, 12), aLength(30, 60)),
        onHand: fc.integer({ min: 0, max: 3 }),
        buy: fc.boolean(),
        knots: fc.array(fc.record({ start: aLength(10, 50), size: aLength(1, 4) }), { maxLength: 2 }),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    pieces: fc.array(
      fc.record({ length: aLength(3, 50), width: aLength(1, 20), count: fc.integer({ min: 1, max: 6 }) }),
      { minLength: 1, maxLength: 8 },
    ),
    seed: fc.integer({ min: 1, max: 1000 }),
  })
  .map(({ kind, grain, saw, sizes, pieces, seed }) => ({
    stock: [
      aStock(
        sizes.map(size => ({
          length: size.length,
          width: size.width,
          onHand: size.onHand,
          buy: size.buy,
          price: undefined,
          defects:
            kind === 'board' && !size.buy
              ? size.knots.map(knot => ({ start: knot.start, end: nm(knot.start + knot.size) }))
              : [],
          from: NOWHERE,
        })),
        { kind, grain, name: 'stock' },
      ),
    ],
    shop: aShop(saw, { seconds: 0.002, seed }),
    blanks: pieces
      .flatMap(piece => Array.from({ length: piece.count }, () => piece))
      .map((piece, index) => aBlank('stock', `P${index + 1}`, piece.length, piece.width)),
  }));
