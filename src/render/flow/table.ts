import { type Element, isElement, type Node } from '../markup.ts';
import { columnWidths } from './columns.ts';
import { type Context, changed, points, TINT, within } from './context.ts';
import { type Column, sideBySide } from './side-by-side.ts';
import { type Sheet, type Strip, stacked } from './strip.ts';

/** How a cell's content becomes strips, and how wide it is by itself. */
export type Filling = {
  readonly stack: (nodes: readonly Node[], room: number, context: Context) => readonly Strip[];
  readonly widest: (nodes: readonly Node[], context: Context) => number;
};

/** The weight of rules between rows: 0.5 points are gone after a bad copy. */
const HAIR = 0.75;

/** A table's rows, each a strip that is not split. Where a row starts a page, the table's heads come above it. */
export function table(element: Element, room: number, context: Context, filling: Filling): readonly Strip[] {
  const rows = element.children.filter(isElement);
  const grid = gridOf(element, rows, room, context, filling);
  const isHead = ({ attributes }: Element) => attributes['head'] === 'yes';
  const first = rows.findIndex(row => !isHead(row));
  const heads = rows.slice(0, first === -1 ? rows.length : first).map((row, index) => {
    const under = index === first - 1 ? 1 : HAIR;
    return rowStrip(row, grid, context, filling, { under, isFirst: index === 0, isHead: true });
  });
  const look: Look = { under: HAIR, isFirst: false, isHead: false };
  const repeated = heads.length === 0 ? look : { ...look, heads: stacked(heads, true) };
  const body = rows
    .slice(heads.length)
    .map((row, index) => rowStrip(row, grid, context, filling, { ...repeated, isFirst: index + heads.length === 0 }));
  const strips = [...heads, ...body];
  return element.attributes['keep'] === 'yes' ? [stacked(strips)] : strips;
}

/** How a row stands in its table: the weight of the rule under it, and the heads that come again above it. */
type Look = { readonly under: number; readonly isFirst: boolean; readonly isHead: boolean; readonly heads?: Strip };

type Grid = {
  readonly lefts: readonly number[];
  readonly widths: readonly number[];
  readonly aligns: readonly (string | undefined)[];
  readonly rules: string;
  readonly padX: number;
  readonly padY: number;
  readonly room: number;
  /** Its words begin and end where its rules do. */
  readonly isFlush: boolean;
};

function gridOf(element: Element, rows: readonly Element[], room: number, context: Context, filling: Filling): Grid {
  const { widths: said, aligns, rules = 'rows', pad } = element.attributes;
  // Rows may be set close, columns never: figures of two of them would run together.
  const padX = rules === 'none' ? points(pad, 4) : Math.max(3, points(pad, 4));
  const count = Math.max(1, ...rows.map(row => cellsOf(row).reduce((total, cell) => total + spanOf(cell), 0)));
  const named = said?.split(' ') ?? [];
  if (said !== undefined && named.length !== count) {
    context.complain(element, `${named.length} widths are named for ${count} columns`);
  }
  const asked = Array.from({ length: count }, (_, column) => named[column] ?? '*');
  const natural = (column: number) => naturalOf(column, rows, context, filling) + 2 * padX;
  const { widths, reason } = columnWidths(asked, room, natural, text => points(text, 0));
  if (reason !== undefined) context.complain(element, reason);
  const lefts = widths.map((_, column) => sum(widths.slice(0, column)));
  const isFlush = rules !== 'grid' && !rows.some(isTinted);
  const padY = points(pad, 3);
  return { lefts, widths, aligns: aligns?.split(' ') ?? [], rules, padX, padY, room, isFlush };
}

const cellsOf = (row: Element): readonly Element[] => row.children.filter(isElement);
const spanOf = (cell: Element): number => Number(cell.attributes['span'] ?? 1);
/** A tint with words at its very edge looks cut off. */
const isTinted = (row: Element): boolean =>
  [row, ...cellsOf(row)].some(({ attributes }) => attributes['fill'] === 'light');

const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);

/** The widest cell of a column, leaving out those that span several. */
function naturalOf(column: number, rows: readonly Element[], context: Context, filling: Filling): number {
  let width = 0;
  for (const row of rows) {
    const inRow = rowContext(row, context);
    let at = 0;
    for (const cell of cellsOf(row)) {
      const span = spanOf(cell);
      if (at === column && span === 1) width = Math.max(width, filling.widest(cell.children, within(cell, inRow)));
      at += span;
    }
  }
  return width;
}

/** Heads are small and bold unless they say otherwise. */
const rowContext = (row: Element, context: Context): Context =>
  within(row, row.attributes['head'] === 'yes' ? changed(context, { style: 'small', bold: 'yes' }) : context);

function rowStrip(row: Element, grid: Grid, context: Context, filling: Filling, look: Look): Strip {
  const inRow = rowContext(row, context);
  const cells: Cell[] = [];
  let column = 0;
  for (const cell of row.children) {
    if (!isElement(cell)) continue;
    const left = grid.lefts[column] ?? 0;
    const align = cell.attributes['align'] ?? grid.aligns[column];
    column += spanOf(cell);
    const width = (grid.lefts[column] ?? grid.room) - left;
    const before = grid.isFlush && left === 0 ? 0 : grid.padX;
    const after = grid.isFlush && column >= grid.widths.length ? 0 : grid.padX;
    const inCell = within(cell, inRow);
    const aligned = align === undefined || align === inCell.align ? inCell : changed(inCell, { align });
    const strips = filling.stack(cell.children, Math.max(1, width - before - after), aligned);
    cells.push({ left, width, x: left + before, strips, isTinted: cell.attributes['fill'] === 'light' });
  }
  const isTintedRow = row.attributes['fill'] === 'light';
  return sideBySide(cells, {
    pad: grid.padY,
    place: 'line',
    keepsNext: look.isHead || row.attributes['keep'] === 'next',
    heads: look.heads,
    trim: (x, y, height, sheet) => {
      if (isTintedRow) sheet.tints.push({ x, y, width: grid.room, height, grey: TINT });
      for (const cell of cells) {
        if (cell.isTinted) sheet.tints.push({ x: x + cell.left, y, width: cell.width, height, grey: TINT });
      }
      if (grid.rules !== 'none') rule(grid, look, cells, x, y, height, sheet);
    },
  });
}

type Cell = Column & { readonly left: number; readonly width: number; readonly isTinted: boolean };

function rule(
  grid: Grid,
  look: Look,
  cells: readonly Cell[],
  x: number,
  y: number,
  height: number,
  sheet: Sheet,
): void {
  const across = (at: number, weight: number) =>
    sheet.items.push({ kind: 'line', x1: x, y1: at, x2: x + grid.room, y2: at, weight });
  across(y + height, look.under);
  if (grid.rules !== 'grid') return;
  if (look.isFirst) across(y, HAIR);
  for (const left of [...cells.map(cell => cell.left), grid.room]) {
    sheet.items.push({ kind: 'line', x1: x + left, y1: y, x2: x + left, y2: y + height, weight: HAIR });
  }
}
