/** Cells in columns of equal width; a long one takes several. */
export type CellGrid<Cell> = { readonly widths: string; readonly rows: readonly (readonly Cell[])[] };
export type Spanning<Cell> = Cell & { readonly span: number };

/** How wide a cell wants to be, what fills up a row, and which cells head those after them. */
type CellKind<Cell> = {
  readonly width: (cell: Cell) => number;
  readonly nothing: Cell;
  readonly isHead?: (cell: Cell) => boolean;
};

/** Cells in the number of columns that takes the fewest rows of a width. */
export function cellGrid<Cell>(
  cells: readonly Cell[],
  room: number,
  { width, nothing, isHead = () => false }: CellKind<Cell>,
): CellGrid<Spanning<Cell>> {
  const needed = cells.map(width);
  const groups = groupsOf(cells.map(isHead));
  let best: Layout | undefined;
  const most = Math.max(1, Math.min(COLUMNS_MAX, Math.floor(room / COLUMN_MIN)));
  // Only the best number of columns gets its cells: a large job has many grids.
  for (let columns = 1; columns <= most; columns += 1) {
    const spans = needed.map(wide => Math.min(columns, Math.max(1, Math.ceil((wide * columns) / room))));
    const begins = rowBeginnings(spans, groups, columns);
    if (best === undefined || begins.length < best.begins.length) best = { columns, spans, begins };
  }
  return best === undefined ? { widths: '*', rows: [] } : gridOf(cells, best, nothing);
}

/** How many columns each cell takes, and the cells that begin rows. */
type Layout = { readonly columns: number; readonly spans: readonly number[]; readonly begins: readonly number[] };

/** For each head, the cell behind the last one that it heads. */
function groupsOf(heads: readonly boolean[]): ReadonlyMap<number, number> {
  const at = heads.flatMap((isHead, index) => (isHead ? [index] : []));
  return new Map(at.map((head, index) => [head, at[index + 1] ?? heads.length]));
}

/** A head begins a row where what it heads takes more than one. */
function rowBeginnings(
  spans: readonly number[],
  groups: ReadonlyMap<number, number>,
  columns: number,
): readonly number[] {
  const begins: number[] = [];
  let left = 0;
  for (const [index, span] of spans.entries()) {
    const end = groups.get(index);
    const isLong = end !== undefined && left < columns && total(spans.slice(index, end)) > columns;
    if (isLong || span > left) {
      begins.push(index);
      left = columns;
    }
    left -= span;
  }
  return begins;
}

/** Rows, each filled up with nothing. */
function gridOf<Cell>(
  cells: readonly Cell[],
  { columns, spans, begins }: Layout,
  nothing: Cell,
): CellGrid<Spanning<Cell>> {
  const spanning = cells.map((cell, index) => ({ ...cell, span: spans[index] ?? 1 }));
  const rows = begins.map((from, row) => {
    const own = spanning.slice(from, begins[row + 1]);
    const left = columns - total(own.map(({ span }) => span));
    return left > 0 ? [...own, { ...nothing, span: left }] : own;
  });
  return { widths: Array.from({ length: columns }, () => '*').join(' '), rows };
}

const total = (spans: readonly number[]): number => spans.reduce((sum, span) => sum + span, 0);

const COLUMNS_MAX = 12;
/** No column of a table is narrower, in points. */
const COLUMN_MIN = 26;
