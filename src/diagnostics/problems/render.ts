import type { Severity } from '../problems.ts';

/** What can be wrong with the paper: templates that do not read, and what does not go onto its page or its label. */
export type RenderProblems = {
  'template-unreadable': { readonly reason: string };
  'sheet-has-no-room': { readonly reason: string };
};

export const renderSeverity: { readonly [C in keyof RenderProblems]: Severity } = {
  'template-unreadable': 'error',
  'sheet-has-no-room': 'error',
};
