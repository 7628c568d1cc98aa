import type { Severity } from '../problems.ts';

/** What can be wrong with the workbook itself: the file, its sheets, its cells. */
export type ImportProblems = {
  'length-unreadable': { readonly column: string; readonly typed: string };
};

export const importSeverity: { readonly [C in keyof ImportProblems]: Severity } = {
  'length-unreadable': 'error',
};
