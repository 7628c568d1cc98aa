import { type Diagnosed, type Diagnostic, problem } from '../../diagnostics/diagnostic.ts';
import { cellOf } from '../../diagnostics/place.ts';
import type { Shop } from '../../trade/shop.ts';
import { type Length, minus } from '../../units/length.ts';
import type { Units } from '../../units/read-length.ts';
import { allowance, choice, name, size, typedIn } from '../cells.ts';
import { bare, nearest, some } from '../columns.ts';
import type { DefaultUsed, FrameStyle, GrainCut, Infill, SlabStyle, Stock, Style } from '../job.ts';
import type { Named } from '../named.ts';
import { lengthUsed, STANDARD_STYLE_NAME, standardStock, standardStyle, textUsed } from '../standard.ts';
import { type Entry, needed, optional, otherwise, type ReadRow, readEntry, readTable } from '../table.ts';
import type { Sheet } from '../workbook.ts';
import { BUILDS, PANEL_CUTS, PANEL_KINDS, STYLES } from './styles-columns.ts';

const READINGS = {
  name: needed(name),
  build: otherwise('frame', choice(BUILDS)),
  stileWidth: optional(size),
  topRail: optional(size),
  bottomRail: optional(size),
  middleRail: optional(size),
  middleStile: optional(size),
  frameThickness: optional(size),
  grooveDepth: optional(size),
  grooveWidth: optional(size),
  faceToGroove: optional(size),
  tongueLength: optional(size),
  horn: optional(allowance),
  frameStock: optional(name),
  panelStock: optional(name),
  panelKind: otherwise('plywood', choice(PANEL_KINDS)),
  panelThickness: optional(size),
  panelCut: optional(choice(PANEL_CUTS)),
  edgeEasing: optional(allowance),
};

type Row = ReadRow<typeof READINGS>;
type StyleEntry = Entry<keyof typeof STYLES>;

/** What the styles need from around them. */
type Around = { readonly stock: Named<Stock>; readonly shop: Shop; readonly units: Units };

export type StylesRead = Named<Style> & {
  readonly defaults: readonly DefaultUsed[];
  /** Stock that was taken because the workbook names none. */
  readonly standardStock: readonly Stock[];
};

/** The styles; one plain frame where the workbook has none. A row that does not read is reported and left out. */
export function readStyles(sheet: Sheet | undefined, around: Around): Diagnosed<StylesRead> {
  const table = sheet === undefined ? { value: [], diagnostics: [] } : readTable(sheet, STYLES, around.units);
  const entries = table.value.length === 0 && table.diagnostics.length === 0 ? [STANDARD] : table.value;
  const gathered = gatherer();
  const named: string[] = [];
  const items: Style[] = [];
  for (const entry of entries) {
    named.push(typedIn(entry.cells.name));
    const row = readEntry(entry, STYLES, READINGS);
    gathered.found(row.diagnostics);
    const style = row.value && styleOf(row.value, entry, around, gathered);
    const other = items.find(each => bare(each.name) === bare(style?.name ?? ''));
    if (other !== undefined) gathered.found([twice(other, entry)]);
    else if (style !== undefined) items.push(style);
  }
  const { diagnostics, defaults, standardStock } = gathered;
  return { value: { items, named, defaults, standardStock }, diagnostics: [...table.diagnostics, ...diagnostics] };
}

/** The row that a workbook without styles is taken to have. */
const STANDARD: StyleEntry = {
  from: { sheet: 'Styles', row: 1, columns: {} },
  cells: { name: { value: { kind: 'text', text: STANDARD_STYLE_NAME }, units: 'inch' } },
};

const twice = (other: Style, { from }: StyleEntry): Diagnostic =>
  problem('style-twice', cellOf(from, 'name'), { style: other.name, other: String(other.from.row) }, [
    cellOf(other.from, 'name'),
  ]);

/** What is found and taken by default on the way through the sheet. */
type Gathered = ReturnType<typeof gatherer>;

function gatherer() {
  const diagnostics: Diagnostic[] = [];
  const defaults: DefaultUsed[] = [];
  const standardStock: Stock[] = [];
  return {
    diagnostics,
    defaults,
    standardStock,
    found: (more: readonly Diagnostic[]) => void diagnostics.push(...more),
    taken: (used: DefaultUsed) => void defaults.push(used),
    stocked: (stock: Stock) => {
      if (!standardStock.some(each => each.name === stock.name)) standardStock.push(stock);
    },
  };
}

function styleOf(row: Row, entry: StyleEntry, around: Around, gathered: Gathered): Style | undefined {
  return row.build === 'slab' ? slabOf(row, entry, around, gathered) : frameOf(row, entry, around, gathered);
}

