import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Diagnosed } from '../../src/diagnostics/diagnostic.ts';
import type { Workbook } from '../../src/import/workbook.ts';

export type Texts = readonly (readonly string[])[];

/** What holds of every reader of files: the texts of a table come back, at their cells, as they were written. */
export function readerContract(
  name: string,
  write: (rows: Texts) => Promise<Uint8Array>,
  read: (bytes: Uint8Array, file: string) => Promise<Diagnosed<Workbook | undefined>>,
): void {
  const textsBack = async (rows: Texts): Promise<Texts> => {
    const { value, diagnostics } = await read(await write(rows), 'file');
    expect(diagnostics).toEqual([]);
    const table: string[][] = rows.map(row => row.map(() => ''));
    for (const row of value?.sheets[0]?.rows ?? []) {
      for (const { column, value: cell } of row.cells) {
        const line = table[row.number - 1];
        if (line !== undefined) line[column.charCodeAt(0) - 65] = cell.kind === 'text' ? cell.text : cell.kind;
      }
    }
    return table;
  };

  it.each<[string, Texts]>([
    ['fractions stay as they are typed', [['14 3/8', '14-3/8"', '3/4', '1\' 2 3/8"', '14⅜']]],
    ['nothing becomes a number', [['007', '1e5', 'TRUE', '1,250.00', '+1']]],
    ['separators and quotation marks within a cell', [['a, b; c\td', '"quoted"', 'say "x", twice']]],
    ['lines within a cell', [['first\nsecond', 'x']]],
    [
      'an empty cell between two, an empty row between two',
      [
        ['a', '', 'b'],
        ['', '', ''],
        ['c', '', ''],
      ],
    ],
    ['markup, formulas and letters of all sorts are text', [['<b>&amp;</b>', '=1+1', '@x', 'ñ 木 🪚 e\u0301']]],
  ])(`${name}: %s`, async (_, rows) => {
    expect(await textsBack(rows)).toEqual(rows);
  });

  it(`${name}: whatever the texts are`, async () => {
    const text = fc
      .string({ unit: 'grapheme', maxLength: 12 })
      .filter(each => each.trim() === each && !each.includes('_x'));
    const table = fc.array(fc.array(text, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 5 });
    await fc.assert(
      fc.asyncProperty(table, async rows => {
        // A file that begins with an empty line, or has nothing in it, is a matter of its own.
        fc.pre(rows.every(row => row.some(each => each !== '')));
        expect(await textsBack(rows)).toEqual(rows);
      }),
      { numRuns: 60 },
    );
  });
}
