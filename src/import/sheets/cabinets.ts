import { type Diagnosed, type Diagnostic, problem } from '../../diagnostics/diagnostic.ts';
import { cellOf } from '../../diagnostics/place.ts';
import type { Shop } from '../../trade/shop.ts';
import type { Units } from '../../units/read-length.ts';
import { allowance, choice, count, name, note, size, sizes, typedIn } from '../cells.ts';
import { bare } from '../columns.ts';
import type { FaceFrame, FrontKind, Grid, Hanging, Mounting, Opening } from '../job.ts';
import { addressOf, type Named } from '../named.ts';
import { type Entry, needed, optional, otherwise, type ReadRow, readEntry, readTable } from '../table.ts';
import type { Sheet } from '../workbook.ts';
import { CABINETS, EXAMPLE_CABINET, HINGE_SIDES, KINDS, LEAVES, MOUNTINGS, PULLS } from './cabinets-columns.ts';

const READINGS = {
  cabinet: needed(name),
  label: otherwise('', name),
  room: otherwise('', name),
  quantity: otherwise(1, count(1, 999)),
  kind: otherwise('door', choice(KINDS)),
  width: needed(size),
  height: needed(size),
  mounting: otherwise('overlay', choice(MOUNTINGS)),
  overlayLeft: optional(allowance),
  overlayRight: optional(allowance),
  overlayTop: optional(allowance),
  overlayBottom: optional(allowance),
  leaves: optional(choice(LEAVES)),
  hingeSide: optional(choice(HINGE_SIDES)),
  style: optional(name),
  panelsHigh: optional(count(1, 12)),
  panelsWide: otherwise(1, count(1, 12)),
  middleRailHeights: otherwise([], sizes),
  frameLeft: optional(size),
  frameRight: optional(size),
  frameTop: optional(size),
  frameBottom: optional(size),
  rightNeighbour: optional(name),
  topNeighbour: optional(name),
  pull: optional(choice(PULLS)),
  note: otherwise('', note),
};

const FRONT_KINDS: { readonly [K in keyof typeof KINDS]: FrontKind } = {
  door: 'door',
  'drawer front': 'drawer-front',
  'false front': 'false-front',
  'end panel': 'end-panel',
};

type Row = ReadRow<typeof READINGS>;
type CabinetEntry = Entry<keyof typeof CABINETS>;

/** An opening whose style is still as it was typed, or was not. */
export type TypedOpening = Omit<Opening, 'style'> & { readonly style: string | undefined };

/** What other rows and sheets are asked about an opening. */
export type Reference = Pick<TypedOpening, 'cabinet' | 'label' | 'style' | 'from'>;

/** The openings; and those rows that do not read, as far as they refer to something. */
export type CabinetsRead = Named<TypedOpening> & { readonly unread: readonly Reference[] };

/** The openings of the Cabinets sheet. A row that does not read is reported and left out. */
export function readCabinets(sheet: Sheet, shop: Shop, units: Units): Diagnosed<CabinetsRead> {
  const table = readTable(sheet, CABINETS, units);
  const diagnostics: Diagnostic[] = [...table.diagnostics];
  const items: TypedOpening[] = [];
  const named: string[] = [];
  const unread: Reference[] = [];
  for (const entry of table.value) {
    if (bare(typedIn(entry.cells.cabinet)) === bare(EXAMPLE_CABINET)) {
      diagnostics.push(problem('example-not-counted', cellOf(entry.from, 'cabinet'), {}));
      continue;
    }
    named.push(addressOf(typedIn(entry.cells.cabinet), typedIn(entry.cells.label)));
    const row = readEntry(entry, CABINETS, READINGS);
    diagnostics.push(...row.diagnostics);
    const opening = row.value && openingOf(row.value, entry, shop);
    if (opening?.value !== undefined) items.push(opening.value);
    else unread.push(...referenceOf(row.readable, entry));
    diagnostics.push(...(opening?.diagnostics ?? stillWrong(row.readable, entry, shop)));
  }
  return { value: { items, named, unread }, diagnostics };
}

/** What is wrong with the rest of a row of which some cells do not read: all of it is to be said in one go. */
function stillWrong(row: Partial<Row>, entry: CabinetEntry, shop: Shop): readonly Diagnostic[] {
  const named = { ...row, cabinet: row.cabinet ?? typedIn(entry.cells.cabinet) };
  return [
    ...(has(named, 'kind', 'leaves', 'hingeSide') ? hangingOf(named, entry, shop).diagnostics : []),
    ...(has(named, 'panelsHigh', 'panelsWide', 'middleRailHeights') ? gridOf(named, entry).diagnostics : []),
  ];
}

