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
  let best: CellGrid<Spanning<Cell>> | undefined;
  const most = Math.max(1, Math.min(COLUMNS_MAX, Math.floor(room / COLUMN_MIN)));
  for (let columns = 1; columns <= most; columns += 1) {
    const spanning = cells.map((cell, index) => ({
      ...cell,
      span: Math.min(columns, Math.max(1, Math.ceil(((needed[index] ?? 0) * columns) / room))),
    }));
    const rows = filled(spanning, columns, nothing, isHead);
    const widths = Array.from({ length: columns }, () => '*').join(' ');
    if (best === undefined || rows.length < best.rows.length) best = { widths, rows };
  }
  return best ?? { widths: '*', rows: [] };
}

/** Rows, each filled up with nothing. A head begins a row where what it heads takes more than one. */
function filled<Cell>(
  cells: readonly Spanning<Cell>[],
  columns: number,
  nothing: Cell,
  isHead: (cell: Cell) => boolean,
): readonly (readonly Spanning<Cell>[])[] {
  const rows: Spanning<Cell>[][] = [];
  let left = 0;
  const fillUp = () => {
    if (left > 0) rows.at(-1)?.push({ ...nothing, span: left });
  };
  for (const [index, cell] of cells.entries()) {
    const begins = isHead(cell) && left < columns && headedSpan(cells, index, isHead) > columns;
    if (begins || cell.span > left) {
      fillUp();
      rows.push([]);
      left = columns;
    }
    rows.at(-1)?.push(cell);
    left -= cell.span;
  }
  fillUp();
  return rows;
}

/** Columns that a head takes with the cells under it. */
function headedSpan<Cell>(cells: readonly Spanning<Cell>[], at: number, isHead: (cell: Cell) => boolean): number {
  const next = cells.findIndex((cell, index) => index > at && isHead(cell));
  return cells.slice(at, next === -1 ? undefined : next).reduce((total, { span }) => total + span, 0);
}

const COLUMNS_MAX = 12;
/** No column of a table is narrower, in points. */
const COLUMN_MIN = 26;
