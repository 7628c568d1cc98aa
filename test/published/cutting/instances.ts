import { readFileSync } from 'node:fs';
import type { BlankCode } from '../../../src/codes/codes.ts';
import type { Stock } from '../../../src/import/job.ts';
import type { Blank } from '../../../src/layout/shop-plan.ts';
import type { Shop } from '../../../src/trade/shop.ts';
import { shopDefaults } from '../../../src/trade/shop-defaults.ts';
import { mm, nm, ZERO } from '../../../src/units/length.ts';

/** An instance of an open data set; see fixtures/published/cutting/README.md. */
export type Instance = {
  readonly name: string;
  readonly core: boolean;
  readonly bin: readonly [length: number, width: number];
  readonly pieces: readonly (readonly [length: number, width: number, copies: number])[];
  /** Best number of bins published, where there is one. */
  readonly published: number | undefined;
  readonly lowerBound: number;
};

type Raw = {
  readonly name: string;
  readonly core?: boolean;
  readonly bin: number | readonly [number, number];
  readonly items: readonly (readonly number[])[];
  readonly bestKnown: number | null;
  readonly bestKnownSource?: string | null;
  readonly lowerBound: number;
};

const folder = new URL('../../../fixtures/published/cutting/', import.meta.url);

export function readInstances(file: string): readonly Instance[] {
  const { instances } = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as {
    readonly instances: readonly Raw[];
  };
  return instances.map(raw => ({
    name: raw.name,
    core: raw.core === true,
    bin: typeof raw.bin === 'number' ? [raw.bin, 1] : raw.bin,
    pieces: raw.items.map(item =>
      item.length === 2 ? [item[0] ?? 0, 1, item[1] ?? 0] : [item[0] ?? 0, item[1] ?? 0, item[2] ?? 0],
    ),
    published: raw.bestKnown ?? undefined,
    lowerBound: raw.lowerBound,
  }));
}

export const reachedFile = new URL('reached.json', folder);

/** The instance as a job of a saw whose blade takes nothing, of untrimmed sheets, one millimetre to the unit. */
export function asJob(
  instance: Instance,
  stages: Shop['saw']['stages'],
  seconds: number,
): { readonly stock: readonly Stock[]; readonly shop: Shop; readonly blanks: readonly Blank[] } {
  const defaults = shopDefaults('mm', 'A4');
  const from = { sheet: 'Stock', row: 2, columns: {} };
  const [length, width] = instance.bin;
  const size = { length: mm(length), width: mm(width), onHand: 0, buy: true, price: undefined, defects: [], from };
  return {
    stock: [
      {
        name: 'sheet',
        kind: 'sheet',
        species: '',
        thickness: mm(18),
        grain: 'length',
        density: undefined,
        sizes: [size],
        from,
      },
    ],
    shop: {
      ...defaults,
      saw: {
        ...defaults.saw,
        kerf: ZERO,
        sheetTrim: ZERO,
        ripCapacity: nm(1e14),
        crosscutCapacity: nm(1e14),
        stages,
      },
      // All of the time is to be spent, as it is where published values come from.
      planning: { ...defaults.planning, seconds, patience: 600 },
    },
    blanks: instance.pieces.flatMap(([long, wide, copies], kind) =>
      Array.from({ length: copies }, (_, copy) => ({
        code: `${kind + 1}.${copy + 1}` as BlankCode,
        purpose: 'part' as const,
        part: undefined,
        parts: [],
        operation: undefined,
        stock: 'sheet',
        length: mm(long),
        width: mm(wide),
      })),
    ),
  };
}
