import type { DoorSet } from '../../calculate/door-set.ts';
import type { DoorCode } from '../../codes/codes.ts';
import type { Job } from '../../import/job.ts';
import { CLAMPS_FOR_A_PANEL } from '../../trade/gluing.ts';
import { duration } from '../../units/duration.ts';
import type { FinishPlan, GlueUpBatch, Operation, Task } from '../shop-plan.ts';
import { coatsOf } from './coats.ts';
import { LINES, type Line } from './lines.ts';
import { type Share, sharesOf, wholeWork } from './shares.ts';

/** A task before anybody knows when it is done. */
export type Step = Omit<Task, 'starts' | 'ends'>;

/** What there is to do: the operations, and which doors are glued up together. */
export type Laid = {
  readonly operations: readonly Operation[];
  readonly batches: readonly GlueUpBatch[];
  readonly finish: FinishPlan;
};

/**
 * The work of a job as a network. What is done to parts is one task for each operation: every set-up is made once, and
 * all pieces are run at it. Doors are glued up in the batches that the clamps hold. From the clamps to the room they go
 * in `loads` of about the same size; `fewestLoads` says how many the drying rack asks for.
 */
export function stepsOf(job: Job, doorSet: DoorSet, laid: Laid, loads: number): readonly Step[] {
  const steps: Step[] = [];
  const run = (line: Line, after: readonly string[], group?: Group): readonly string[] => {
    const added = chain(operationsOf(line, laid), job, after, group);
    steps.push(...added);
    return ends(added, after);
  };

  const rough = run('rough', []);
  const frames = run('frame', rough);
  const strips = panelGroups(laid, job, doorSet).flatMap(group => run('strips', rough, group));
  const panels = run('panel', [...run('sheet', []), ...strips]);
  const stops = run('stops', rough);
  const parts = [...new Set([...frames, ...panels])];

  const cured = new Map<DoorCode, readonly string[]>();
  for (const batch of batchGroups(laid, job, doorSet)) {
    const ended = run('batch', parts, batch);
    for (const door of batch.doors) cured.set(door, ended);
  }
  for (const { before, after } of loadGroups(laid, doorSet, loads)) {
    const ready = [...new Set(before.doors.flatMap(door => cured.get(door) ?? parts))];
    const eased = run('load', ready, before);
    const coats = coatsOf(job, laid.finish, before, doorSet.doors.length, eased);
    steps.push(...coats);
    run('fitting', [...ends(coats, eased), ...stops], after);
  }
  return steps;
}

/** So many loads at least, that the rack holds each of them. */
export const fewestLoads = (doorSet: DoorSet, job: Job): number =>
  Math.ceil(doorSet.doors.length / Math.max(1, job.shop.finishing.rackSlots));

/** Pieces that go through a line together, and what each operation takes for them. */
export type Group = {
  readonly go: number;
  readonly doors: readonly DoorCode[];
  readonly share: Share;
  readonly clamps: number;
};

/** One operation after the other; those that have nothing to do for the group are left out. No group: all pieces. */
function chain(
  operations: readonly Operation[],
  job: Job,
  after: readonly string[],
  group: Group | undefined,
): readonly Step[] {
  const steps: Step[] = [];
  for (const operation of operations) {
    const work = group === undefined ? wholeWork(operation) : group.share.get(operation.id);
    if (work === undefined) continue;
    steps.push({
      id: group === undefined ? operation.id : `${operation.id}/${group.go}`,
      operation: operation.id,
      go: group?.go ?? 1,
      coat: undefined,
      doors: group?.doors ?? [],
      people: work > 0 ? 1 : 0,
      helperAlone: job.shop.work.helperAlone.includes(operation.id),
      work,
      wait: operation.wait ?? duration(0),
      after: ends(steps, after),
      takes: { clamps: operation.station === 'clamps' ? (group?.clamps ?? 0) : 0, sprayPlaces: 0, rackSlots: 0 },
    });
  }
  return steps;
}

/** The last of a chain, or what came before an empty one. */
const ends = (steps: readonly Step[], before: readonly string[]): readonly string[] => {
  const last = steps.at(-1);
  return last === undefined ? before : [last.id];
};

const operationsOf = (line: Line, laid: Laid): readonly Operation[] =>
  laid.operations.filter(({ id }) => LINES[id] === line);

function batchGroups(laid: Laid, job: Job, doorSet: DoorSet): readonly Group[] {
  const groups = laid.batches.map(batch => batch.doors);
  const shares = sharesOf(operationsOf('batch', laid), groups, doorSet);
  return laid.batches.map((batch, at) => ({
    go: batch.number,
    doors: batch.doors,
    share: shares[at] ?? new Map(),
    clamps: Math.min(batch.clamps, job.shop.gluing.clamps),
  }));
}

/** Solid panels, as many at a time as the clamps hold. */
function panelGroups(laid: Laid, job: Job, doorSet: DoorSet): readonly Group[] {
  const operations = operationsOf('strips', laid);
  const panels = (operations[0]?.setups ?? []).flatMap(setup => setup.pieces.map(piece => piece.code as string));
  const atOnce = Math.max(1, Math.floor(job.shop.gluing.clamps / CLAMPS_FOR_A_PANEL));
  const doorOf = new Map<string, DoorCode>(doorSet.parts.map(part => [part.code, part.door]));
  const groups = inGroups(panels, Math.ceil(panels.length / atOnce));
  const shares = sharesOf(operations, groups, doorSet);
  return groups.map((codes, at) => ({
    go: at + 1,
    doors: [...new Set(codes.flatMap(code => doorOf.get(code) ?? []))],
    share: shares[at] ?? new Map(),
    clamps: Math.min(job.shop.gluing.clamps, codes.length * CLAMPS_FOR_A_PANEL),
  }));
}

/** Doors that are finished together, those first that are ready first: what is not glued up, then batch by batch. */
function loadGroups(laid: Laid, doorSet: DoorSet, count: number): readonly { before: Group; after: Group }[] {
  const glued = laid.batches.flatMap(batch => batch.doors);
  const isGlued = new Set(glued);
  const others = doorSet.doors.map(door => door.code).filter(code => !isGlued.has(code));
  const doors = [...others.sort((a, b) => (a < b ? -1 : 1)), ...glued];
  const loads = inGroups(doors, count);
  const before = sharesOf(operationsOf('load', laid), loads, doorSet);
  const after = sharesOf(operationsOf('fitting', laid), loads, doorSet);
  return loads.map((codes, at) => {
    const group = { go: at + 1, doors: codes, clamps: 0 };
    return {
      before: { ...group, share: before[at] ?? new Map() },
      after: { ...group, share: after[at] ?? new Map() },
    };
  });
}

/** In their order, in so many groups of about the same size. */
const inGroups = <T>(items: readonly T[], count: number): readonly (readonly T[])[] =>
  Array.from({ length: count }, (_, at) =>
    items.slice(Math.round((at * items.length) / count), Math.round(((at + 1) * items.length) / count)),
  );
