import type { Severity } from '../problems.ts';

/** What can be wrong with the paper: templates that do not read, tags that do not fit. */
export type RenderProblems = {
  'template-unreadable': { readonly reason: string };
};

export const renderSeverity: { readonly [C in keyof RenderProblems]: Severity } = {
  'template-unreadable': 'error',
};
