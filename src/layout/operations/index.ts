import type { Part } from '../../calculate/door-set.ts';
import { barcodesOf } from '../../codes/barcode.ts';
import type { Barcode } from '../../codes/codes.ts';
import { OPERATION_MINUTES } from '../../trade/minutes.ts';
import { OPERATION_IDS } from '../../trade/operations.ts';
import type { Shop } from '../../trade/shop.ts';
import { addDurations, type Duration } from '../../units/duration.ts';
import { trialKey } from '../blanks/trials.ts';
import { operationReminders, setupReminders } from '../reminders.ts';
import { blankRoute, doorRoute, partFor, partRoute } from '../routes.ts';
import type { Blank, CutPlan, FinishPlan, GlueUpBatch, Operation, OperationId, Setup } from '../shop-plan.ts';
import type { BlankPlan, Piece, Work } from '../work.ts';
import type { Pass } from './pass.ts';
import { RULES, stationOf } from './rules.ts';
import { type Draft, draftsOf, placesOf, setupCodes } from './setups.ts';

/** What the operations are planned from, beside the doors themselves. */
export type Laid = {
  readonly blanks: BlankPlan;
  readonly batches: readonly GlueUpBatch[];
  readonly cutPlans: readonly CutPlan[];
  readonly finish: FinishPlan;
};

/**
 * The operations in the order in which they are done, each with the set-ups that its pieces ask for. Operations without
 * pieces are left out.
 */
export function planOperations(work: Work, laid: Laid): readonly Operation[] {
  const pieces = piecesByOperation(work, laid);
  const places = placesOf(codesOf(work, laid));
  const naming = { barcode: barcodesOf(work.job.number), code: setupCodes(work.job.number) };
  return inShopOrder(work.shop).flatMap(id => {
    const drafts = draftsOf(passesAt(id, pieces.get(id) ?? [], work), RULES[id].order, places);
    return drafts.length === 0 ? [] : [operationOf(id, drafts, work, laid, naming)];
  });
}

const codesOf = ({ doorSet }: Work, { blanks }: Laid): readonly string[] => [
  ...blanks.blanks.map(blank => blank.code),
  ...doorSet.parts.map(part => part.code),
  ...doorSet.doors.map(door => door.code),
];

/** One at a time: a large job has more passes than one wants to hold. */
function* passesAt(id: OperationId, pieces: readonly Piece[], work: Work): Iterable<Pass> {
  for (const piece of pieces) {
    const passes = RULES[id].passes(piece, work);
    if ('machine' in passes) yield passes;
    else yield* passes;
  }
}

type Naming = { readonly barcode: (code: string) => Barcode; readonly code: ReturnType<typeof setupCodes> };

function operationOf(id: OperationId, drafts: readonly Draft[], work: Work, laid: Laid, naming: Naming): Operation {
  const station = stationOf(id, work.shop);
  return {
    id,
    station,
    setups: drafts.map(({ key, ...draft }): Setup => {
      const code = naming.code(id, key);
      const testPieces = laid.blanks.testPieces.get(trialKey(id, key)) ?? [];
      const reminders = setupReminders(id, station, draft, work);
      return { ...draft, code, barcode: naming.barcode(code), testPieces, reminders };
    }),
    reminders: operationReminders(id, station, work, laid.cutPlans),
    minutes: minutesOf(id, drafts, work, laid.finish),
    wait: waitOf(id, work),
  };
}

/** Groove before cope or after it, as the shop has it; all else is the trade's order. */
export function inShopOrder(shop: Shop): readonly OperationId[] {
  if (shop.router.order === 'groove-first') return OPERATION_IDS;
  return OPERATION_IDS.map(id => (id === 'groove' ? 'cope' : id === 'cope' ? 'groove' : id));
}

function piecesByOperation(
  work: Work,
  { blanks, batches, cutPlans }: Laid,
): ReadonlyMap<OperationId, readonly Piece[]> {
  const pieces = new Map<OperationId, Piece[]>(OPERATION_IDS.map(id => [id, []]));
  const add = (route: readonly OperationId[], piece: Piece): void => {
    for (const id of route) pieces.get(id)?.push(piece);
  };
  const parts = new Map<string, Part>(work.doorSet.parts.map(part => [part.code, part]));
  const blankOf = new Map<string, Blank>();
  const binOf = new Map<string, string>(
    cutPlans.flatMap(plan => plan.bins).flatMap(bin => bin.pieces.map(piece => [piece.blank, bin.code])),
  );
  for (const blank of blanks.blanks) {
    const part = partFor(blank, blanks.standsFor, parts);
    const piece = { kind: 'blank' as const, blank, part, door: work.doorOf(part), bin: binOf.get(blank.code) };
    add(blankRoute(blank, part, work), piece);
    for (const code of blank.parts) if (blank.purpose !== 'strip') blankOf.set(code, blank);
  }
  for (const part of parts.values()) {
    add(partRoute(part, work), { kind: 'part', part, door: work.doorOf(part), blank: blankOf.get(part.code) });
  }
  const batchOf = new Map<string, GlueUpBatch>(batches.flatMap(batch => batch.doors.map(door => [door, batch])));
  for (const door of work.doorSet.doors) {
    add(doorRoute(door, work), { kind: 'door', door, batch: batchOf.get(door.code) });
  }
  return pieces;
}

/** Set-up minutes for each setting that is made, and minutes for each piece that is run at it. */
function minutesOf(
  id: OperationId,
  drafts: readonly Draft[],
  { shop }: Work,
  finish: FinishPlan,
): Operation['minutes'] {
  if (id === 'finish') {
    return {
      setup: finish.steps.reduce((sum, step) => sum + step.minutes.setup, 0),
      pieces: finish.steps.reduce((sum, step) => sum + step.minutes.pieces, 0),
    };
  }
  const each = shop.work.minutes[id] ?? OPERATION_MINUTES[id];
  const pieces = drafts.reduce((sum, draft) => sum + draft.pieces.length, 0);
  return { setup: tenths(drafts.length * each.setup), pieces: tenths(pieces * each.piece) };
}

const tenths = (minutes: number): number => Math.round(minutes * 10) / 10;

function waitOf(id: OperationId, { job, shop }: Work): Duration | undefined {
  switch (id) {
    case 'rest':
      return shop.rough.rest;
    case 'glue-panel':
    case 'glue-up':
      return shop.gluing.inClamps;
    case 'cure-panel':
    case 'cure':
      return shop.gluing.beforeMachining;
    case 'cure-finish':
      return addDurations(job.finish.slice(-1).map(step => step.wait));
    default:
      return undefined;
  }
}
