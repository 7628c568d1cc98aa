import loadHighs, { type Highs, type Model } from 'highs';

/** What the planner asks of a solver of linear programs. Calls return when done, and the same calls give the same answers. */
export type Solver = {
  /** An empty program that is minimised, with these limits on its rows. It must be closed. */
  readonly open: (rows: readonly RowLimits[]) => Program;
};

export type RowLimits = { readonly least: number; readonly most: number };

/** A program that columns are added to. Every column is zero or more. */
export type Program = {
  readonly add: (column: Column) => void;
  readonly limit: (column: number, least: number, most: number) => void;
  /** Least cost with fractions; undefined where no values keep all limits. */
  readonly solve: () => Solution | undefined;
  /**
   * Least cost found in whole numbers within so many nodes of the search tree, starting at `start` where it is given;
   * undefined where none was found.
   */
  readonly solveWhole: (nodes: number, start?: readonly number[]) => Omit<Solution, 'prices'> | undefined;
  readonly close: () => void;
};

export type Column = {
  readonly cost: number;
  readonly most: number;
  readonly rows: readonly number[];
  readonly values: readonly number[];
};

export type Solution = {
  readonly cost: number;
  /** By column. */
  readonly columns: readonly number[];
  /** By row: what one more of it would cost. */
  readonly prices: readonly number[];
};

const NO_ENTRIES = { indices: [], values: [] };
const OPTIMAL = 7;
const SOLUTION_LIMITS: readonly number[] = [OPTIMAL, 11, 12, 14, 16];

/** Loads the solver. It stays in memory; a program of it lives until it is closed. */
export async function loadSolver(): Promise<Solver> {
  // The library is an ES module whose types say that it is none.
  const highs = await (loadHighs as unknown as () => Promise<Highs>)();
  return { open: rows => openProgram(highs, rows) };
}

function openProgram(highs: Highs, rows: readonly RowLimits[]): Program {
  const model = highs.createModel();
  model.options.set({ output_flag: false });
  for (const row of rows) model.addRow(finite(highs, row.least), finite(highs, row.most), NO_ENTRIES);
  let columns = 0;
  return {
    add: column => {
      model.addCol(column.cost, 0, finite(highs, column.most), { indices: column.rows, values: column.values });
      columns += 1;
    },
    limit: (column, least, most) => {
      model.changeColBounds(column, least, finite(highs, most));
    },
    solve: () => solve(model),
    solveWhole: (nodes, start) => solveWhole(highs, model, columns, nodes, start),
    close: () => model.dispose(),
  };
}

const finite = (highs: Highs, limit: number): number =>
  Number.isFinite(limit) ? limit : Math.sign(limit) * highs.infinity;

function solve(model: Model): Solution | undefined {
  model.run();
  if (model.getModelStatus() !== OPTIMAL) return undefined;
  const solution = model.getSolution();
  return { cost: model.getObjectiveValue(), columns: [...solution.colValue], prices: [...solution.rowDual] };
}

function solveWhole(
  highs: Highs,
  model: Model,
  columns: number,
  nodes: number,
  start: readonly number[] | undefined,
): Omit<Solution, 'prices'> | undefined {
  const every = { kind: 'range', from: 0, to: columns - 1 } as const;
  const { integer, continuous } = highs.constants.variableType;
  model.changeColsIntegrality(every, new Int32Array(columns).fill(integer));
  model.options.set({ mip_max_nodes: nodes });
  if (start !== undefined) model.setSolution({ colValue: [...start] });
  model.run();
  const found =
    SOLUTION_LIMITS.includes(model.getModelStatus()) && model.info.get('primal_solution_status') === 2
      ? { cost: model.getObjectiveValue(), columns: [...model.getSolution().colValue].map(Math.round) }
      : undefined;
  model.changeColsIntegrality(every, new Int32Array(columns).fill(continuous));
  return found;
}
