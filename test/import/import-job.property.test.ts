import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { importJob } from '../../src/import/index.ts';
import type { Opening } from '../../src/import/job.ts';
import type { Row, Workbook } from '../../src/import/workbook.ts';
import { nm, times } from '../../src/units/length.ts';
import { printLength } from '../../src/units/print-length.ts';
import { lengthOf } from '../../src/units/read-length.ts';
import { law, RUNS } from '../support/runs.ts';

type Drawn = { readonly cells: readonly string[] };

const aFraction = fc.integer({ min: 1, max: 64 * 120 }).map(count => times(count, lengthOf('1/64')));
const inches = (length: number): string => printLength(nm(length), { units: 'inch', increment: lengthOf('1/64') });

/** Rows with names of their own, as the sheet would have them. */
const someRows = fc
  .array(fc.record({ width: aFraction, height: aFraction, side: fc.constantFrom('left', 'right', 'pair') }), {
    minLength: 1,
    maxLength: 12,
  })
  .map(rows =>
    rows.map(
      ({ width, height, side }, index): Drawn => ({ cells: [`B${index}`, inches(width), inches(height), side] }),
    ),
  );

const workbook = (rows: readonly Drawn[]): Workbook => ({
  file: 'law.xlsx',
  sheets: [{ name: 'Cabinets', hidden: false, rows: [{ cells: ['Cabinet', 'W', 'H', 'Hinge'] }, ...rows].map(rowOf) }],
});

const rowOf = ({ cells }: Drawn, index: number): Row => ({
  number: index + 1,
  hidden: false,
  cells: cells.map((text, column) => ({ column: 'ABCD'[column] ?? '', value: { kind: 'text', text } })),
});

const byName = (openings: readonly Opening[]) =>
  [...openings].sort((a, b) => (a.cabinet < b.cabinet ? -1 : 1)).map(({ from, ...opening }) => opening);

describe('laws of the import', () => {
  it('a sheet that is sorted anew has the same openings', () => {
    law(
      [someRows, fc.infiniteStream(fc.nat())],
      (rows, keys) => {
        const shuffled = [...rows]
          .map(row => ({ row, key: keys.next().value }))
          .sort((a, b) => a.key - b.key)
          .map(({ row }) => row);
        const [one, other] = [importJob(workbook(rows)), importJob(workbook(shuffled))];
        expect(byName(other.value.openings)).toEqual(byName(one.value.openings));
        expect(other.value.openings).toHaveLength(rows.length);
      },
      RUNS / 10,
    );
  });

  it('a length that is printed to the 64th comes back as itself', () => {
    const manySizes = fc.array(fc.tuple(aFraction, aFraction), { minLength: 40, maxLength: 40 });
    law(
      [manySizes],
      sizes => {
        const rows = sizes.map(([width, height], at) => ({ cells: [`B${at}`, inches(width), inches(height), 'left'] }));
        const { openings } = importJob(workbook(rows)).value;
        expect(openings.map(opening => [opening.width, opening.height])).toEqual(sizes);
      },
      RUNS / 20,
    );
  });

  it('a cell that does not read takes its own row with it and no other', () => {
    law(
      [someRows, fc.nat()],
      (rows, pick) => {
        const bad = pick % rows.length;
        const { value, diagnostics } = importJob(
          workbook(rows.map((row, at) => (at === bad ? { cells: [...row.cells.slice(0, 1), '?', '?', 'left'] } : row))),
        );
        expect(value.openings.map(({ cabinet }) => cabinet)).toEqual(
          rows.map(({ cells }) => cells[0]).filter((__, at) => at !== bad),
        );
        expect(diagnostics.map(({ at }) => at)).toEqual(
          ['B', 'C'].map(column => ({ kind: 'cell', sheet: 'Cabinets', cell: `${column}${bad + 2}` })),
        );
      },
      RUNS / 10,
    );
  });

  it('no text whatever makes it throw', () => {
    const anyText = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 20 }),
      fc.constantFrom('1e999', '-', '1/0', '١٢', '__proto__', 'constructor'),
    );
    const anyRows = fc.array(
      fc.array(anyText, { maxLength: 4 }).map((cells): Drawn => ({ cells })),
      { maxLength: 6 },
    );
    law(
      [anyRows],
      rows => {
        const { value, diagnostics } = importJob(workbook(rows));
        expect(value.openings.length + diagnostics.length).toBeGreaterThan(0);
      },
      RUNS / 5,
    );
  });
});
