import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { importJob } from '../../src/import/index.ts';
import { readCsv } from '../../src/import/read-csv.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';
import { STOCK } from '../../src/import/sheets/stock-columns.ts';
import type { Workbook } from '../../src/import/workbook.ts';
import type { RenderInput } from '../../src/render/draft.ts';
import { csvOf } from '../../src/render/parts-list.ts';
import { remnantsTable } from '../../src/render/remnants.ts';
import { drafted, laidOut } from '../support/packet.ts';

let kitchen: Workbook;
let input: RenderInput;
beforeAll(async () => {
  const file = await readFile(new URL('../../fixtures/demo/kitchen.xlsx', import.meta.url));
  const { value } = await readXlsx(file, 'kitchen.xlsx');
  if (value === undefined) throw new Error('no workbook');
  kitchen = value;
  input = await laidOut(importJob(kitchen).value);
});

const offcutsOf = ({ plan }: RenderInput) => plan.cutPlans.flatMap(each => each.bins.flatMap(bin => bin.offcuts));

/** As whoever opens the file copies its rows, without the headings, below those that Stock has. */
function pasted(csv: string): Workbook {
  const [table] = readCsv(new TextEncoder().encode(csv), 'remnants.csv').value?.sheets ?? [];
  return {
    ...kitchen,
    sheets: kitchen.sheets.map(sheet => {
      if (sheet.name !== 'Stock') return sheet;
      const last = sheet.rows.at(-1)?.number ?? 0;
      const rows = (table?.rows ?? []).slice(1).map((row, at) => ({ ...row, number: last + at + 1 }));
      return { ...sheet, rows: [...sheet.rows, ...rows] };
    }),
  };
}

describe('the offcuts', () => {
  it('stand under the headings of Stock, in its order, each with its tag', () => {
    const { columns, rows } = remnantsTable(drafted(input));
    const names = Object.values(STOCK).map(({ name }) => name);
    expect(columns.map(({ header }) => header)).toEqual([...names, 'Tag']);
    expect(rows.map(row => row.at(-1))).toEqual(offcutsOf(input).map(({ code }) => `D-002 ${code}`));
    expect(rows.length).toBeGreaterThan(3);
  });

  it.each([
    ['inch', 1 / 32],
    ['decimal-inch', 1 / 1000],
    ['both', 1 / 32],
  ] as const)(
    'pasted into the next Stock, printed in %s, are pieces on hand, no larger than they are',
    (units, step) => {
      const { job } = input;
      const printing = { ...job.shop.printing, lengths: { ...job.shop.printing.lengths, units } };
      const table = remnantsTable(drafted({ ...input, job: { ...job, shop: { ...job.shop, printing } } }));
      const before = importJob(kitchen);
      const after = importJob(pasted(csvOf(table)));
      expect(after.diagnostics).toEqual(before.diagnostics);
      const sizes = after.value.stock.flatMap(({ name, sizes }) =>
        sizes.slice(before.value.stock.find(stock => stock.name === name)?.sizes.length),
      );
      const offcuts = offcutsOf(input);
      expect(sizes.map(({ onHand, buy, price, defects }) => [onHand, buy, price, defects])).toEqual(
        offcuts.map(() => [1, false, undefined, []]),
      );
      for (const [at, { length, width }] of sizes.entries()) {
        for (const [read, is] of [
          [length, offcuts[at]?.length],
          [width, offcuts[at]?.width],
        ]) {
          expect(read).toBeLessThanOrEqual(is ?? 0);
          expect(read).toBeGreaterThan((is ?? 0) - step * 25_400_000);
        }
      }
    },
  );

  it('of a job in millimetres are as long to the tenth', () => {
    const { job } = input;
    const printing = { ...job.shop.printing, lengths: { ...job.shop.printing.lengths, units: 'mm' as const } };
    const { rows } = remnantsTable(
      drafted({ ...input, job: { ...job, units: 'mm', shop: { ...job.shop, printing } } }),
    );
    expect(rows.map(row => row.slice(4, 6).map(Number))).toEqual(
      offcutsOf(input).map(({ length, width }) => [width, length].map(size => Math.floor(size / 100_000) / 10)),
    );
  });
});
