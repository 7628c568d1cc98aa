import type { OperationId } from './operations.ts';

/**
 * How long an operation takes one person: minutes for each set-up, and for each piece at it. Common practice for a
 * small shop; a shop's own figures in the workbook come first. What only waits takes no minutes;
 * the coats of the finish have their own table, in `finishing.ts`.
 */
export const OPERATION_MINUTES: {
  readonly [Id in Exclude<OperationId, 'finish'>]: { readonly setup: number; readonly piece: number };
} = {
  'crosscut-rough': { setup: 3, piece: 0.5 },
  'rip-rough': { setup: 3, piece: 0.4 },
  rest: { setup: 0, piece: 0 },
  'plane-thickness': { setup: 5, piece: 0.75 },
  'joint-edge': { setup: 5, piece: 0.5 },
  'rip-width': { setup: 3, piece: 0.4 },
  'cut-length': { setup: 3, piece: 0.5 },
  inspect: { setup: 0, piece: 0.5 },
  groove: { setup: 20, piece: 0.75 },
  cope: { setup: 20, piece: 1.25 },
  'break-sheet': { setup: 5, piece: 1 },
  'glue-panel': { setup: 5, piece: 12 },
  'cure-panel': { setup: 0, piece: 0 },
  'flatten-panel': { setup: 5, piece: 6 },
  'rip-panel': { setup: 3, piece: 0.75 },
  'cut-panel': { setup: 3, piece: 0.75 },
  'rabbet-panel': { setup: 15, piece: 2 },
  'sand-panel': { setup: 0, piece: 4 },
  'cut-stops': { setup: 5, piece: 1 },
  'dry-fit': { setup: 0, piece: 3 },
  'glue-up': { setup: 5, piece: 8 },
  cure: { setup: 0, piece: 0 },
  'cut-horns': { setup: 3, piece: 2 },
  'rabbet-glass': { setup: 15, piece: 10 },
  'flush-sand': { setup: 5, piece: 10 },
  'bore-hinges': { setup: 10, piece: 1.5 },
  'hang-and-fit': { setup: 0, piece: 12 },
  'take-down': { setup: 0, piece: 2 },
  'ease-edges': { setup: 10, piece: 2 },
  'cure-finish': { setup: 0, piece: 0 },
  'fit-glass': { setup: 5, piece: 8 },
  'drill-pulls': { setup: 5, piece: 2 },
  hang: { setup: 0, piece: 8 },
};
