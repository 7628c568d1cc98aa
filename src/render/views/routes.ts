import type { Operation, OperationId } from '../../layout/shop-plan.ts';
import type { Draft, View } from '../draft.ts';
import { tagUp } from '../drawings/reminder-drawings.ts';
import type { Figure } from '../figure.ts';
import type { Some } from '../order.ts';
import { isWait, numberedNames, orderOfWork, SECTION_OF } from './order-of-work.ts';
import { type Careful, carefulWith, generalCautions } from './reminders.ts';
import { type RouteRow, routeRows } from './route-rows.ts';
import { facing, oneSetting, type SettingLine, sharedSettings } from './setups.ts';

/**
 * routes.hbs: one sheet for each operation in the order of work, with its set-ups in the order in which they are made.
 * Short ones that follow each other share a page.
 */
export type RoutesView = { readonly stations: readonly RouteStation[] };
/** Operations that follow each other at one machine. */
export type RouteStation = {
  readonly station: string;
  /** What holds for the machine, whatever lies on it. */
  readonly cautions: readonly string[];
  readonly sheets: readonly RouteSheet[];
};
export type RouteSheet = {
  readonly bookmark: string;
  /** Its number in the order of work, and its name. */
  readonly title: string;
  readonly does: string;
  readonly time: string;
  /** Empty where nothing has to wait. */
  readonly wait: string;
  /** Operations that the pieces come from and go on to. */
  readonly before: string;
  readonly after: string;
  readonly careful: Careful | undefined;
  /** What holds for every set-up: how pieces lie, with a drawing where no caution has one beside it, and notes. */
  readonly facing: string;
  readonly facingFigure: string;
  readonly notes: readonly string[];
  /** Where all set-ups have one setting and are two to a row: its name, said once. */
  readonly setting: string;
  /** Settings that are made once for all set-ups. */
  readonly settings: readonly SettingLine[];
  readonly rows: readonly RouteRow[];
};

/** Waiting is no sheet: it is said on the sheet before it. Glue-up, finish and hanging have sections of their own. */
export function routes(draft: Draft): View<RoutesView> | undefined {
  const figures = new Map<string, Figure>();
  const names = numberedNames(draft);
  const operations = sheeted(draft).filter(({ station }) => station !== 'clamps');
  const stations = runsOf(operations).map(run => ({
    station: draft.say(`station.${run[0].station}`),
    cautions: generalCautions(run, draft),
    sheets: run.map(operation => routeSheet(operation, names, draft, figures)),
  }));
  return stations.length === 0 ? undefined : { data: { stations }, figures };
}

/** Operations that follow each other at one machine. */
function runsOf(operations: readonly Operation[]): readonly Some<Operation>[] {
  const runs: [Operation, ...Operation[]][] = [];
  for (const operation of operations) {
    const last = runs.at(-1);
    if (last !== undefined && last[0].station === operation.station) last.push(operation);
    else runs.push([operation]);
  }
  return runs;
}

/** What is glued up before the doors: it stands before their batches. */
export function clampSheets(draft: Draft, figures: Map<string, Figure>): readonly RouteSheet[] {
  const names = numberedNames(draft);
  return sheeted(draft)
    .filter(({ station }) => station === 'clamps')
    .map(operation => routeSheet(operation, names, draft, figures));
}

/** Operations that have a route sheet, in the order of work. */
const sheeted = (draft: Draft): readonly Operation[] =>
  orderOfWork(draft)
    .map(({ operation }) => operation)
    .filter(operation => operation.setups.length > 0 && SECTION_OF[operation.id] === undefined);

function routeSheet(operation: Operation, names: Names, draft: Draft, figures: Map<string, Figure>): RouteSheet {
  const { say } = draft;
  const { setups } = operation;
  const ways = new Set(setups.map(setup => facing(setup, draft)));
  const notes = setups.map(setup => setup.notes.map(note => say(`note.${note}`)));
  const everywhere = (notes[0] ?? []).filter(note => notes.every(each => each.includes(note)));
  const drawing = tagUpFor(operation, draft, figures);
  const careful = carefulWith(operation, drawing, draft, figures);
  const head = {
    facing: ways.size === 1 ? ([...ways][0] ?? '') : '',
    notes: everywhere,
    settings: sharedSettings(setups, draft),
  };
  const rows = routeRows(setups, { ...head, sizes: !SIZELESS.has(operation.id) }, draft);
  return {
    bookmark: `operation-${operation.id}`,
    title: names.get(operation.id) ?? '',
    does: say(`operation.${operation.id}.do`),
    time: timeOf(operation, draft),
    wait: waitAfter(operation, draft),
    ...neighbours(operation, names, draft),
    careful,
    ...head,
    facingFigure: careful === undefined ? drawing : '',
    setting: rows.some(row => row.kind === 'pair') ? oneSetting(setups, draft) : '',
    rows,
  };
}

function timeOf({ minutes }: Operation, { say }: Draft): string {
  const [setup, pieces] = [Math.ceil(minutes.setup), Math.ceil(minutes.pieces)];
  return setup === 0 ? say('route.time-pieces', { pieces }) : say('route.time', { setup, pieces });
}

/** At the first bits everything hangs on the face that is down: drawn once more. */
function tagUpFor({ setups }: Operation, { say }: Draft, figures: Map<string, Figure>): string {
  const tagTells = setups.every(
    ({ orientation }) => orientation?.face === 'show-down' && orientation.edge === 'inside',
  );
  if (!tagTells) return '';
  figures.set(
    'tag-up',
    tagUp(key => say(`drawing.${key}`)),
  );
  return 'tag-up';
}

/** Its own wait, or that of the wait which is an operation of its own and comes next for its pieces. */
function waitAfter(operation: Operation, { plan, say, quantities }: Draft): string {
  const codes = operation.setups[0]?.pieces[0]?.code;
  const route = codes === undefined ? [] : (plan.routes[codes] ?? []);
  const next = plan.operations.find(each => each.id === route[route.indexOf(operation.id) + 1]);
  const wait = operation.wait ?? (next !== undefined && isWait(next) ? next.wait : undefined);
  return wait === undefined ? '' : say('route.wait', { wait: quantities.time(wait) });
}

/** The operations just before and after this one on the routes of its pieces. */
function neighbours(operation: Operation, names: Names, { plan }: Draft): Pick<RouteSheet, 'before' | 'after'> {
  const [before, after] = [new Set<string>(), new Set<string>()];
  for (const piece of operation.setups.flatMap(setup => setup.pieces)) {
    const route = plan.routes[piece.code] ?? [];
    const at = route.indexOf(operation.id);
    if (at > 0) before.add(route[at - 1] ?? '');
    if (at >= 0 && at + 1 < route.length) after.add(route[at + 1] ?? '');
  }
  const named = (ids: ReadonlySet<string>): string => [...ids].map(id => names.get(id)).join(', ');
  return { before: named(before), after: named(after) };
}

/** Where no size of a piece but the setting itself matters, its code is enough: all that belongs to a door shares a box. */
const SIZELESS: ReadonlySet<OperationId> = new Set<OperationId>([
  'rip-rough',
  'plane-thickness',
  'joint-edge',
  'rip-width',
  'cut-length',
  'inspect',
  'groove',
  'rip-panel',
  'cut-panel',
  'break-sheet',
  'sand-panel',
]);

type Names = ReturnType<typeof numberedNames>;
