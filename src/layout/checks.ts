import type { Part, Role } from '../calculate/door-set.ts';
import { type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import { cellOf, type Place } from '../diagnostics/place.ts';
import { clampsFor } from './glue-up.ts';
import { mostTurns, rimSpeedOf } from './reminders.ts';
import type { Operation, OperationId } from './shop-plan.ts';
import { stockOf, type Work } from './work.ts';

/** What must hold of the shop for the plan to be kept: its machines reach, its clamps suffice, its wood is thick enough. */
export const checkPlan = (work: Work, operations: readonly Operation[]): readonly Diagnostic[] => [
  ...railsFitTheSled(work),
  ...bitsTurnSlowlyEnough(work, operations),
  ...clampsSuffice(work),
  ...boardsAreThickEnough(work),
  ...sawReaches(operations, work),
  ...codesAreTheirOwn(operations, work),
];

/** Once for each style and width: sixty rails of one width are one finding. */
function railsFitTheSled(work: Work): readonly Diagnostic[] {
  const { sledWidth } = work.shop.router;
  const wide = work.doorSet.parts.filter(part => part.shoulder !== undefined && part.width.value > sledWidth);
  return firstOfEach(wide, part => `${work.doorOf(part).style} ${part.role} ${part.width.value}`).map(part => {
    const { style } = work.doorOf(part);
    const at = placeInStyle(work, style, STYLE_FIELD[part.role] ?? 'name');
    return problem('rail-wider-than-sled', at, { style, width: part.width.value, sled: sledWidth });
  });
}

function bitsTurnSlowlyEnough({ shop }: Work, operations: readonly Operation[]): readonly Diagnostic[] {
  const { router } = shop;
  const bits = [
    ['sticking', router.stickingBitDiameter, 'groove'],
    ['coping', router.copingBitDiameter, 'cope'],
    ['rabbet', router.rabbetBitDiameter, 'rabbet-panel'],
    ['rabbet', router.rabbetBitDiameter, 'rabbet-glass'],
  ] as const;
  const used = (id: OperationId) => operations.some(each => each.id === id && each.station === 'router');
  const fast = bits.filter(([, diameter, id]) => used(id) && rimSpeedOf(diameter, router.speed) > router.rimSpeedMax);
  return firstOfEach(fast, ([bit]) => bit).map(([bit, diameter]) =>
    problem('bit-too-fast', SHOP_SHEET, { bit, diameter, speed: router.speed, most: mostTurns(diameter, shop) }),
  );
}

function clampsSuffice({ doorSet, shop }: Work): readonly Diagnostic[] {
  const { clamps } = shop.gluing;
  return doorSet.doors
    .filter(door => door.build === 'frame' && clampsFor(door, shop) > clamps)
    .map(door =>
      problem('clamps-too-few', cellOf(door.from, 'height'), { door: door.code, needs: clampsFor(door, shop), clamps }),
    );
}

/** Boards are planed down to the part; nothing makes them thicker. */
function boardsAreThickEnough(work: Work): readonly Diagnostic[] {
  const thin = work.doorSet.parts.filter(part => {
    const stock = stockOf(part, work);
    return stock?.kind === 'board' && stock.thickness < part.thickness && part.make.kind !== 'glass-stop';
  });
  return firstOfEach(thin, part => `${part.stock} ${part.thickness}`).map(part => {
    const { name, thickness, from } = boardOf(part, work);
    return problem(
      'board-thinner-than-part',
      cellOf(from, 'thickness'),
      { stock: name, thickness, part: part.thickness, style: work.doorOf(part).style },
      [placeInStyle(work, work.doorOf(part).style, 'frameThickness')],
    );
  });
}

function boardOf(part: Part, work: Work) {
  const stock = stockOf(part, work);
  if (stock === undefined) throw new Error(`${part.code} is cut from nothing`);
  return stock;
}

/** Whether fence and stop can stand where the final sizes want them. What only the cutting plan cuts, it checks itself. */
function sawReaches(operations: readonly Operation[], { shop, doors, doorSet }: Work): readonly Diagnostic[] {
  const reach = { fence: shop.saw.ripCapacity, stop: shop.saw.crosscutCapacity };
  const doorOfPart = new Map<string, string>(doorSet.parts.map(part => [part.code, part.door]));
  return operations
    .filter(operation => operation.station === 'saw' && FINAL_CUTS.has(operation.id))
    .flatMap(operation => operation.setups)
    .flatMap(({ settings, pieces }) =>
      settings.flatMap(({ sets, value }) => {
        if (!(sets === 'fence' || sets === 'stop') || value <= reach[sets]) return [];
        const code = pieces[0]?.code ?? '';
        const door = doors.get(doorOfPart.get(code) ?? code);
        const at: Place =
          door === undefined ? { kind: 'part', code } : cellOf(door.from, sets === 'stop' ? 'height' : 'width');
        const name = sets === 'stop' ? 'stop-out-of-reach' : 'fence-out-of-reach';
        return [problem(name, at, { code, size: value, reach: reach[sets], pieces: pieces.length })];
      }),
    );
}

/** Two tags with one symbol could not be told apart by a scanner; those of parts and doors are known by now. */
function codesAreTheirOwn(operations: readonly Operation[], { doorSet }: Work): readonly Diagnostic[] {
  const seen = new Map<string, string>(
    [...doorSet.parts, ...doorSet.doors].map(({ barcode, code }) => [barcode, code]),
  );
  return operations
    .flatMap(operation => operation.setups)
    .flatMap(({ code, barcode }) => {
      const other = seen.get(barcode);
      seen.set(barcode, code);
      return other === undefined ? [] : [problem('barcode-shared', { kind: 'sheet', sheet: 'Job' }, { code, other })];
    });
}

function firstOfEach<T>(all: readonly T[], keyOf: (each: T) => string): readonly T[] {
  const first = new Map<string, T>();
  for (const each of all) if (!first.has(keyOf(each))) first.set(keyOf(each), each);
  return [...first.values()];
}

function placeInStyle(work: Work, name: string, field: string): Place {
  const style = work.styles.get(name);
  return style === undefined ? { kind: 'sheet', sheet: 'Styles' } : cellOf(style.from, field);
}

const SHOP_SHEET: Place = { kind: 'sheet', sheet: 'Shop' };

const FINAL_CUTS: ReadonlySet<OperationId> = new Set([
  'rip-width',
  'cut-length',
  'rip-panel',
  'cut-panel',
  'cut-horns',
]);

/** The column of Styles that a coped part's width comes from. */
const STYLE_FIELD: { readonly [R in Role]?: string } = {
  'rail-top': 'topRail',
  'rail-middle': 'middleRail',
  'rail-bottom': 'bottomRail',
  'stile-middle': 'middleStile',
};
