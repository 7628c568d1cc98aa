import type { Length } from '../units/length.ts';
import type { Diagnostic } from './diagnostic.ts';
import type { Language } from './languages.ts';
import type { Place } from './place.ts';
import type { Severity } from './problems.ts';
import { say } from './words.ts';

const SEVERITIES: readonly Severity[] = ['error', 'warning', 'note'];

/**
 * Findings for a terminal, each on two lines: where and what, then how to mend it. In the order of the workbook
 * (sheet, row, column), so that what is printed does not depend on the order in which stages found it.
 */
export const printDiagnostics = (
  diagnostics: readonly Diagnostic[],
  language: Language,
  size: (length: Length) => string,
): string =>
  inOrder(diagnostics)
    .map(diagnostic => {
      const { what, mend } = say(diagnostic, language, size);
      const also = diagnostic.also.length === 0 ? '' : ` (${diagnostic.also.map(printPlace).join(', ')})`;
      return `${diagnostic.severity}  ${printPlace(diagnostic.at)}${also}: ${what}\n         ${mend}\n`;
    })
    .join('');

/** Sorted by severity, then place, then code. */
export const inOrder = (diagnostics: readonly Diagnostic[]): readonly Diagnostic[] =>
  [...diagnostics].sort(
    (a, b) =>
      SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) ||
      compare(sortKey(a.at), sortKey(b.at)) ||
      compare(a.code, b.code) ||
      compare(JSON.stringify(a.facts), JSON.stringify(b.facts)),
  );

export function printPlace(place: Place): string {
  switch (place.kind) {
    case 'cell':
      return `${place.sheet}!${place.cell}`;
    case 'sheet':
      return place.sheet;
    case 'file':
      return place.file;
    case 'part':
      return place.code;
    case 'template':
      return `${place.file}:${place.line}`;
  }
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Row 10 after row 9, column AA after Z. */
function sortKey(place: Place): string {
  if (place.kind !== 'cell') return printPlace(place);
  const [, column = '', row = ''] = /^([A-Z]+)(\d+)$/.exec(place.cell) ?? [];
  return `${place.sheet}!${row.padStart(8, '0')}!${column.padStart(4, ' ')}`;
}
