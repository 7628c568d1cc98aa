import { type Element, isElement, type Node } from '../markup.ts';
import { columnWidths } from './columns.ts';
import { type Context, points, TINT, within } from './context.ts';
import { sideBySide } from './side-by-side.ts';
import { type Align, type Sheet, type Strip, stacked } from './strip.ts';

/** How a cell's content becomes strips, and how wide it is by itself. */
export type Filling = {
  readonly stack: (nodes: readonly Node[], room: number, context: Context) => readonly Strip[];
  readonly widest: (nodes: readonly Node[], context: Context) => number;
};

/** A table's rows, each a strip that is not split. Where a row starts a page, the table's heads come above it. */
export function table(element: Element, room: number, context: Context, filling: Filling): readonly Strip[] {
  const rows = element.children.filter(isElement);
  const grid = gridOf(element, rows, room, context, filling);
  const strips: Strip[] = [];
  const heads: Strip[] = [];
  for (const [index, row] of rows.entries()) {
    const isHead = row.attributes['head'] === 'yes' && heads.length === index;
    const next = rows[index + 1]?.attributes['head'] === 'yes' ? 0.5 : 1;
    const ruled = { ...grid, under: isHead ? next : 0.5, over: index === 0 };
    const repeated = isHead || heads.length === 0 ? undefined : stacked(heads, true);
    const strip = rowStrip(row, ruled, context, filling, isHead, repeated);
    if (isHead) heads.push(strip);
    strips.push(strip);
  }
  return element.attributes['keep'] === 'yes' ? [stacked(strips)] : strips;
}

type Grid = {
  readonly lefts: readonly number[];
  readonly widths: readonly number[];
  readonly aligns: readonly (string | undefined)[];
  readonly rules: string;
  readonly padX: number;
  readonly padY: number;
  readonly room: number;
};

type RuledGrid = Grid & { readonly under: number; readonly over: boolean };

function gridOf(element: Element, rows: readonly Element[], room: number, context: Context, filling: Filling): Grid {
  const { widths: said, aligns, rules = 'rows', pad } = element.attributes;
  const padX = points(pad, 4);
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
  return { lefts, widths, aligns: aligns?.split(' ') ?? [], rules, padX, padY: points(pad, 3), room };
}

const cellsOf = (row: Element): readonly Element[] => row.children.filter(isElement);
const spanOf = (cell: Element): number => Number(cell.attributes['span'] ?? 1);
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
function rowContext(row: Element, context: Context): Context {
  const isHead = row.attributes['head'] === 'yes';
  return within(row, isHead ? { ...context, style: 'small', bold: true } : context);
}

function rowStrip(
  row: Element,
  grid: RuledGrid,
  context: Context,
  filling: Filling,
  isHead: boolean,
  heads: Strip | undefined,
): Strip {
  const inRow = rowContext(row, context);
  let column = 0;
  const cells = cellsOf(row).map(cell => {
    const span = spanOf(cell);
    const left = grid.lefts[column] ?? 0;
    const width = sum(grid.widths.slice(column, column + span));
    const align = (cell.attributes['align'] ?? grid.aligns[column] ?? inRow.align) as Align;
    column += span;
    const inCell = { ...within(cell, inRow), align };
    const room = Math.max(1, width - 2 * grid.padX);
    const strips = filling.stack(cell.children, room, inCell);
    return { left, width, x: left + grid.padX, strips, isTinted: cell.attributes['fill'] === 'light' };
  });
  const isTinted = row.attributes['fill'] === 'light';
  return sideBySide(cells, {
    pad: grid.padY,
    place: 'line',
    keepsNext: isHead || row.attributes['keep'] === 'next',
    ...(heads === undefined ? {} : { heads }),
    trim: (x, y, height, sheet) => {
      if (isTinted) sheet.tints.push({ x, y, width: grid.room, height, grey: TINT });
      for (const cell of cells) {
        if (cell.isTinted) sheet.tints.push({ x: x + cell.left, y, width: cell.width, height, grey: TINT });
      }
      rule(grid, cells, x, y, height, sheet);
    },
  });
}

function rule(
  grid: RuledGrid,
  cells: readonly { readonly left: number }[],
  x: number,
  y: number,
  height: number,
  sheet: Sheet,
): void {
  if (grid.rules === 'none') return;
  const across = (at: number, weight: number) =>
    sheet.items.push({ kind: 'line', x1: x, y1: at, x2: x + grid.room, y2: at, weight });
  across(y + height, grid.under);
  if (grid.rules !== 'grid') return;
  if (grid.over) across(y, 0.5);
  for (const left of [...cells.map(cell => cell.left), grid.room]) {
    sheet.items.push({ kind: 'line', x1: x + left, y1: y, x2: x + left, y2: y + height, weight: 0.5 });
  }
}
