/**
 * The kinds of work that a door and its parts go through, in the order in which they are done; but a shop may cope
 * before it grooves. All sawing comes before the joints: frames of painted doors are cut from sheets too.
 */
export const OPERATION_IDS = [
  'crosscut-rough',
  'rip-rough',
  'rest',
  'plane-thickness',
  'joint-edge',
  'rip-width',
  'cut-length',
  'break-sheet',
  'glue-panel',
  'cure-panel',
  'flatten-panel',
  'rip-panel',
  'cut-panel',
  'inspect',
  'groove',
  'cope',
  'rabbet-panel',
  'sand-panel',
  'cut-stops',
  'dry-fit',
  'glue-up',
  'cure',
  'cut-horns',
  'rabbet-glass',
  'flush-sand',
  'bore-hinges',
  'hang-and-fit',
  'take-down',
  'ease-edges',
  'finish',
  'cure-finish',
  'fit-glass',
  'drill-pulls',
  'hang',
] as const;

export type OperationId = (typeof OPERATION_IDS)[number];
