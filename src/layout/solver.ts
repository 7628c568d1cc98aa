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
   * Least cost found in whole numbers, starting at `start` where it is given; undefined where none was found.
   */
  readonly solveWhole: (limits: WholeLimits, start?: readonly number[]) => WholeSolution | undefined;
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

/** Nodes of the search tree, and a cost that is not worth saving: the search ends when no more than that can be saved. */
export type WholeLimits = { readonly nodes: number; readonly gap: number };

export type WholeSolution = {
  readonly cost: number;
  readonly columns: readonly number[];
  /** Whether no other whole numbers cost less by more than the gap. */
  readonly proven: boolean;
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
  model.options.set({ output_flag: false, mip_rel_gap: 0 });
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
    solveWhole: (limits, start) => solveWhole(highs, model, columns, limits, start),
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
  { nodes, gap }: WholeLimits,
  start: readonly number[] | undefined,
): WholeSolution | undefined {
  const every = { kind: 'range', from: 0, to: columns - 1 } as const;
  const { integer, continuous } = highs.constants.variableType;
  model.changeColsIntegrality(every, new Int32Array(columns).fill(integer));
  model.options.set({ mip_max_nodes: nodes, mip_abs_gap: gap });
  if (start !== undefined) model.setSolution({ colValue: [...start] });
  model.run();
  const found =
    SOLUTION_LIMITS.includes(model.getModelStatus()) && model.info.get('primal_solution_status') === 2
      ? {
          cost: model.getObjectiveValue(),
          columns: [...model.getSolution().colValue].map(Math.round),
          proven: model.getModelStatus() === OPTIMAL,
        }
      : undefined;
  model.changeColsIntegrality(every, new Int32Array(columns).fill(continuous));
  return found;
}
