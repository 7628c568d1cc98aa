import type { Door, Part } from '../calculate/door-set.ts';
import { barcodesOf } from '../codes/barcode.ts';
import { inOrder, printPlace } from '../diagnostics/print.ts';
import { say as sayProblem } from '../diagnostics/words.ts';
import type { Blank, CutPlan, Moment, Operation, Reminder, Setup } from '../layout/shop-plan.ts';
import { inMinutes } from '../units/duration.ts';
import { type Length, longest, plus } from '../units/length.ts';
import type { Draft } from './draft.ts';
import { grouped } from './order.ts';
import { MANIFEST_SCHEMA_VERSION, type Manifest } from './packet.ts';
import { draftReminder } from './views/reminders.ts';
import { facing } from './views/setups.ts';

/** The packet as data: what the stations read. Its form is `manifestSchema`. */
export function makeManifest(draft: Draft): Manifest {
  const { job, plan, doorSet, revision } = draft;
  const blanks = blanksOf(draft);
  const cutFrom = new Map(
    plan.cutPlans.flatMap(({ bins }) => bins.flatMap(bin => bin.pieces.map(piece => [piece.blank, bin.code] as const))),
  );
  return {
    schemaVersion: MANIFEST_SCHEMA_VERSION,
    program: draft.program,
    job: {
      number: job.number,
      name: job.name,
      customer: job.customer,
      revision: revision.letter,
      units: job.units,
      language: job.language,
      dueDate: job.dueDate ?? null,
      inputHash: revision.inputHash,
    },
    doors: doorSet.doors.map(door => doorOf(door, draft)),
    parts: doorSet.parts.map(part => partOf(part, blanks.get(part.code), cutFrom, draft)),
    operations: plan.operations.map(operation => operationOf(operation, draft)),
    cutPlans: plan.cutPlans.map(cutPlan => cutPlanOf(cutPlan, draft)),
    batches: plan.batches.map(({ number, doors }) => ({ number, doors: [...doors] })),
    schedule: scheduleOf(draft),
    shopping: plan.shopping.lines.map(({ kind, item, unit, needed, buy }) => ({ kind, item, unit, needed, buy })),
    diagnostics: inOrder(draft.diagnostics).map(diagnostic => ({
      severity: diagnostic.severity,
      code: diagnostic.code,
      at: printPlace(diagnostic.at),
      ...sayProblem(diagnostic, job.language, draft.size),
    })),
  };
}

/** A part that shares its blank needs all of it again; of a panel glued up from strips, every strip. */
function blanksOf({ plan }: Draft): ReadonlyMap<string, readonly Blank[]> {
  const wood = plan.blanks.flatMap(blank => blank.parts.map(part => ({ part, blank })));
  return new Map([...grouped(wood, ({ part }) => part)].map(([part, all]) => [part, all.map(({ blank }) => blank)]));
}

const told = (length: Length, { size }: Draft) => ({ nm: length as number, text: size(length) });

const doorOf = (door: Door, draft: Draft): Manifest['doors'][number] => ({
  code: door.code,
  barcode: door.barcode,
  cabinet: door.cabinet,
  label: door.label,
  room: door.room,
  copy: door.copy,
  leaf: door.leaf,
  front: door.front,
  hand: door.hingeSide ?? null,
  mounting: door.mounting,
  style: door.style,
  width: told(door.width.value, draft),
  height: told(door.height.value, draft),
  thickness: told(door.thickness, draft),
  massKg: Math.round(door.mass * 1000) / 1000,
  hinges: door.hinges.map(hinge => ({ fromTop: told(hinge.fromTop, draft), fromEdge: told(hinge.fromEdge, draft) })),
  gaps: {
    left: told(door.gaps.left, draft),
    right: told(door.gaps.right, draft),
    top: told(door.gaps.top, draft),
    bottom: told(door.gaps.bottom, draft),
    between: door.gaps.between === undefined ? null : told(door.gaps.between, draft),
  },
  route: [...(draft.plan.routes[door.code] ?? [])],
});

