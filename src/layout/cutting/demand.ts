import type { CuttingProblem } from './problem.ts';

/** How many of each kind of piece are to be cut. */
export type Demand = readonly number[];

export const piecesAsked = (demand: Demand): number => demand.reduce((sum, count) => sum + count, 0);

export const areaAsked = ({ pieces }: CuttingProblem, demand: Demand): number =>
  pieces.reduce((sum, piece, kind) => sum + piece.area * (demand[kind] ?? 0), 0);

/** Whether there are so few pieces of a kind, on the average, that a whole pattern is hardly ever cut twice. */
export const areUnlike = (demand: Demand): boolean =>
  piecesAsked(demand) < ALIKE * demand.filter(count => count > 0).length;

const ALIKE = 2;
