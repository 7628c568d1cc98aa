import { describe, expect, it } from 'vitest';
import { type Diagnostic, gather, isError, problem } from '../../src/diagnostics/diagnostic.ts';
import { cellOf } from '../../src/diagnostics/place.ts';
import { inOrder, printDiagnostics } from '../../src/diagnostics/print.ts';
import { printLength } from '../../src/units/print-length.ts';
import { length } from '../support/length.ts';

const size = (value: Parameters<typeof printLength>[0]) =>
  printLength(value, { units: 'inch', increment: length('1/32') });
const cell = (name: string) => ({ kind: 'cell', sheet: 'Cabinets', cell: name }) as const;

const unreadable = (at: string): Diagnostic =>
  problem('length-unreadable', cell(at), { column: 'Opening width', typed: '14 x' });

describe('findings for a terminal', () => {
  it('say where, what, and how to mend it', () => {
    const narrow = problem('rail-has-no-length', cell('C4'), { door: 'B3-1L', shoulder: length('-1') }, [cell('A9')]);
    expect(printDiagnostics([narrow], 'en', size)).toMatchInlineSnapshot(`
      "error  Cabinets!C4 (Cabinets!A9): B3-1L is too narrow for its stiles: −1 is left between them.
               Make the opening wider or the stiles narrower.
      "
    `);
  });

  it('speak Spanish too', () => {
    expect(printDiagnostics([unreadable('C4')], 'es', size)).toContain('no es una medida');
  });

  it('come in the order of the workbook, errors first, whatever the order they were found in', () => {
    const found = ['C10', 'C9', 'AA9', 'B9'].map(unreadable);
    const order = (all: readonly Diagnostic[]) =>
      inOrder(all).map(each => (each.at.kind === 'cell' ? each.at.cell : ''));
    expect(order(found)).toEqual(['B9', 'C9', 'AA9', 'C10']);
    expect(order(found.toReversed())).toEqual(['B9', 'C9', 'AA9', 'C10']);
  });
});

describe('a place', () => {
  const source = { sheet: 'Cabinets', row: 7, columns: { width: 'D', height: 'E' } };
  it.each([
    ['height', 'E7'],
    ['hinge side', 'D7'], // no such column in the sheet: the first of the row
  ])('of %s is %s', (field, expected) => {
    expect(cellOf(source, field)).toEqual({ kind: 'cell', sheet: 'Cabinets', cell: expected });
  });
});

it('gathers values and findings in order', () => {
  const all = gather([
    { value: 1, diagnostics: [unreadable('A1')] },
    { value: 2, diagnostics: [] },
  ]);
  expect(all.value).toEqual([1, 2]);
  expect(all.diagnostics.filter(isError)).toHaveLength(1);
});
