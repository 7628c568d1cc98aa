import type { Operation, OperationId } from '../../layout/shop-plan.ts';
import type { Draft, View } from '../draft.ts';
import { tagUp } from '../drawings/reminder-drawings.ts';
import type { Figure } from '../figure.ts';
import { type Careful, carefulWith } from './reminders.ts';
import { type RouteRow, routeRows } from './route-rows.ts';
import { facing, oneSetting } from './setups.ts';

/**
 * routes.hbs: one sheet for each operation, with its set-ups in the order in which they are made. Short ones
 * follow on the page before them, to be cut off.
 */
export type RoutesView = { readonly pages: readonly RoutePage[] };
export type RoutePage = { readonly bookmark: string; readonly title: string; readonly sheets: readonly RouteSheet[] };
export type RouteSheet = {
  /** Whether it follows on the page of another, and stays whole. */
  readonly shared: boolean;
  readonly bookmark: string;
  readonly title: string;
  readonly station: string;
  readonly does: string;
  readonly time: string;
  /** Empty where nothing has to wait. */
  readonly wait: string;
  /** Operations that the pieces come from and go on to. */
  readonly before: string;
  readonly after: string;
  readonly careful: Careful | undefined;
  /** What holds for every set-up: how pieces lie, with a drawing where it is the tag that tells, and notes. */
  readonly facing: string;
  readonly facingFigure: string;
  readonly notes: readonly string[];
  /** Where all set-ups have one and the same setting: its name, said once. */
  readonly setting: string;
  readonly rows: readonly RouteRow[];
};

/** Waiting is no sheet: it is said on the sheet before it. Glue-up, finish and hanging have sheets of their own. */
export function routes(draft: Draft): View<RoutesView> | undefined {
  const figures = new Map<string, Figure>();
  const sheets = draft.plan.operations
    .filter(operation => operation.setups.length > 0 && !isWait(operation) && !ELSEWHERE.has(operation.id))
    .map(operation => routeSheet(operation, draft, figures));
  return sheets.length === 0 ? undefined : { data: { pages: pagesOf(sheets) }, figures };
}

/** A page of its own for each operation, but a short one follows on the page before it, to be cut off. */
function pagesOf(sheets: readonly RouteSheet[]): readonly RoutePage[] {
  const pages: RouteSheet[][] = [];
  for (const sheet of sheets) {
    const last = pages.at(-1);
    if (last !== undefined && isShort(sheet)) last.push({ ...sheet, shared: true });
    else pages.push([sheet]);
  }
  return pages.map(those => ({
    bookmark: those[0]?.bookmark ?? '',
    title: those.map(sheet => sheet.title).join(' · '),
    sheets: those,
  }));
}

/** Two thirds of a page at most. */
const isShort = (sheet: RouteSheet): boolean =>
  (sheet.careful?.figures.length ?? 0) < 2 && sheet.rows.reduce((lines, row) => lines + row.lines, 0) <= SHORT_LINES;

const isWait = (operation: Operation): boolean =>
  operation.wait !== undefined && operation.minutes.setup === 0 && operation.minutes.pieces === 0;

function routeSheet(operation: Operation, draft: Draft, figures: Map<string, Figure>): RouteSheet {
  const { say } = draft;
  const { setups } = operation;
  const ways = new Set(setups.map(setup => facing(setup, draft)));
  const notes = setups.map(setup => setup.notes.map(note => say(`note.${note}`)));
  const everywhere = (notes[0] ?? []).filter(note => notes.every(each => each.includes(note)));
  const shared = { facing: ways.size === 1 ? ([...ways][0] ?? '') : '', notes: everywhere };
  return {
    shared: false,
    bookmark: `operation-${operation.id}`,
    title: say(`operation.${operation.id}`),
    station: say(`station.${operation.station}`),
    does: say(`operation.${operation.id}.do`),
    time: timeOf(operation, draft),
    wait: waitAfter(operation, draft),
    ...neighbours(operation, draft),
    careful: carefulWith(operation, draft, figures),
    ...shared,
    facingFigure: tagUpFor(operation, draft, figures),
    setting: oneSetting(setups, draft),
    rows: routeRows(setups, shared, draft),
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
function neighbours(operation: Operation, { plan, say }: Draft): { readonly before: string; readonly after: string } {
  const [before, after] = [new Set<string>(), new Set<string>()];
  for (const piece of operation.setups.flatMap(setup => setup.pieces)) {
    const route = plan.routes[piece.code] ?? [];
    const at = route.indexOf(operation.id);
    if (at > 0) before.add(route[at - 1] ?? '');
    if (at >= 0 && at + 1 < route.length) after.add(route[at + 1] ?? '');
  }
  const names = (ids: ReadonlySet<string>): string => [...ids].map(id => say(`operation.${id}`)).join(', ');
  return { before: names(before), after: names(after) };
}

/** What has a section of its own, with its cautions and its boxes to tick. */
const ELSEWHERE: ReadonlySet<OperationId> = new Set<OperationId>(['glue-up', 'finish', 'hang']);
const SHORT_LINES = 32;
