/** The sheets of a packet in their order; each is a template of that name. */
export const SHEET_NAMES = [
  'cover',
  'safety',
  'schedule',
  'shopping',
  'boards',
  'sheets',
  'cards',
  'routes',
  'glue-up',
  'finishing',
  'inspection',
  'hanging',
  'doors',
  'days',
  'posters',
  'tags',
] as const;

export type SheetName = (typeof SHEET_NAMES)[number];
