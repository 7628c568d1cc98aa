import type { Solver } from '../solver.ts';
import { openPricer } from './bin-pricer.ts';
import { generateColumns } from './column-generation.ts';
import type { Pool } from './cover.ts';
import { areUnlike, type Demand, piecesAsked } from './demand.ts';
import { dive } from './dive.ts';
import type { Effort } from './fewer-bins.ts';
import { costOfBins, type Filling, isBetter } from './first-plan.ts';
import { openMaster } from './master.ts';
import { startingPatterns } from './patterns.ts';
import type { Looking } from './placing.ts';
import { recreateAll } from './ruin-recreate.ts';

/**
 * Whole patterns of the cheapest mix, and the rest put around them; dived for again and again, while there are looks.
 */
export function byPatterns(
  looking: Looking,
  demand: Demand,
  start: Filling,
  least: number,
  pool: Pool,
  solver: Solver,
  { looks, patience }: Effort,
): Filling {
  const { problem } = looking;
  const effort = Math.min(looks, patience * PATTERNS_PATIENCE) + LOOKS_A_PIECE * piecesAsked(demand);
  const worthIt = problem.pieces.length * (areUnlike(demand) ? LOOKS_TO_MIX_UNLIKE : LOOKS_TO_MIX);
  if (start.left.length > 0 || effort < worthIt) return start;
  const until = looking.looks + effort;
  const pricer = openPricer(looking, demand, 'up', effort);
  if (pricer === undefined) return start;
  const costs = problem.bins.map(bin => bin.cost);
  // The bins that a search has seen are a better start than those that it kept.
  const patterns = [...startingPatterns(looking, demand, start), ...pool.patterns()];
  const master = openMaster(problem, demand, costs, patterns, solver);
  const mix = generateColumns(looking, master, pricer, effort / 2);
  const supply = [...master.supply];
  const oneBinLess = (filling: Filling): number => costOfBins(problem, filling.bins) - Math.min(...costs) / 2;
  let best = start;
  let noise = 0;
  // A dive looks for one bin less, and there is none where even fractions cost more than that.
  while (mix !== undefined && looking.looks < until && Math.max(least, mix.cost) <= oneBinLess(best)) {
    const attempt = dive(looking, mix, master, pricer, until - looking.looks, { noise, most: oneBinLess(best) });
    master.ask(demand, supply);
    noise = DIVING_NOISE;
    looking.looks += LOOKS_A_DIVE;
    if (attempt === undefined) continue;
    pool.see(attempt.bins);
    const filling = recreateAll(looking, attempt);
    if (isBetter(problem, filling, best)) best = filling;
  }
  master.program.close();
  return best;
}

/** Chance in the order in which dives take patterns. */
const DIVING_NOISE = 0.5;
/** What a dive takes beside its mixes, in looks. */
const LOOKS_A_DIVE = 5000;
/** Many short dives find what one does not, and are worth so many times the patience of a search. */
const PATTERNS_PATIENCE = 4;
/** With fewer looks for each kind of piece, there is no mix worth the name; where pieces are unlike, it takes many dives. */
const LOOKS_TO_MIX = 10_000;
const LOOKS_TO_MIX_UNLIKE = 90_000;
/** Whole patterns are most of a large plan, so that they have time by its pieces whatever the budget is. */
const LOOKS_A_PIECE = 1000;
