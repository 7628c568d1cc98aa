import type { Shop } from '../trade/shop.ts';
import { type Length, mm } from '../units/length.ts';
import { lengthOf, type Units } from '../units/read-length.ts';
import type { DefaultUsed, Stock } from './job.ts';

/** What a style is taken to be where Styles leaves a cell empty. Common practice; 2-1/4 in stiles are as usual. */
export const standardStyle = (units: Units) =>
  units === 'inch'
    ? ({
        stileWidth: lengthOf('2'),
        frameThickness: lengthOf('3/4'),
        grooveDepth: lengthOf('3/8'),
        grooveWidth: lengthOf('1/4'),
        faceToGroove: lengthOf('1/4'),
        horn: mm(0),
        glassThickness: lengthOf('1/8'),
      } as const)
    : ({
        stileWidth: mm(50),
        frameThickness: mm(19),
        grooveDepth: mm(10),
        grooveWidth: mm(6),
        faceToGroove: mm(6),
        horn: mm(0),
        glassThickness: mm(3),
      } as const);

export const STANDARD_STYLE_NAME = 'Plain frame';

/**
 * A board and a sheet for workbooks that name none. 1/2 in plywood is commonly 0.47 in when it is measured; 4/4 is
 * bought 1 in thick. Common practice.
 */
export function standardStock(kind: Stock['kind'], shop: Shop, units: Units): Stock {
  const size = kind === 'board' ? shop.rough.standardBoard : shop.rough.standardSheet;
  const from = { sheet: 'Stock', row: 1, columns: {} };
  const sizes = [{ ...size, onHand: 0, buy: true, price: undefined, defects: [], from }];
  const common = { kind, grain: 'length', density: undefined, sizes, from } as const;
  return kind === 'board'
    ? { ...common, name: 'Hard maple', species: 'hard maple', thickness: units === 'inch' ? lengthOf('1') : mm(26) }
    : { ...common, name: 'Plywood', species: 'plywood', thickness: units === 'inch' ? lengthOf('0.47') : mm(12) };
}

export const lengthUsed = (sheet: string, name: string, length: Length): DefaultUsed => ({
  sheet,
  name,
  value: { kind: 'length', length },
});

export const textUsed = (sheet: string, name: string, text: string): DefaultUsed => ({
  sheet,
  name,
  value: { kind: 'text', text },
});
