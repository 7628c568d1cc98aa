import type { Operation, OperationId, Setup } from '../../layout/shop-plan.ts';
import type { Draft, View } from '../draft.ts';
import type { Figure } from '../figure.ts';
import { inRows } from '../order.ts';
import { type Careful, carefulWith } from './reminders.ts';
import { facing, measuredCheck, type PieceCell, pieceGrid, runsOf, type SettingLine, settingLines } from './setups.ts';

/**
 * routes.hbs: one sheet for each operation, with its set-ups in the order in which they are made. Short ones that follow
 * each other share a page, to be cut apart.
 */
export type RoutesView = { readonly pages: readonly RoutePage[] };
export type RoutePage = { readonly bookmark: string; readonly title: string; readonly sheets: readonly RouteSheet[] };
export type RouteSheet = {
  /** Whether it shares its page with another. */
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
  /** What holds for every set-up: how pieces lie, and notes. */
  readonly facing: string;
  readonly notes: readonly string[];
  readonly setups: readonly RouteSetup[];
};
export type RouteSetup = {
  readonly title: string;
  readonly code: string;
  /** Empty where the set-up goes on from the row before. */
  readonly barcode: string;
  readonly settings: readonly SettingLine[];
  /** Where it differs from the other set-ups of the sheet. */
  readonly facing: string;
  readonly notes: readonly string[];
  readonly adjustment: Adjustment | undefined;
  /** Codes of the test pieces that are run first. */
  readonly tests: readonly string[];
  readonly check: string;
  /** Passes of every piece; where they differ they stand with the pieces. */
  readonly runs: string;
  /** Many pieces take the whole width, under the settings; few stand beside the symbol. */
  readonly wide: boolean;
  readonly widths: string;
  readonly rows: readonly (readonly PieceCell[])[];
};
export type Adjustment = {
  readonly lead: string;
  readonly measured: string;
  readonly set: string;
  readonly rows: readonly { readonly measured: string; readonly set: string }[];
};

/** Waiting is no sheet: it is said on the sheet before it. Glue-up, finish and hanging have sheets of their own. */
export function routes(draft: Draft): View<RoutesView> | undefined {
  const figures = new Map<string, Figure>();
  const sheets = draft.plan.operations
    .filter(operation => operation.setups.length > 0 && !isWait(operation) && !ELSEWHERE.has(operation.id))
    .map(operation => routeSheet(operation, draft, figures));
  return sheets.length === 0 ? undefined : { data: { pages: pagesOf(sheets) }, figures };
}

/** A sheet of its own for each operation, but short ones that follow each other are put together. */
function pagesOf(sheets: readonly RouteSheet[]): readonly RoutePage[] {
  const pages: RouteSheet[][] = [];
  let wasShort = false;
  for (const sheet of sheets) {
    if (isShort(sheet) && wasShort) pages.at(-1)?.push(sheet);
    else pages.push([sheet]);
    wasShort = isShort(sheet);
  }
  return pages.map(those => ({
    bookmark: those[0]?.bookmark ?? '',
    title: those.map(sheet => sheet.title).join(' · '),
    sheets: those.map(sheet => ({ ...sheet, shared: those.length > 1 })),
  }));
}

/** About half a page at most. */
const isShort = (sheet: RouteSheet): boolean =>
  (sheet.careful?.figures.length ?? 0) < 2 &&
  sheet.setups.reduce((lines, setup) => lines + setup.rows.length + (setup.barcode === '' ? 0 : 3), 0) <= SHORT_LINES;

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
    time: say('route.time', { setup: Math.ceil(operation.minutes.setup), pieces: Math.ceil(operation.minutes.pieces) }),
    wait: waitAfter(operation, draft),
    ...neighbours(operation, draft),
    careful: carefulWith(operation, draft, figures),
    ...shared,
    setups: setups.flatMap((setup, index) => routeSetups(setup, index, setups.length, shared, draft)),
  };
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

function routeSetups(
  setup: Setup,
  index: number,
  count: number,
  shared: Pick<RouteSheet, 'facing' | 'notes'>,
  draft: Draft,
): readonly RouteSetup[] {
  const { say } = draft;
  const number = { number: index + 1, count };
  const wide = setup.pieces.length > WIDE_FROM;
  const grid = pieceGrid(setup.pieces, draft.paperWidth - (wide ? 0 : SETUP_COLUMN), draft);
  const blocks = inRows(grid.rows, ROWS_IN_BLOCK);
  const first: RouteSetup = {
    title: setupTitle(setup, number, draft),
    code: setup.code,
    barcode: setup.barcode,
    settings: settingLines(setup, draft),
    facing: shared.facing === '' ? facing(setup, draft) : '',
    notes: setup.notes.map(note => say(`note.${note}`)).filter(note => !shared.notes.includes(note)),
    adjustment: adjustment(setup, draft),
    tests: setup.testPieces,
    check: measuredCheck(setup, draft),
    runs: runsOf(setup.pieces, draft),
    wide,
    widths: grid.widths,
    rows: blocks[0] ?? [],
  };
  return [first, ...blocks.slice(1).map(rows => ({ ...CONTINUED, wide, widths: grid.widths, rows }))];
}

const adjustment = ({ adjustment: table }: Setup, { say, caliper }: Draft): Adjustment | undefined =>
  table === undefined
    ? undefined
    : {
        lead: say('route.adjust', { measure: say(`measure.${table.measure}`), planned: caliper(table.planned) }),
        measured: say('route.adjust.measured'),
        set: say('route.adjust.set', { setting: say(`setting.${table.setting}`) }),
        rows: table.rows.map(each => ({ measured: caliper(each.measured), set: caliper(each.set) })),
      };

/** Its number among the set-ups of the sheet, or what keeps its pieces together: a sheet, a batch, a room. */
const setupTitle = (
  { group }: Setup,
  number: { readonly number: number; readonly count: number },
  { say }: Draft,
): string => (group === undefined ? say('route.setup', number) : say(`group.${group.kind}`, { name: group.name }));

/** A set-up of many pieces goes on in further rows, which do not repeat its settings. */
const CONTINUED: Omit<RouteSetup, 'wide' | 'widths' | 'rows'> = {
  title: '',
  code: '',
  barcode: '',
  settings: [],
  facing: '',
  notes: [],
  adjustment: undefined,
  tests: [],
  check: '',
  runs: '',
};

/** What has a section of its own, with its cautions and its boxes to tick. */
const ELSEWHERE: ReadonlySet<OperationId> = new Set<OperationId>(['glue-up', 'finish', 'hang']);
/** The column of the set-up's number and symbol, in points, as routes.hbs has it. */
const SETUP_COLUMN = 145;
/** Pieces from which on a set-up takes the whole width. */
const WIDE_FROM = 24;
/** Rows that stay together on a page. */
const ROWS_IN_BLOCK = 6;
const SHORT_LINES = 20;
