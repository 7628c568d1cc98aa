import type { CuttingProblem } from './problem.ts';

/** How many of each kind of piece are to be cut. */
export type Demand = readonly number[];

/** All pieces but those that are left. */
export const demandOf = (problem: CuttingProblem, left: readonly number[]): Demand => {
  const demand = problem.pieces.map(piece => piece.blanks.length);
  for (const kind of left) demand[kind] = (demand[kind] ?? 0) - 1;
  return demand;
};

/** The kind of each piece that is asked for. */
export const kindsAsked = (demand: Demand): number[] =>
  demand.flatMap((count, kind) => new Array<number>(count).fill(kind));

export const piecesAsked = (demand: Demand): number => demand.reduce((sum, count) => sum + count, 0);

export const areaAsked = ({ pieces }: CuttingProblem, demand: Demand): number =>
  pieces.reduce((sum, piece, kind) => sum + piece.area * (demand[kind] ?? 0), 0);

/** Whether there are so few pieces of a kind, on the average, that a whole pattern is hardly ever cut twice. */
export const areUnlike = (demand: Demand): boolean =>
  piecesAsked(demand) < ALIKE * demand.filter(count => count > 0).length;

const ALIKE = 2;
