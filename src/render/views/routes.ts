import type { Operation, Setup } from '../../layout/shop-plan.ts';
import type { Draft, View } from '../draft.ts';
import type { Figure } from '../figure.ts';
import { inRows } from '../order.ts';
import { type Caution, cautions, generalCautions } from './reminders.ts';
import {
  codeColumns,
  facing,
  measuredCheck,
  type PieceGroup,
  pieceGroups,
  type SettingLine,
  settingLines,
} from './setups.ts';

/** routes.hbs: one sheet for each operation, with its set-ups in the order in which they are made. */
export type RoutesView = { readonly operations: readonly RouteSheet[] };
export type RouteSheet = {
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
  /** Whether there is anything to be careful of. */
  readonly careful: boolean;
  readonly general: readonly string[];
  readonly cautions: readonly Caution[];
  /** What holds for every set-up: how pieces lie, and notes. */
  readonly facing: string;
  readonly notes: readonly string[];
  readonly setups: readonly RouteSetup[];
};
export type RouteSetup = {
  readonly title: string;
  readonly code: string;
  readonly barcode: string;
  /** A set-up of many pieces goes on in further rows, which do not repeat its settings. */
  readonly continued: boolean;
  readonly settings: readonly SettingLine[];
  /** Where it differs from the other set-ups of the sheet. */
  readonly facing: string;
  readonly notes: readonly string[];
  readonly adjustment: Adjustment | undefined;
  /** Rows of codes. */
  readonly tests: readonly (readonly string[])[];
  readonly check: string;
  readonly groups: readonly PieceGroup[];
};
export type Adjustment = {
  readonly lead: string;
  readonly measured: string;
  readonly set: string;
  readonly rows: readonly { readonly measured: string; readonly set: string }[];
};

/** Waiting is no sheet: it is said on the sheet before it. */
export function routes(draft: Draft): View<RoutesView> | undefined {
  const figures = new Map<string, Figure>();
  const operations = draft.plan.operations.filter(operation => operation.setups.length > 0 && !isWait(operation));
  if (operations.length === 0) return undefined;
  return { data: { operations: operations.map(operation => routeSheet(operation, draft, figures)) }, figures };
}

const isWait = (operation: Operation): boolean =>
  operation.wait !== undefined && operation.minutes.setup === 0 && operation.minutes.pieces === 0;

function routeSheet(operation: Operation, draft: Draft, figures: Map<string, Figure>): RouteSheet {
  const { say } = draft;
  const { setups } = operation;
  const ways = new Set(setups.map(setup => facing(setup, draft)));
  const notes = setups.map(setup => setup.notes.map(note => say(`note.${note}`)));
  const everywhere = (notes[0] ?? []).filter(note => notes.every(each => each.includes(note)));
  const careful = { general: generalCautions(operation, draft), cautions: cautions(operation, draft, figures) };
  const shared = { facing: ways.size === 1 ? ([...ways][0] ?? '') : '', notes: everywhere };
  return {
    bookmark: `operation-${operation.id}`,
    title: say(`operation.${operation.id}`),
    station: say(`station.${operation.station}`),
    does: say(`operation.${operation.id}.do`),
    time: say('route.time', { setup: Math.ceil(operation.minutes.setup), pieces: Math.ceil(operation.minutes.pieces) }),
    wait: waitAfter(operation, draft),
    ...neighbours(operation, draft),
    ...careful,
    careful: careful.general.length + careful.cautions.length > 0,
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
  const { say, size } = draft;
  const room = draft.paperWidth - SETUP_COLUMN;
  const columns = codeColumns([...setup.pieces.map(piece => piece.code), ...setup.testPieces], room, draft);
  const number = { number: index + 1, count };
  const first: RouteSetup = {
    title: setupTitle(setup, number, draft),
    code: setup.code,
    barcode: setup.barcode,
    continued: false,
    settings: settingLines(setup.settings, draft),
    facing: shared.facing === '' ? facing(setup, draft) : '',
    notes: setup.notes.map(note => say(`note.${note}`)).filter(note => !shared.notes.includes(note)),
    adjustment:
      setup.adjustment === undefined
        ? undefined
        : {
            lead: say('route.adjust', {
              measure: say(`measure.${setup.adjustment.measure}`),
              planned: size(setup.adjustment.planned),
            }),
            measured: say('route.adjust.measured'),
            set: say('route.adjust.set', { setting: say(`setting.${setup.adjustment.setting}`) }),
            rows: setup.adjustment.rows.map(each => ({ measured: size(each.measured), set: size(each.set) })),
          },
    tests: inRows(setup.testPieces, columns),
    check: measuredCheck(setup, draft),
    groups: [],
  };
  const blocks = inBlocks(pieceGroups(setup.pieces, columns, draft));
  return blocks.map((groups, block) =>
    block === 0
      ? { ...first, groups }
      : { ...CONTINUED, title: say('route.continued', number), code: setup.code, groups },
  );
}

/** Its number among the set-ups of the sheet, or what keeps its pieces together: a sheet, a batch, a room. */
const setupTitle = (
  { group }: Setup,
  number: { readonly number: number; readonly count: number },
  { say }: Draft,
): string => (group === undefined ? say('route.setup', number) : say(`group.${group.kind}`, { name: group.name }));

/** A block of rows is not split between pages, so a set-up of many pieces is many blocks. One at least. */
function inBlocks(groups: readonly PieceGroup[]): readonly (readonly PieceGroup[])[] {
  const blocks: PieceGroup[][] = [[]];
  let used = 0;
  for (const group of groups) {
    for (const rows of inRows(group.rows, ROWS_IN_BLOCK)) {
      if (used > 0 && used + rows.length + 1 > ROWS_IN_BLOCK) {
        blocks.push([]);
        used = 0;
      }
      blocks.at(-1)?.push({ ...group, rows });
      used += rows.length + 1;
    }
  }
  return blocks;
}

const CONTINUED: RouteSetup = {
  title: '',
  code: '',
  barcode: '',
  continued: true,
  settings: [],
  facing: '',
  notes: [],
  adjustment: undefined,
  tests: [],
  check: '',
  groups: [],
};

/** The column of the set-up's number and symbol, in points, as routes.hbs has it. */
const SETUP_COLUMN = 145;
const ROWS_IN_BLOCK = 18;
