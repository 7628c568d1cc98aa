import { describe, expect, it } from 'vitest';
import { problem } from '../../src/diagnostics/diagnostic.ts';
import type { Language } from '../../src/diagnostics/languages.ts';
import { type ImportProblems, importSeverity } from '../../src/diagnostics/problems/import.ts';
import { say } from '../../src/diagnostics/words.ts';

const column = 'Opening width';
const cabinet = 'B1';
const known = 'Plain, Solid';

/** Facts as they could be, for every problem that the import knows. */
const FACTS: ImportProblems = {
  'file-empty': {},
  'file-too-large': { size: '31 MB', limit: '25 MB' },
  'file-is-old-workbook': {},
  'file-has-password': {},
  'file-is-no-workbook': { looks: 'web-page' },
  'file-damaged': { part: 'xl/workbook.xml' },
  'file-unpacks-too-large': { limit: '96 MB' },
  'file-has-foreign-entities': { part: 'xl/workbook.xml' },
  'file-takes-too-long': { seconds: 8 },
  'file-takes-too-much-memory': {},
  'sheet-too-large': { of: 'rows', limit: 12_000 },
  'text-not-unicode': {},
  'quote-not-closed': {},
  'sheet-missing': { sheet: 'Cabinets', seen: 'Sheet1, Sheet2' },
  'sheet-unknown': { sheet: 'Stok', nearest: 'Stock' },
  'sheet-guessed': { sheet: 'Sheet1', as: 'Cabinets' },
  'sheet-twice': { sheet: 'Cabinets', other: 'Doors' },
  'sheet-hidden': {},
  'headings-missing': { wanted: 'Cabinet, Opening width, Opening height' },
  'column-missing': { column, seen: 'Cabinet, Breadth' },
  'column-unknown': { heading: 'Breadth', nearest: '' },
  'column-twice': { column, other: 'C' },
  'rows-hidden': { rows: '4, 7' },
  'example-not-counted': {},
  'no-openings': {},
  'cell-empty': { column },
  'cell-is-error': { column, error: '#REF!' },
  'cell-unfinished': { column },
  'cell-merged': { column, area: 'A2:A3' },
  'cell-is-date': { column, date: '2026-03-04', typed: '3/4' },
  'length-unreadable': { column, typed: 'wide' },
  'length-not-positive': { column, typed: '0' },
  'length-negative': { column, typed: '-1' },
  'number-unreadable': { column, typed: 'two' },
  'number-out-of-range': { column, typed: '0', from: 1, to: 999 },
  'number-not-whole': { column, typed: '1.5' },
  'choice-unknown': { column, typed: 'insert', nearest: 'inset', known: 'overlay, inset' },
  'date-unreadable': { column, typed: 'soon' },
  'duration-unreadable': { column, typed: 'a while' },
  'volume-unreadable': { column, typed: 'a can' },
  'money-unreadable': { column, typed: 'dear' },
  'form-unreadable': { column, typed: '12', form: '12-16; 40-43' },
  'text-too-long': { column, limit: 80 },
  'characters-removed': { column, kept: 'B1' },
  'job-number-unsafe': { column: 'Job number', typed: '../x' },
  'setting-unknown': { typed: 'Kerff', nearest: 'Kerf' },
  'setting-twice': { setting: 'Kerf', other: 'B3' },
  'hinge-side-missing': { cabinet },
  'hinge-side-unused': { cabinet },
  'opening-twice': { cabinet, label: 'A', other: '2' },
  'style-not-listed': { cabinet, typed: 'Plane', nearest: 'Plain', known },
  'style-missing': { cabinet, known },
  'style-twice': { style: 'Plain', other: '2' },
  'stock-unknown': { column: 'Frame stock', typed: 'Oak', nearest: '', known: 'Maple, Plywood' },
  'stock-missing': { column: 'Frame stock', style: 'Plain', known: 'Maple, Cherry' },
  'stock-is-other-kind': { column: 'Frame stock', stock: 'Plywood', is: 'sheet' },
  'stock-disagrees': { column: 'Thickness', stock: 'Maple', other: '2' },
  'neighbour-not-listed': { column: 'Right neighbour', typed: 'B9', nearest: '', known: 'B1, B2' },
  'middle-rail-count': { cabinet, panels: 3, given: 1 },
  'middle-rails-out-of-order': { cabinet },
  'mix-parts-differ': { step: 'Stain', parts: 3, components: 2 },
};

describe.each<Language>(['en', 'es'])('what the import says in %s', language => {
  it('reads as written here', () => {
    const said = (Object.keys(FACTS) as (keyof ImportProblems)[]).map(code => {
      const found = problem(code, { kind: 'sheet', sheet: 'Cabinets' }, FACTS[code]);
      const { what, mend } = say(found, language, String);
      return `${found.severity} ${code}\n  ${what}\n  ${mend}`;
    });
    expect(said.join('\n')).toMatchSnapshot();
  });
});

it('knows a severity for each of its problems', () => {
  expect(Object.keys(importSeverity).sort()).toEqual(Object.keys(FACTS).sort());
});
