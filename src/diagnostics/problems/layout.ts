import type { Length } from '../../units/length.ts';
import type { Severity } from '../problems.ts';

/** What can be wrong with the plan: pieces that no stock yields, limits that cannot be kept. */
export type LayoutProblems = {
  'piece-fits-no-stock': {
    readonly code: string;
    readonly stock: string;
    readonly length: Length;
    readonly width: Length;
  };
};

export const layoutSeverity: { readonly [C in keyof LayoutProblems]: Severity } = {
  'piece-fits-no-stock': 'error',
};