function slabOf(row: Row, entry: StyleEntry, around: Around, gathered: Gathered): SlabStyle | undefined {
  const stock = stockFor('panelStock', 'sheet', row, entry, around, gathered);
  if (stock === undefined) return undefined;
  const or = fallback(row, gathered);
  return {
    build: 'slab',
    name: row.name,
    thickness: or('frameThickness', stock.thickness),
    edgeEasing: or('edgeEasing', around.shop.panels.edgeEasing),
    stock: stock.name,
    from: entry.from,
  };
}

function frameOf(row: Row, entry: StyleEntry, around: Around, gathered: Gathered): FrameStyle | undefined {
  const standard = standardStyle(around.units);
  const or = fallback(row, gathered);
  const stileWidth = or('stileWidth', standard.stileWidth);
  const frameThickness = or('frameThickness', standard.frameThickness);
  const grooveDepth = or('grooveDepth', standard.grooveDepth);
  const faceToGroove = or('faceToGroove', standard.faceToGroove);
  const frame = {
    ...({
      build: 'frame',
      name: row.name,
      stileWidth,
      frameThickness,
      grooveDepth,
      faceToGroove,
      from: entry.from,
    } as const),
    // All members of a plain frame are as wide as its stiles.
    topRail: or('topRail', stileWidth),
    bottomRail: or('bottomRail', row.topRail ?? stileWidth),
    middleRail: or('middleRail', row.topRail ?? stileWidth),
    middleStile: or('middleStile', stileWidth),
    grooveWidth: or('grooveWidth', standard.grooveWidth),
    // A matched pair of bits cuts the tongue as long as the groove is deep.
    tongueLength: or('tongueLength', grooveDepth),
    horn: row.horn ?? standard.horn,
    edgeEasing: or('edgeEasing', around.shop.panels.edgeEasing),
  };
  const frameStock = stockFor('frameStock', 'board', row, entry, around, gathered);
  const infill = infillOf(row, minus(frameThickness, faceToGroove), entry, around, gathered);
  return frameStock === undefined || infill === undefined
    ? undefined
    : { ...frame, frameStock: frameStock.name, infill };
}

function infillOf(row: Row, flush: Length, entry: StyleEntry, around: Around, gathered: Gathered): Infill | undefined {
  const or = fallback(row, gathered);
  if (row.panelKind === 'glass') {
    return { kind: 'glass', thickness: or('panelThickness', standardStyle(around.units).glassThickness) };
  }
  const kind = row.panelKind === 'solid' ? 'board' : 'sheet';
  const stock = stockFor('panelStock', kind, row, entry, around, gathered);
  if (stock === undefined) return undefined;
  if (row.panelKind === 'plywood') {
    return { kind: 'plywood', stock: stock.name, thickness: or('panelThickness', stock.thickness) };
  }
  const cut: GrainCut = row.panelCut ?? 'flat-sawn';
  if (row.panelCut === undefined) gathered.taken(textUsed('Styles', `${row.name}: ${STYLES.panelCut.name}`, cut));
  // Flush with the back of the frame.
  return { kind: 'solid', stock: stock.name, thickness: or('panelThickness', flush), cut };
}

/** The length that was given, or another one, which is then noted as a default. */
const fallback =
  (row: Row, gathered: Gathered) =>
  (field: LengthField, usual: Length): Length => {
    const given = row[field];
    if (given === undefined) gathered.taken(lengthUsed('Styles', `${row.name}: ${STYLES[field].name}`, usual));
    return given ?? usual;
  };

type LengthField = { [F in keyof Row]: Row[F] extends Length | undefined ? F : never }[keyof Row];

/**
 * The stock that a style names. Where it names none: the only one of that kind, or a standard one if there is none;
 * of several, none is guessed.
 */
function stockFor(
  field: 'frameStock' | 'panelStock',
  kind: Stock['kind'],
  row: Row,
  entry: StyleEntry,
  around: Around,
  gathered: Gathered,
): Stock | undefined {
  const column = STYLES[field].name;
  const at = cellOf(entry.from, field);
  const { items, named } = around.stock;
  const usual = standardStock(kind, around.shop, around.units);
  const typed = row[field];
  if (typed === undefined) {
    const fit = items.filter(stock => stock.kind === kind);
    if (fit.length > 1) {
      const known = some(fit.map(stock => stock.name));
      gathered.found([problem('stock-missing', at, { column, style: row.name, known })]);
      return undefined;
    }
    const stock = fit[0] ?? usual;
    if (fit.length === 0) gathered.stocked(usual);
    gathered.taken(textUsed('Styles', `${row.name}: ${column}`, stock.name));
    return stock;
  }
  const found = items.find(stock => bare(stock.name) === bare(typed));
  if (found !== undefined) {
    if (found.kind === kind) return found;
    gathered.found([problem('stock-is-other-kind', at, { column, stock: found.name, is: found.kind })]);
  } else if (!named.some(each => bare(each) === bare(typed))) {
    gathered.found([
      problem('stock-unknown', at, { column, typed, nearest: nearest(typed, named) ?? '', known: some(named) }),
    ]);
  }
  return undefined;
}
