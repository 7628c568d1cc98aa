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
export type Step = Omit<Task, 'starts' | 'ends' | 'over'>;

/** What there is to do: the operations, and which doors are glued up together. */
export type Laid = {
  readonly operations: readonly Operation[];
  readonly batches: readonly GlueUpBatch[];
  readonly finish: FinishPlan;
};

/**
 * The work of a job as a network. What is done to parts is one task for each operation: every set-up is made once, and
 * all pieces are run at it. Doors are glued up in the batches that the clamps hold, and sanded as they come out. They are
 * bored and fitted all together, so that nobody goes to the site twice; only a large job does that in phases. They are
 * finished in loads that the drying rack holds: as few as that takes, or `finer` times as many. And all are hung at once.
 */
export function stepsOf(job: Job, doorSet: DoorSet, laid: Laid, finer: number): readonly Step[] {
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

  const sanded = new Map<DoorCode, readonly string[]>();
  const batches = batchGroups(laid, job, doorSet);
  for (const batch of batches) {
    const ended = run('batch', parts, batch);
    for (const door of batch.doors) sanded.set(door, ended);
  }
  for (const { fitting, hanging } of phaseGroups(laid, batches, doorSet)) {
    const eased = run('fitting', [...new Set(fitting.doors.flatMap(door => sanded.get(door) ?? parts))], fitting);
    const finished = loadsOf(fitting.doors, job, finer).flatMap((doors, load) => {
      const coats = coatsOf(
        job,
        laid.finish,
        { phase: fitting.go, load: load + 1, doors, of: doorSet.doors.length },
        eased,
      );
      steps.push(...coats);
      return ends(coats, eased);
    });
    run('hanging', [...new Set([...finished, ...stops])], hanging);
  }
  return steps;
}

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

/** Those that are glued up together; and those that are not glued up at all, but sanded like the others. */
function batchGroups(laid: Laid, job: Job, doorSet: DoorSet): readonly Group[] {
  const isGlued = new Set(laid.batches.flatMap(batch => batch.doors));
  const others = doorSet.doors.map(door => door.code).filter(code => !isGlued.has(code));
  const slabs = { number: laid.batches.length + 1, doors: others.sort((a, b) => (a < b ? -1 : 1)), clamps: 0 };
  const batches = [...laid.batches, ...(slabs.doors.length > 0 ? [slabs] : [])];
  const shares = sharesOf(
    operationsOf('batch', laid),
    batches.map(batch => batch.doors),
    doorSet,
  );
  return batches.map((batch, at) => ({
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

/** Whole batches after each other, until there are as many doors as one goes to the site with. */
function phaseGroups(
  laid: Laid,
  batches: readonly Group[],
  doorSet: DoorSet,
): readonly { readonly fitting: Group; readonly hanging: Group }[] {
  const phases: DoorCode[][] = [];
  for (const { doors } of batches) {
    const last = phases.at(-1);
    if (last !== undefined && last.length + doors.length <= DOORS_A_PHASE) last.push(...doors);
    else phases.push([...doors]);
  }
  const fitting = sharesOf(operationsOf('fitting', laid), phases, doorSet);
  const hanging = sharesOf(operationsOf('hanging', laid), phases, doorSet);
  return phases.map((doors, at) => {
    const group = { go: at + 1, doors, clamps: 0 };
    return {
      fitting: { ...group, share: fitting[at] ?? new Map() },
      hanging: { ...group, share: hanging[at] ?? new Map() },
    };
  });
}

const loadsOf = (doors: readonly DoorCode[], job: Job, finer: number): readonly (readonly DoorCode[])[] =>
  inGroups(doors, Math.min(doors.length, finer * Math.ceil(doors.length / Math.max(1, job.shop.finishing.rackSlots))));

/** In their order, in so many groups of about the same size. */
const inGroups = <T>(items: readonly T[], count: number): readonly (readonly T[])[] =>
  Array.from({ length: count }, (_, at) =>
    items.slice(Math.round((at * items.length) / count), Math.round(((at + 1) * items.length) / count)),
  );

/** Doors that are fitted, and later hung, in one go: a large kitchen; common practice. */
const DOORS_A_PHASE = 120;
