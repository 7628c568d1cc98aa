import type { Door, Part } from '../calculate/door-set.ts';
import { FLATTENING_ALLOWANCE } from '../trade/machining.ts';
import type { Shop } from '../trade/shop.ts';
import { ZERO } from '../units/length.ts';
import type { Blank, OperationId, ShopPlan } from './shop-plan.ts';
import { hornOf, isThicker, stockOf, type Work } from './work.ts';

/** The operations of each part and each door, in order. A solid panel's begin with those of its strips. */
export function planRoutes(work: Work, blanks: readonly Blank[]): ShopPlan['routes'] {
  const blankOf = new Map<string, Blank>(
    blanks.flatMap(blank => (blank.part === undefined ? [] : [[blank.part, blank]])),
  );
  const routes: [string, readonly OperationId[]][] = work.doorSet.parts.map(part => {
    const blank = blankOf.get(part.code);
    const sawn = blank === undefined ? [] : blankRoute(blank, part, work);
    return [part.code, [...sawn, ...partRoute(part, work)]];
  });
  return Object.fromEntries([...routes, ...work.doorSet.doors.map(door => [door.code, doorRoute(door, work)])]);
}

/** What a rough blank goes through before it is a part; for a spare or a test piece, all that is done to it. */
export function blankRoute(blank: Blank, part: Part, work: Work): readonly OperationId[] {
  const stock = stockOf(part, work);
  // An offcut to try the rabbet on needs no exact size: no fence is set for it.
  if (stock?.kind === 'sheet') return blank.purpose === 'test' ? ['break-sheet'] : SHEET_ROUTE;
  const left = blank.purpose === 'strip' ? FLATTENING_ALLOWANCE : ZERO;
  const milled = stock !== undefined && isThicker(part, stock, left) && part.make.kind !== 'glass-stop';
  const rough: readonly OperationId[] = [
    'crosscut-rough',
    'rip-rough',
    'rest',
    ...(milled ? (['plane-thickness'] as const) : []),
    'joint-edge',
  ];
  switch (blank.purpose) {
    case 'part':
    case 'strip':
      return rough;
    case 'test':
      return [...rough, 'rip-width'];
    case 'spare':
      // Grooved with the others, so that it matches when it is needed; left long, so that it can become any of them.
      return [...rough, 'rip-width', 'groove'];
  }
}

/** What is done to a part itself, from its blank (or glued-up panel) on until it goes into the door. */
export function partRoute(part: Part, work: Work): readonly OperationId[] {
  const sized: readonly OperationId[] = stockOf(part, work)?.kind === 'sheet' ? [] : ['rip-width', 'cut-length'];
  switch (part.make.kind) {
    case 'stile':
      return [...sized, 'inspect', 'groove'];
    case 'rail':
    case 'middle-stile':
      return [...sized, 'inspect', ...JOINT_ROUTE[work.shop.router.order]];
    case 'plywood-panel':
      return [...sized, ...(part.make.rabbet === undefined ? [] : (['rabbet-panel'] as const)), 'sand-panel'];
    case 'solid-panel':
      return [
        'glue-panel',
        'cure-panel',
        'flatten-panel',
        'rip-panel',
        'cut-panel',
        ...(part.make.rabbet === undefined ? [] : (['rabbet-panel'] as const)),
        'sand-panel',
      ];
    case 'glass-stop':
      return ['cut-stops'];
    case 'glass':
      return ['fit-glass'];
    case 'slab':
      return sized;
  }
}

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
