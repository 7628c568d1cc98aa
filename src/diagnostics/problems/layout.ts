import type { Length } from '../../units/length.ts';
import type { Severity } from '../problems.ts';

/** What can be wrong with the plan: pieces that no stock yields, limits that cannot be kept. */
export type LayoutProblems = {
  'rail-wider-than-sled': { readonly style: string; readonly width: Length; readonly sled: Length };
  /** Turns a minute. */
  'bit-too-fast': {
    readonly bit: 'sticking' | 'coping' | 'rabbet';
    readonly diameter: Length;
    readonly speed: number;
    readonly most: number;
  };
  'clamps-too-few': { readonly door: string; readonly needs: number; readonly clamps: number };
  'board-thinner-than-part': {
    readonly stock: string;
    readonly thickness: Length;
    readonly part: Length;
    readonly style: string;
  };
  'fence-out-of-reach': OutOfReach;
  'stop-out-of-reach': OutOfReach;
  'barcode-shared': { readonly code: string; readonly other: string };
  /** Litres, of one coat of one door with its additive. */
  'pot-too-small': { readonly step: string; readonly door: string; readonly litres: number; readonly pot: number };
  'rack-too-small': { readonly step: string; readonly wet: number; readonly slots: number };
  'prices-missing': { readonly items: readonly string[] };
  'no-working-time': Record<never, never>;
  /** `days`: working days after the due date. `by`: what the work cannot be done faster for. */
  'due-date-missed': {
    readonly due: string;
    readonly done: string;
    readonly days: number;
    readonly people: number;
    readonly by: 'critical-path' | 'people' | 'clamps' | 'spray' | 'rack';
  };
  'hardware-not-listed': { readonly use: 'hinge' | 'pull'; readonly count: number };
  'piece-fits-no-stock': {
    readonly code: string;
    readonly stock: string;
    readonly length: Length;
    readonly width: Length;
  };
  'stock-runs-out': { readonly stock: string; readonly pieces: number };
};

/** A size that the saw cannot be set to, and how many pieces want it. */
type OutOfReach = { readonly code: string; readonly size: Length; readonly reach: Length; readonly pieces: number };

export const layoutSeverity: { readonly [C in keyof LayoutProblems]: Severity } = {
  'rail-wider-than-sled': 'warning',
  'bit-too-fast': 'warning',
  'clamps-too-few': 'warning',
  'board-thinner-than-part': 'error',
  'fence-out-of-reach': 'warning',
  'stop-out-of-reach': 'warning',
  'barcode-shared': 'error',
  'pot-too-small': 'warning',
  'rack-too-small': 'note',
  'prices-missing': 'note',
  'no-working-time': 'error',
  'due-date-missed': 'warning',
  'hardware-not-listed': 'note',
  'piece-fits-no-stock': 'error',
  'stock-runs-out': 'error',
};
