import { assignBlanks, companyOf } from './colour.ts';
import { demandOf, kindsAsked } from './demand.ts';
import { COST_EPSILON, costOfBins, type Filling, placeInEmpty } from './first-plan.ts';
import { findPlace, type Looking, place, type Rule } from './placing.ts';
import type { CuttingProblem } from './problem.ts';
import { copyBin, type OpenBin } from './rows.ts';
import { recreateAll } from './ruin-recreate.ts';

/** So many doors' pieces look for room in so many of the latest bins. */
const BINS_LOOKED_THROUGH = 40;
const RULE: Rule = { fit: 'area', split: 'shorter' };

/**
 * A filling in which more doors come whole from one board, if one is found that costs no more than `most`: doors are put
 * into boards one after another, in many orders, and everything else around them.
 */
export function byDoors(looking: Looking, start: Filling, most: number, looks: number): Filling {
  const { problem, chance } = looking;
  const named = doorsOf(problem);
  const doors = [...named.values()];
  if (start.left.length > 0 || doors.length === 0) return start;
  const until = looking.looks + looks;
  const alone = demandOf(problem, doors.flat());
  let best = start;
  let whole = wholeDoors(problem, named, start.bins);
  while (looking.looks < until && whole < doors.length) {
    const order = doors
      .map(door => ({ door, key: areaOf(problem, door) * (1 - chance() / 2) }))
      .sort((one, two) => two.key - one.key);
    const bins: OpenBin[] = [];
    const left = kindsAsked(alone);
    for (const { door } of order) if (!putDoor(looking, bins, door)) left.push(...door);
    const found = recreateAll(looking, { bins, left });
    looking.looks += LOOKS_A_PIECE * left.length;
    if (found.left.length > 0 || costOfBins(problem, found.bins) > most + COST_EPSILON) continue;
    const count = wholeDoors(problem, named, found.bins);
    if (count <= whole) continue;
    best = found;
    whole = count;
  }
  return best;
}

/** What giving a piece to its door takes, in looks. */
const LOOKS_A_PIECE = 100;

/** Puts all pieces of a door into one bin, the fullest that has room for them or a new one; whether there was any. */
function putDoor(looking: Looking, bins: OpenBin[], door: readonly number[]): boolean {
  const { problem } = looking;
  const from = Math.max(0, bins.length - BINS_LOOKED_THROUGH);
  const fullestFirst = bins
    .map((bin, at) => ({ bin, at }))
    .slice(from)
    .sort((one, two) => two.bin.filled - one.bin.filled);
  for (const { bin, at } of fullestFirst) {
    const copy = copyBin(bin);
    if (!holds(looking, copy, door)) continue;
    bins[at] = copy;
    return true;
  }
  for (const [kind, { available, easy }] of problem.bins.entries()) {
    if (bins.filter(bin => bin.kind === kind).length >= available) continue;
    const where = placeInEmpty(looking, door[0] ?? 0, kind, RULE, easy);
    if (where === undefined || !holds(looking, where.bin, door)) continue;
    bins.push(where.bin);
    return true;
  }
  return false;
}

function holds(looking: Looking, bin: OpenBin, door: readonly number[]): boolean {
  return door.every(kind => {
    const piece = looking.problem.pieces[kind];
    const where = findPlace(looking, kind, [bin], 0, RULE);
    if (piece === undefined || where === undefined) return false;
    place(where, piece, kind);
    return true;
  });
}

/** The kinds of the pieces of each door that has two or more. */
function doorsOf(problem: CuttingProblem): ReadonlyMap<string, readonly number[]> {
  const doors = new Map<string, number[]>();
  for (const [kind, piece] of problem.pieces.entries())
    for (const code of piece.blanks) {
      const name = companyOf(code, 'door');
      if (name !== undefined) doors.set(name, [...(doors.get(name) ?? []), kind]);
    }
  return new Map([...doors].filter(([, kinds]) => kinds.length > 1));
}

const areaOf = ({ pieces }: CuttingProblem, door: readonly number[]): number =>
  door.reduce((total, kind) => total + (pieces[kind]?.area ?? 0), 0);

/** How many doors have all their pieces in one bin, when blanks are given to bins as they are for the packet. */
function wholeDoors(
  problem: CuttingProblem,
  doors: ReadonlyMap<string, readonly number[]>,
  bins: readonly OpenBin[],
): number {
  let whole = 0;
  for (const given of assignBlanks(problem, bins, 'door')) {
    const here = new Map<string, number>();
    for (const code of given.flat()) {
      const name = companyOf(code, 'door') ?? '';
      here.set(name, (here.get(name) ?? 0) + 1);
    }
    for (const [name, count] of here) if (count === doors.get(name)?.length) whole += 1;
  }
  return whole;
}
