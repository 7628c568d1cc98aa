import { type CalculateProblems, calculateSeverity } from './problems/calculate.ts';
import { type ImportProblems, importSeverity } from './problems/import.ts';
import { type LayoutProblems, layoutSeverity } from './problems/layout.ts';
import { type RenderProblems, renderSeverity } from './problems/render.ts';

/** An error stops the packet; a warning is printed in it; a note is said once. */
export type Severity = 'error' | 'warning' | 'note';

/** Everything that can be wrong, with its facts. A new line does not compile until every language has words for it. */
export type Problems = ImportProblems & CalculateProblems & LayoutProblems & RenderProblems;
export type Code = keyof Problems;

/** Whether a problem stops the packet is decided here, once, and not where it is found. */
export const severityOf: { readonly [C in Code]: Severity } = {
  ...importSeverity,
  ...calculateSeverity,
  ...layoutSeverity,
  ...renderSeverity,
};
