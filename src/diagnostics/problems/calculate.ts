import type { Length } from '../../units/length.ts';
import type { Severity } from '../problems.ts';

/** What can be wrong with a door: sizes that cannot be, and sizes that a shop would regret. */
export type CalculateProblems = {
  'rail-has-no-length': { readonly door: string; readonly shoulder: Length };
};

export const calculateSeverity: { readonly [C in keyof CalculateProblems]: Severity } = {
  'rail-has-no-length': 'error',
};
