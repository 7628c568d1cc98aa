import loadHighs, { type Highs, type Model } from 'highs';

/** What the planner asks of a solver of linear programs. Calls return when done, and the same calls give the same answers. */
export type Solver = {
  /** An empty program that is minimised, with these limits on its rows. It must be closed. */
  readonly open: (rows: readonly RowLimits[], growth?: Growth) => Program;
};

/**
 * How a program comes to its next answer: a few new columns leave the last answer a feasible one, which is half the time
 * where there are many rows of ones; otherwise its prices are the better start.
 */
export type Growth = 'by-few-columns' | 'any';

export type RowLimits = { readonly least: number; readonly most: number };

/** A program that columns are added to. Every column is zero or more. */
export type Program = {
  readonly add: (column: Column) => void;
  readonly limit: (column: number, least: number, most: number) => void;
  readonly limitRow: (row: number, limits: RowLimits) => void;
  /** Least cost with fractions; undefined where no values keep all limits, or where it would take more work than `work`. */
  readonly solve: (work: number) => Solution | undefined;
  /** Least cost found in whole numbers; undefined where none was found. */
  readonly solveWhole: (limits: WholeLimits) => WholeSolution | undefined;
  /**
   * What its calls have taken so far: about millionths of a second, but counted from iterations and columns, so that it
   * is the same wherever and whenever the program is solved.
   */
  readonly work: () => number;
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
  readonly columns: Float64Array;
  /** By row: what one more of it would cost. */
  readonly prices: Float64Array;
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
  return { open: (rows, growth = 'any') => openProgram(highs, rows, growth) };
}

function openProgram(highs: Highs, rows: readonly RowLimits[], growth: Growth): Program {
  const model = highs.createModel();
  model.options.set({ output_flag: false, mip_rel_gap: 0 });
  for (const row of rows) model.addRow(finite(highs, row.least), finite(highs, row.most), NO_ENTRIES);
  let columns = 0;
  let work = 0;
  let grown = false;
  const few = growth === 'by-few-columns';
  const share = few ? WORK_BY_FEW : 1;
  return {
    add: column => {
      model.addCol(column.cost, 0, finite(highs, column.most), { indices: column.rows, values: column.values });
      columns += 1;
      grown = true;
    },
    limit: (column, least, most) => {
      model.changeColBounds(column, least, finite(highs, most));
    },
    limitRow: (row, { least, most }) => {
      model.changeRowBounds(row, finite(highs, least), finite(highs, most));
    },
    solve: limit => {
      if (few) model.options.set({ simplex_strategy: grown && work > 0 ? PRIMAL : DUAL });
      grown = false;
      const { solution, iterations } = solve(model, Math.ceil(limit / (share * workOf(columns))));
      work += share * (WORK_A_COLUMN * columns + iterations * workOf(columns));
      return solution;
    },
    solveWhole: ({ nodes, gap }) => {
      work += WORK_OF_WHOLE;
      return solveWhole(highs, model, columns, nodes, gap);
    },
    work: () => work,
    close: () => model.dispose(),
  };
}

const DUAL = 1;
const PRIMAL = 4;

/** Measured by least squares over five thousand programs of 6 to 330 rows and up to 3,300 columns. */
const WORK_A_COLUMN = 1.5;
/** Of two thousand programs that grew by few columns: they take so much of what others do. */
const WORK_BY_FEW = 0.8;
const workOf = (columns: number): number => 45 + 0.035 * columns;
/** Programs in whole numbers are asked of a few columns only. */
const WORK_OF_WHOLE = 3000;

const finite = (highs: Highs, limit: number): number =>
  Number.isFinite(limit) ? limit : Math.sign(limit) * highs.infinity;

function solve(model: Model, most: number): { readonly solution: Solution | undefined; readonly iterations: number } {
  model.options.set({ simplex_iteration_limit: Math.max(1, most) });
  model.run();
  const iterations = Math.max(0, Number(model.info.get('simplex_iteration_count')));
  if (model.getModelStatus() !== OPTIMAL) return { solution: undefined, iterations };
  const { colValue, rowDual } = model.getSolution();
  return { solution: { cost: model.getObjectiveValue(), columns: colValue, prices: rowDual }, iterations };
}

function solveWhole(
  highs: Highs,
  model: Model,
  columns: number,
  nodes: number,
  gap: number,
): WholeSolution | undefined {
  const every = { kind: 'range', from: 0, to: columns - 1 } as const;
  const { integer, continuous } = highs.constants.variableType;
  model.changeColsIntegrality(every, new Int32Array(columns).fill(integer));
  model.options.set({ mip_max_nodes: nodes, mip_abs_gap: gap });
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
