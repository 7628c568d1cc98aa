import type { Growth, Program, Solver } from '../solver.ts';
import type { Demand } from './demand.ts';
import type { Pattern } from './patterns.ts';
import type { CuttingProblem } from './problem.ts';

/** The linear program over patterns that the search knows so far. It must be closed. */
export type Master = {
  readonly program: Program;
  readonly patterns: readonly Pattern[];
  /** How many of each kind of piece are to be cut, and how many of each kind of bin there are for them. */
  readonly demand: Demand;
  readonly supply: readonly number[];
  readonly costs: readonly number[];
  readonly add: (pattern: Pattern) => void;
  /** Asks for what is left of a plan: patterns with more than that stay, but are not used. */
  readonly ask: (demand: Demand, supply: readonly number[]) => void;
};

/** One row for each kind of piece, then one for each kind of bin of which there are so many and no more. */
export function openMaster(
  problem: CuttingProblem,
  demand: Demand,
  costs: readonly number[],
  patterns: readonly Pattern[],
  solver: Solver,
  growth: Growth = 'any',
): Master {
  const rows = [
    ...demand.map(count => ({ least: count, most: Number.POSITIVE_INFINITY })),
    ...problem.bins.map(bin => ({ least: 0, most: bin.available })),
  ];
  const program = solver.open(rows, growth);
  const kinds = demand.length;
  const known: Pattern[] = [];
  const used: boolean[] = [];
  const asked = { demand: [...demand], supply: problem.bins.map(bin => bin.available) };
  const add = (pattern: Pattern): void => {
    known.push(pattern);
    used.push(true);
    program.add({
      cost: costs[pattern.bin] ?? 0,
      most: Number.POSITIVE_INFINITY,
      rows: [...pattern.counts.keys(), kinds + pattern.bin],
      values: [...pattern.counts.values(), 1],
    });
  };
  const ask: Master['ask'] = (some, supply) => {
    for (const [kind, least] of some.entries())
      if (least !== asked.demand[kind]) program.limitRow(kind, { least, most: Number.POSITIVE_INFINITY });
    for (const [bin, most] of supply.entries())
      if (most !== asked.supply[bin]) program.limitRow(kinds + bin, { least: 0, most });
    asked.demand.splice(0, kinds, ...some);
    asked.supply.splice(0, supply.length, ...supply);
    for (const [column, pattern] of known.entries()) {
      const use = isWithin(pattern, some);
      if (use !== used[column]) program.limit(column, 0, use ? Number.POSITIVE_INFINITY : 0);
      used[column] = use;
    }
  };
  for (const pattern of patterns) add(pattern);
  return { program, patterns: known, ...asked, costs, add, ask };
}

/** Whether a pattern has no more pieces of a kind than are asked for. */
export const isWithin = (pattern: Pattern, demand: Demand): boolean =>
  [...pattern.counts].every(([kind, count]) => count <= (demand[kind] ?? 0));