const referenceOf = (row: Partial<Row>, { from }: CabinetEntry): readonly Reference[] =>
  has(row, 'cabinet', 'label', 'style') ? [{ cabinet: row.cabinet, label: row.label, style: row.style, from }] : [];

const has = <R extends Partial<Row>, F extends keyof Row>(row: R, ...fields: readonly F[]): row is R & Pick<Row, F> =>
  fields.every(field => field in row);

function openingOf(row: Row, entry: CabinetEntry, shop: Shop): Diagnosed<TypedOpening | undefined> {
  const hanging = hangingOf(row, entry, shop);
  const grid = gridOf(row, entry);
  const diagnostics = [...hanging.diagnostics, ...grid.diagnostics];
  if (hanging.value === undefined || grid.value === undefined) return { value: undefined, diagnostics };
  const { cabinet, label, room, quantity, width, height, style, pull, note } = row;
  const value: TypedOpening = {
    ...{ cabinet, label, room, quantity, width, height, style, pull, note },
    kind: FRONT_KINDS[row.kind],
    mounting: mountingOf(row, shop),
    hanging: hanging.value,
    grid: grid.value,
    faceFrame: faceFrameOf(row),
    from: entry.from,
  };
  return { value, diagnostics };
}

type Hung = Pick<Row, 'cabinet' | 'kind' | 'leaves' | 'hingeSide'>;

/** A pair says so in Leaves, or by its hinges; a missing hinge side is never guessed. */
function hangingOf(row: Hung, { from }: CabinetEntry, shop: Shop): Diagnosed<Hanging | undefined> {
  const at = cellOf(from, 'hingeSide');
  const { cabinet } = row;
  const hangsOn = row.hingeSide === 'none' ? undefined : row.hingeSide;
  const unused = [problem('hinge-side-unused', at, { cabinet })];
  if (row.kind !== 'door') return { value: { kind: 'fixed' }, diagnostics: hangsOn === undefined ? [] : unused };
  if (row.leaves === '2' || (row.leaves === undefined && hangsOn === 'pair')) {
    const isSide = hangsOn === 'left' || hangsOn === 'right';
    return { value: { kind: 'pair', gap: shop.doors.pairGap }, diagnostics: isSide ? unused : [] };
  }
  return hangsOn === undefined || hangsOn === 'pair'
    ? { value: undefined, diagnostics: [problem('hinge-side-missing', at, { cabinet })] }
    : { value: { kind: 'single', hingeSide: hangsOn }, diagnostics: [] };
}

function mountingOf(row: Row, shop: Shop): Mounting {
  if (row.mounting === 'inset') {
    const clearance = shop.doors.insetClearance;
    return { kind: 'inset', clearance: { left: clearance, right: clearance, top: clearance, bottom: clearance } };
  }
  const usual = shop.doors.overlay;
  const overlay = {
    left: row.overlayLeft ?? usual,
    right: row.overlayRight ?? usual,
    top: row.overlayTop ?? usual,
    bottom: row.overlayBottom ?? usual,
  };
  return { kind: 'overlay', overlay };
}

/** Heights of middle rails alone tell how many panels there are. */
function gridOf(row: Pick<Row, 'cabinet' | keyof Grid>, { from }: CabinetEntry): Diagnosed<Grid | undefined> {
  const { cabinet, middleRailHeights, panelsWide } = row;
  const given = middleRailHeights.length;
  const panelsHigh = row.panelsHigh ?? given + 1;
  const at = cellOf(from, 'middleRailHeights');
  if (given > 0 && given !== panelsHigh - 1) {
    return {
      value: undefined,
      diagnostics: [problem('middle-rail-count', at, { cabinet, panels: panelsHigh, given })],
    };
  }
  const rises = middleRailHeights.every((height, index) => index === 0 || height > (middleRailHeights[index - 1] ?? 0));
  return rises
    ? { value: { panelsHigh, panelsWide, middleRailHeights }, diagnostics: [] }
    : { value: undefined, diagnostics: [problem('middle-rails-out-of-order', at, { cabinet })] };
}

const faceFrameOf = (row: Row): FaceFrame => ({
  left: row.frameLeft,
  right: row.frameRight,
  top: row.frameTop,
  bottom: row.frameBottom,
  rightNeighbour: row.rightNeighbour,
  topNeighbour: row.topNeighbour,
});
