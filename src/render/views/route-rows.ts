import type { Setup } from '../../layout/shop-plan.ts';
import type { Draft } from '../draft.ts';
import { inRows } from '../order.ts';
import {
  facing,
  measuredCheck,
  oneSetting,
  type PieceCell,
  pieceGrid,
  runsOf,
  type SettingLine,
  settingLines,
  withoutShared,
} from './setups.ts';

/**
 * A row of set-ups on a route sheet, never split between pages: two small ones beside each other where all that tells
 * them apart is one number; else one; and further pieces of one that has many.
 */
export type RouteRow = {
  readonly kind: 'pair' | 'one' | 'pieces';
  readonly setups: readonly RouteSetup[];
  /** Whether the other half of a pair stays empty. */
  readonly alone: boolean;
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
  /** What all pieces have in common: their size and how many they are; else empty. */
  readonly common: string;
  readonly widths: string;
  readonly rows: readonly (readonly PieceCell[])[];
};
export type Adjustment = {
  readonly lead: string;
  readonly measured: string;
  readonly set: string;
  readonly rows: readonly { readonly measured: string; readonly set: string }[];
};

/** What holds for every set-up of the sheet: what is said at its head, and whether the pieces' sizes matter. */
export type Shared = {
  readonly facing: string;
  readonly notes: readonly string[];
  readonly settings: readonly SettingLine[];
  readonly sizes: boolean;
};

/** The set-ups of an operation in rows, in the order in which they are made. */
export function routeRows(setups: readonly Setup[], shared: Shared, draft: Draft): readonly RouteRow[] {
  const paired = setups.length >= PAIRED_FROM && oneSetting(setups, draft) !== '';
  const rows: RouteRow[] = [];
  for (const [index, setup] of setups.entries()) {
    const place = { number: index + 1, count: setups.length };
    if (setup.pieces.length > WIDE_FROM) rows.push(...wideRows(setup, place, shared, draft));
    else if (!paired) rows.push(one(routeSetup(setup, place, shared, draft.paperWidth - SETUP_COLUMN, draft)));
    else {
      const small = routeSetup(setup, place, shared, (draft.paperWidth - GUTTER) / 2, draft);
      const last = rows.at(-1);
      if (last?.kind === 'pair' && last.setups.length < 2) rows.splice(-1, 1, pair([...last.setups, small]));
      else rows.push(pair([small]));
    }
  }
  return rows;
}

type Place = { readonly number: number; readonly count: number };

const pair = (setups: readonly RouteSetup[]): RouteRow => ({
  kind: 'pair',
  setups,
  alone: setups.length < 2,
});

const one = (setup: RouteSetup): RouteRow => ({
  kind: 'one',
  setups: [setup],
  alone: false,
});

/** A set-up of many pieces: its settings, and the pieces over the whole width below, a few rows at a time. */
function wideRows(setup: Setup, place: Place, shared: Shared, draft: Draft): readonly RouteRow[] {
  const whole = routeSetup(setup, place, shared, draft.paperWidth, draft);
  const blocks = inRows(whole.rows, ROWS_IN_BLOCK);
  return [
    one({ ...whole, rows: [] }),
    ...blocks.map((rows): RouteRow => ({ kind: 'pieces', setups: [{ ...whole, rows }], alone: false })),
  ];
}

function routeSetup(setup: Setup, place: Place, shared: Shared, room: number, draft: Draft): RouteSetup {
  const { say } = draft;
  const settings = settingLines(setup, draft);
  return {
    title: setupTitle(setup, place, draft),
    code: setup.code,
    barcode: setup.barcode,
    settings: withoutShared(settings, shared.settings),
    facing: shared.facing === '' ? facing(setup, draft) : '',
    notes: setup.notes.map(note => say(`note.${note}`)).filter(note => !shared.notes.includes(note)),
    adjustment: adjustment(setup, draft),
    tests: setup.testPieces,
    check: measuredCheck(setup, draft),
    runs: runsOf(setup.pieces, draft),
    ...pieceGrid(setup.pieces, { room, commonRoom: besideValue(settings, room, draft), sizes: shared.sizes }, draft),
  };
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
const setupTitle = ({ group }: Setup, place: Place, { say }: Draft): string =>
  group === undefined ? say('route.setup', place) : say(`group.${group.kind}`, { name: group.name });

/** What a small set-up has beside its value, as setup-small.hbs has it; others have a line for it. */
const besideValue = ([line]: readonly SettingLine[], room: number, { paperWidth, pen }: Draft): number =>
  room > paperWidth / 2 ? room : room - SYMBOL_COLUMN - pen.measure(line?.value ?? '', VALUE_SIZE, true);

/** The column of a small set-up's symbol with the gaps beside it, and the size of its value. */
const SYMBOL_COLUMN = 146;
const VALUE_SIZE = 13;
/** The column of the set-up's number and symbol, in points, as route.hbs has it. */
const SETUP_COLUMN = 145;
/** Between two set-ups beside each other. */
const GUTTER = 14;
/** So many set-ups of one kind go two to a row. */
const PAIRED_FROM = 4;
/** Pieces from which on a set-up takes the whole width. */
const WIDE_FROM = 24;
/** Rows that stay together on a page. */
const ROWS_IN_BLOCK = 6;
