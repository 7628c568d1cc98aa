import type { Door, Part, Rabbet } from '../calculate/door-set.ts';
import { FLATTENING_ALLOWANCE } from '../trade/machining.ts';
import type { Shop } from '../trade/shop.ts';
import { ZERO } from '../units/length.ts';
import type { Blank, OperationId, ShopPlan } from './shop-plan.ts';
import { type BlankPlan, hornOf, isFromBoard, isThicker, stockOf, type Work } from './work.ts';

/**
 * The operations of each part, each door, and each blank that goes under a code of its own (strips, spares, test pieces,
 * blanks for several parts), in order. A part's route begins with what is done to the blank, or the strips, that it
 * comes from.
 */
export function planRoutes(work: Work, { blanks, standsFor }: BlankPlan): ShopPlan['routes'] {
  const parts = new Map<string, Part>(work.doorSet.parts.map(part => [part.code, part]));
  const routes = new Map<string, readonly OperationId[]>();
  const sawn = new Map<string, readonly OperationId[]>();
  for (const blank of blanks) {
    const route = blankRoute(blank, partFor(blank, standsFor, parts), work);
    routes.set(blank.code, route);
    for (const code of blank.parts) sawn.set(code, route);
  }
  for (const part of parts.values()) routes.set(part.code, [...(sawn.get(part.code) ?? []), ...partRoute(part, work)]);
  for (const door of work.doorSet.doors) routes.set(door.code, doorRoute(door, work));
  return Object.fromEntries(routes);
}

/** The part that a blank becomes, or the first of several; the one that a spare or a test piece stands in for. */
export function partFor(blank: Blank, standsFor: BlankPlan['standsFor'], parts: ReadonlyMap<string, Part>): Part {
  const part = standsFor.get(blank.code) ?? parts.get(blank.parts[0] ?? '');
  if (part === undefined) throw new Error(`${blank.code} is for no part`);
  return part;
}

/** What a blank goes through before its parts are cut to length; for a spare or a test piece, all that is done to it. */
export function blankRoute(blank: Blank, part: Part, work: Work): readonly OperationId[] {
  const stock = stockOf(part, work);
  // An offcut to try the rabbet on needs no exact size: no fence is set for it.
  if (stock?.kind === 'sheet') return blank.purpose === 'test' ? ['break-sheet'] : SHEET_ROUTE;
  const solid = part.make.kind === 'solid-panel';
  const milled = stock !== undefined && isThicker(part, stock, solid ? FLATTENING_ALLOWANCE : ZERO);
  const rough: readonly OperationId[] = [
    'crosscut-rough',
    'rip-rough',
    'rest',
    ...(milled ? (['plane-thickness'] as const) : []),
  ];
  switch (blank.purpose) {
    case 'strip':
    case 'stops':
      return [...rough, 'joint-edge'];
    case 'part':
      return [...rough, 'joint-edge', 'rip-width'];
    case 'test':
      // To try the rabbet of a solid panel, a piece of strip at the panel's thickness will do.
      return solid ? [...rough, 'flatten-panel'] : [...rough, 'joint-edge', 'rip-width'];
    case 'spare':
      // Grooved with the others, so that it matches when it is needed; left long, so that it can become any of them.
      return [...rough, 'joint-edge', 'rip-width', 'groove'];
  }
}

/** What is done to a part itself, from its blank (or glued-up panel) on until it goes into the door. */
export function partRoute(part: Part, work: Work): readonly OperationId[] {
  const cut: readonly OperationId[] = isFromBoard(part, work) ? ['cut-length'] : [];
  switch (part.make.kind) {
    case 'stile':
      return [...cut, 'inspect', 'groove'];
    case 'rail':
    case 'middle-stile':
      return [...cut, 'inspect', ...JOINT_ROUTE[work.shop.router.order]];
    case 'plywood-panel':
      return [...cut, ...rabbeted(part.make.rabbet), 'sand-panel'];
    case 'solid-panel':
      return [
        'glue-panel',
        'cure-panel',
        'flatten-panel',
        'rip-panel',
        'cut-panel',
        ...rabbeted(part.make.rabbet),
        'sand-panel',
      ];
    case 'glass-stop':
      return ['cut-stops'];
    case 'glass':
      return ['fit-glass'];
    case 'slab':
      return cut;
  }
}

const rabbeted = (rabbet: Rabbet | undefined): readonly OperationId[] => (rabbet === undefined ? [] : ['rabbet-panel']);

/** What is done to a whole door; `finished` says whether the workbook has a finish. */
export function doorRoute(door: Door, work: Work): readonly OperationId[] {
  const hung = door.hinges.length > 0;
  const glazed = door.joint?.infillKind === 'glass';
  const steps: readonly (readonly [OperationId, boolean])[] = [
    ['dry-fit', door.build === 'frame'],
    ['glue-up', door.build === 'frame'],
    ['cure', door.build === 'frame'],
    ['cut-horns', hornOf(door, work) > 0],
    ['rabbet-glass', glazed],
    ['flush-sand', true],
    ['bore-hinges', hung],
    ['hang-and-fit', hung],
    ['take-down', hung],
    ['ease-edges', door.edgeEasing > 0],
    ['finish', work.job.finish.length > 0],
    ['cure-finish', work.job.finish.length > 0],
    ['fit-glass', glazed],
    ['drill-pulls', door.pull !== undefined],
    ['hang', true],
  ];
  return steps.filter(([, applies]) => applies).map(([id]) => id);
}

// What leaves the sheet is of final size: the saw's fence and stop are set to it.
const SHEET_ROUTE = ['break-sheet', 'rip-panel', 'cut-panel'] as const;
const JOINT_ROUTE: { readonly [Order in Shop['router']['order']]: readonly OperationId[] } = {
  'groove-first': ['groove', 'cope'],
  'cope-first': ['cope', 'groove'],
};
