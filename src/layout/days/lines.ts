import type { OperationId } from '../../trade/operations.ts';

/** Operations that follow each other on the same pieces; what lines wait for each other is told in `steps.ts`. */
export type Line =
  | 'rough'
  | 'frame'
  | 'sheet'
  | 'strips'
  | 'panel'
  | 'stops'
  | 'batch'
  | 'fitting'
  | 'finish'
  | 'hanging';

export const LINES: { readonly [Id in OperationId]: Line } = {
  'crosscut-rough': 'rough',
  'rip-rough': 'rough',
  rest: 'rough',
  'plane-thickness': 'rough',
  'joint-edge': 'rough',
  'rip-width': 'frame',
  'cut-length': 'frame',
  inspect: 'frame',
  groove: 'frame',
  cope: 'frame',
  'break-sheet': 'sheet',
  'glue-panel': 'strips',
  'cure-panel': 'strips',
  'flatten-panel': 'panel',
  'rip-panel': 'panel',
  'cut-panel': 'panel',
  'rabbet-panel': 'panel',
  'sand-panel': 'panel',
  'cut-stops': 'stops',
  'dry-fit': 'batch',
  'glue-up': 'batch',
  cure: 'batch',
  'cut-horns': 'batch',
  'rabbet-glass': 'batch',
  'flush-sand': 'batch',
  'bore-hinges': 'fitting',
  'hang-and-fit': 'fitting',
  'take-down': 'fitting',
  'ease-edges': 'fitting',
  finish: 'finish',
  'cure-finish': 'finish',
  'fit-glass': 'hanging',
  'drill-pulls': 'hanging',
  hang: 'hanging',
};
