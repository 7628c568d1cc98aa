import assert from 'node:assert';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import type { Place } from '../../src/diagnostics/place.ts';
import { inOrder } from '../../src/diagnostics/print.ts';
import { lettersOf } from '../../src/import/cell-names.ts';
import type { Cell, CellValue, Row, Sheet, Workbook } from '../../src/import/workbook.ts';

/** A workbook drawn as text, and the findings written under its sheets. */
export type Drawn = { readonly workbook: Workbook; readonly expected: readonly string[] };

/**
 * Reads a drawing: a sheet's name on a line of its own (in brackets where the sheet is hidden), rows between bars
 * (with `hidden` behind the last bar where one is), and findings after `!`: a cell, `sheet` or `file`, then severity
 * and code. A cell is text, or in angle brackets something else: `<14.5>`, `<600 0" mm">`, `<2026-03-04>`, `<#REF!>`,
 * `<true>`, `<unfinished>`, `<merged A2:A3>`.
 */
export function draw(drawing: string): Drawn {
  const sheets: { name: string; hidden: boolean; rows: Row[] }[] = [];
  const expected: string[] = [];
  let number = 0;
  for (const line of drawing.split('\n').map(each => each.trim())) {
    const sheet = sheets.at(-1);
    if (line === '') continue;
    if (line.startsWith('!')) expected.push(printed(line, sheet?.name ?? ''));
    else if (line.startsWith('|')) {
      number += 1;
      const row = rowOf(line, number);
      if (row.cells.length > 0) sheet?.rows.push(row);
    } else {
      number = 0;
      const hidden = line.startsWith('[');
      sheets.push({ name: hidden ? line.slice(1, -1) : line, hidden, rows: [] });
    }
  }
  const drawn: readonly Sheet[] = sheets;
  return { workbook: { file: 'drawn.xlsx', sheets: drawn }, expected: expected.sort() };
}

/** Findings in the form in which drawings have them. */
export const findings = (diagnostics: readonly Diagnostic[]): readonly string[] =>
  inOrder(diagnostics)
    .map(({ at, severity, code }) => `${placeText(at)} ${severity} ${code}`)
    .sort();

function placeText(at: Place): string {
  if (at.kind === 'cell') return `${at.sheet}!${at.cell}`;
  return at.kind === 'sheet' ? at.sheet : at.kind;
}

function printed(line: string, sheet: string): string {
  const [, place = '', rest = ''] = /^! (\S+) (.*)$/.exec(line) ?? [];
  assert(rest !== '', `no finding: ${line}`);
  return `${place === 'file' ? 'file' : place === 'sheet' ? sheet : `${sheet}!${place}`} ${rest}`;
}

function rowOf(line: string, number: number): Row {
  const parts = line.split('|').slice(1);
  const cells = parts.slice(0, -1).flatMap((text, index): readonly Cell[] => {
    const value = cellValue(text.trim());
    return value === undefined ? [] : [{ column: lettersOf(index + 1), value }];
  });
  return { number, hidden: parts.at(-1)?.trim() === 'hidden', cells };
}

function cellValue(text: string): CellValue | undefined {
  if (text === '') return undefined;
  const [, inner] = /^<(.*)>$/.exec(text) ?? [];
  if (inner === undefined) return { kind: 'text', text };
  const [first = '', ...more] = inner.split(' ');
  const [year, month, day] = first.split('-').map(Number);
  if (first === 'true' || first === 'false') return { kind: 'truth', truth: first === 'true' };
  if (first === 'unfinished') return { kind: 'unfinished' };
  if (first === 'merged') return { kind: 'merged', area: more.join(' ') };
  if (first.startsWith('#')) return { kind: 'error', error: first };
  if (/^\d{4}-\d\d-\d\d$/.test(first)) return { kind: 'date', year: year ?? 0, month: month ?? 0, day: day ?? 0 };
  assert(Number.isFinite(Number(first)), `no cell: ${text}`);
  return { kind: 'number', number: Number(first), format: more.join(' ').replace(/^\S*?"(.*)"$/, '$1') };
}
