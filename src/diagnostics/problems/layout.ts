import type { Length } from '../../units/length.ts';
import type { Severity } from '../problems.ts';

/** What can be wrong with the plan: pieces that no stock yields, limits that cannot be kept. */
export type LayoutProblems = {
  /** Litres, of one coat of one door with its additive. */
  'pot-too-small': { readonly step: string; readonly door: string; readonly litres: number; readonly pot: number };
  'rack-too-small': { readonly step: string; readonly wet: number; readonly slots: number };
  'prices-missing': { readonly items: readonly string[] };
  'hardware-not-listed': { readonly use: 'hinge' | 'pull'; readonly count: number };
  'piece-fits-no-stock': {
    readonly code: string;
    readonly stock: string;
    readonly length: Length;
    readonly width: Length;
  };
  'stock-runs-out': { readonly stock: string; readonly pieces: number };
};

export const layoutSeverity: { readonly [C in keyof LayoutProblems]: Severity } = {
  'pot-too-small': 'warning',
  'rack-too-small': 'note',
  'prices-missing': 'note',
  'hardware-not-listed': 'note',
  'piece-fits-no-stock': 'error',
  'stock-runs-out': 'error',
};