const partOf = (
  part: Part,
  blanks: readonly Blank[] | undefined,
  cutFrom: ReadonlyMap<string, string>,
  draft: Draft,
): Manifest['parts'][number] => ({
  code: part.code,
  barcode: part.barcode,
  door: part.door,
  role: part.role,
  name: draft.say(`role.${part.role}`),
  stock: part.stock ?? null,
  length: told(part.length.value, draft),
  width: told(part.width.value, draft),
  thickness: told(part.thickness, draft),
  route: [...(draft.plan.routes[part.code] ?? [])],
  cutFrom: blanks?.map(blank => cutFrom.get(blank.code)).find(bin => bin !== undefined) ?? null,
  rough: roughOf(blanks, draft),
});

/** What is glued up from strips needs all of them, side by side. */
function roughOf(blanks: readonly Blank[] | undefined, draft: Draft): Manifest['parts'][number]['rough'] {
  const [first, ...others] = blanks ?? [];
  if (first === undefined) return null;
  return {
    length: told(longest(first.length, ...others.map(blank => blank.length)), draft),
    width: told(
      others.reduce((sum, blank) => plus(sum, blank.width), first.width),
      draft,
    ),
  };
}

const operationOf = (operation: Operation, draft: Draft): Manifest['operations'][number] => ({
  id: operation.id,
  name: draft.say(`operation.${operation.id}`),
  station: operation.station,
  stationName: draft.say(`station.${operation.station}`),
  minutes: operation.minutes,
  waitMinutes: operation.wait === undefined ? 0 : inMinutes(operation.wait),
  reminders: operation.reminders.map(reminder => reminderOf(reminder, draft)),
  setups: operation.setups.map(setup => setupOf(setup, draft)),
});

const setupOf = (setup: Setup, draft: Draft): Manifest['operations'][number]['setups'][number] => ({
  code: setup.code,
  barcode: setup.barcode,
  facing: facing(setup, draft),
  settings: setup.settings.map(setting => ({
    of: setting.of,
    name: draft.say(`setting.${setting.of}`),
    value: told(setting.value, draft),
    sets: setting.sets,
  })),
  pieces: piecesOf(setup, draft),
  reminders: setup.reminders.map(reminder => reminderOf(reminder, draft)),
});

/** Tags are on parts and doors: a blank counts as what it becomes, and test pieces have no tag. */
const piecesOf = (setup: Setup, { blanks }: Draft): readonly string[] => [
  ...new Set<string>(
    setup.pieces.flatMap<string>(({ kind, code }) => (kind === 'blank' ? (blanks.get(code)?.parts ?? []) : [code])),
  ),
];

/** The schedule for the people that the shop has; where there is none for so many, the one for most. */
function scheduleOf({ job, plan }: Draft): Manifest['schedule'] {
  const { people, startsAt, hoursPerDay, weekdays, daysOff } = job.shop.work;
  const { gluing, finishing } = job.shop;
  const { schedules } = plan.days;
  const schedule = schedules.find(each => each.people === people) ?? schedules.at(-1);
  if (schedule === undefined) return null;
  const when = ({ day, date }: Moment) => ({ day, date: date ?? null });
  return {
    limits: {
      people: schedule.people,
      clamps: gluing.clamps,
      sprayPlaces: finishing.sprayPlaces,
      rackSlots: finishing.rackSlots,
    },
    hours: { startsAt, hoursPerDay, weekdays: [...weekdays], daysOff: [...daysOff] },
    ends: when(schedule.ends),
    tasks: schedule.tasks.map(task => ({
      id: task.id,
      operation: task.operation,
      doors: [...task.doors],
      people: task.people,
      helperAlone: task.helperAlone,
      takes: task.takes,
      work: task.work,
      wait: task.wait,
      after: [...task.after],
      starts: when(task.starts),
      ends: when(task.ends),
    })),
  };
}

const reminderOf = (reminder: Reminder, draft: Draft) => ({
  id: reminder.id,
  text: draftReminder(reminder, draft),
  pieces: [...reminder.pieces],
});

function cutPlanOf(plan: CutPlan, draft: Draft): Manifest['cutPlans'][number] {
  const barcode = barcodesOf(draft.job.number);
  return {
    stock: plan.stock,
    kind: plan.kind,
    bins: plan.bins.length,
    bound: plan.bound.bins,
    offcuts: plan.bins.flatMap(bin =>
      bin.offcuts.map(({ code, length, width }) => ({
        code,
        barcode: barcode(code),
        length: told(length, draft),
        width: told(width, draft),
      })),
    ),
  };
}
