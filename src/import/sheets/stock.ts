import { type Diagnosed, type Diagnostic, problem } from '../../diagnostics/diagnostic.ts';
import { cellOf } from '../../diagnostics/place.ts';
import type { Shop } from '../../trade/shop.ts';
import type { Length } from '../../units/length.ts';
import type { Density } from '../../units/mass.ts';
import { readLength, type Units } from '../../units/read-length.ts';
import {
  choice,
  complain,
  count,
  isComplaint,
  listed,
  name,
  type Reader,
  size,
  typedIn,
  writtenIn,
  yesOrNo,
} from '../cells.ts';
import { bare } from '../columns.ts';
import type { DefaultUsed, Price, Span, Stock, StockSize } from '../job.ts';
import type { Named } from '../named.ts';
import { money } from '../quantities.ts';
import { lengthUsed } from '../standard.ts';
import { type Entry, needed, optional, otherwise, type ReadRow, readEntry, readTable } from '../table.ts';
import type { Sheet } from '../workbook.ts';
import { GRAINS, PRICED_BY, STOCK, STOCK_KINDS } from './stock-columns.ts';

/** kg/m³, or pounds to the cubic foot. */
const density: Reader<Density> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const [, figure = '', unit = ''] = /^([\d.]+)\s*(kg\/m[³3]|lbs?\/ft[³3])?$/i.exec(written) ?? [];
  // 1 lb/ft³ = 0.45359237 / 0.3048³ kg/m³.
  const value = Number(figure) * (unit.startsWith('l') || unit.startsWith('L') ? 0.45359237 / 0.3048 ** 3 : 1);
  return value >= 50 && value <= 3000
    ? value
    : complain('form-unreadable', { typed: written, form: '600, or 44 lb/ft³' });
};

/** `12-16; 40 to 43`: from one end of the board. */
const defects: Reader<readonly Span[]> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const spans = listed(written).map(each => {
    const [start, end, more] = each.split(/\s*(?:to|a|\.\.|[-–—])\s*/).map(part => readLength(part, cell.units));
    return start !== undefined && end !== undefined && more === undefined && start < end ? { start, end } : undefined;
  });
  return spans.every(span => span !== undefined)
    ? spans.filter(span => span !== undefined)
    : complain('form-unreadable', { typed: written, form: '12-16; 40-43' });
};

const READINGS = {
  name: needed(name),
  kind: needed(choice(STOCK_KINDS)),
  species: optional(name),
  thickness: needed(size),
  width: optional(size),
  length: optional(size),
  onHand: otherwise(0, count(0, 9999)),
  buy: otherwise(true, yesOrNo),
  price: optional(money),
  pricedBy: optional(choice(PRICED_BY)),
  grain: otherwise('length', choice(GRAINS)),
  density: optional(density),
  defects: otherwise([], defects),
};

type Row = ReadRow<typeof READINGS>;
type StockEntry = Entry<keyof typeof STOCK>;

export type StockRead = Named<Stock> & { readonly defaults: readonly DefaultUsed[] };

/** Stock of one name is one stock in several sizes. A row that does not read is reported and left out. */
export function readStock(sheet: Sheet, shop: Shop, units: Units): Diagnosed<StockRead> {
  const table = readTable(sheet, STOCK, units);
  const diagnostics: Diagnostic[] = [...table.diagnostics];
  const items = new Map<string, Stock>();
  const named: string[] = [];
  const defaults: DefaultUsed[] = [];
  for (const entry of table.value) {
    const row = readEntry(entry, STOCK, READINGS);
    diagnostics.push(...row.diagnostics);
    named.push(typedIn(entry.cells.name));
    if (row.value === undefined) continue;
    const of = items.get(bare(row.value.name));
    const sized = sizeOf(row.value, entry, shop);
    defaults.push(...sized.defaults);
    if (of !== undefined) diagnostics.push(...disagreements(row.value, entry, of));
    const stock = of ?? stockOf(row.value, entry);
    items.set(bare(stock.name), { ...stock, sizes: [...stock.sizes, sized.size] });
  }
  return { value: { items: [...items.values()], named, defaults }, diagnostics };
}

const stockOf = (row: Row, { from }: StockEntry): Stock => ({
  name: row.name,
  kind: row.kind,
  species: row.species ?? row.name,
  thickness: row.thickness,
  // A board's grain always runs with its length.
  grain: row.kind === 'board' ? 'length' : row.grain,
  density: row.density,
  sizes: [],
  from,
});

function sizeOf(
  row: Row,
  { from }: StockEntry,
  shop: Shop,
): { readonly size: StockSize; readonly defaults: readonly DefaultUsed[] } {
  const usual = row.kind === 'board' ? shop.rough.standardBoard : shop.rough.standardSheet;
  const { width = usual.width, length = usual.length, onHand, buy } = row;
  const used = (field: 'width' | 'length', given: Length | undefined): readonly DefaultUsed[] =>
    given === undefined ? [lengthUsed('Stock', `${row.name}: ${STOCK[field].name}`, usual[field])] : [];
  const size = { width, length, onHand, buy, price: priceOf(row), defects: row.defects, from };
  return { size, defaults: [...used('width', row.width), ...used('length', row.length)] };
}

function priceOf({ price, pricedBy, kind }: Row): Price | undefined {
  const by = pricedBy ?? (kind === 'board' ? 'board foot' : 'sheet');
  return price === undefined ? undefined : { by: by === 'board foot' ? 'board-foot' : by, amount: price };
}

/** Where a further size of a stock says something else of the stock itself. An empty cell says nothing. */
function disagreements(row: Row, entry: StockEntry, first: Stock): readonly Diagnostic[] {
  const fields = ['kind', 'species', 'thickness', 'grain', 'density'] as const;
  return fields.flatMap(field => {
    if (entry.cells[field] === undefined || row[field] === first[field]) return [];
    const facts = { column: STOCK[field].name, stock: row.name, other: String(first.from.row) };
    return [problem('stock-disagrees', cellOf(entry.from, field), facts, [cellOf(first.from, field)])];
  });
}
