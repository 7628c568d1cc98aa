import type { Pricer } from './bin-pricer.ts';
import { generateColumns, type Mix } from './column-generation.ts';
import { areaAsked, kindsAsked } from './demand.ts';
import { binOf } from './fill.ts';
import { COST_EPSILON, costOfBins } from './first-plan.ts';
import { isWithin, type Master } from './master.ts';
import { type Pattern, singles } from './patterns.ts';
import type { Looking } from './placing.ts';
import type { OpenBin } from './rows.ts';
import type { Attempt } from './ruin-recreate.ts';

/** A pattern whose share is at least this is cut once, when no pattern has a whole number of times in it. */
const SHARE_LEAST = 0.6;
/** Each round may spend this share of the looks that are left: the first ones mix the most. */
const ROUND_SHARE = 0.3;

/**
 * Makes whole bins of a mix of patterns: cuts each pattern its whole number of times, or the patterns with the largest
 * shares once, and mixes anew for what is left, until that is less than a bin or two. With `noise` the order of patterns
 * is one of chance, so that one dive ends elsewhere than another. Given up where even fractions cost more than `most`.
 */
export function dive(
  looking: Looking,
  start: Mix,
  master: Master,
  pricer: Pricer,
  looks: number,
  { noise, most }: { readonly noise: number; readonly most: number },
): Attempt | undefined {
  const { problem } = looking;
  const until = looking.looks + looks;
  const demand = [...master.demand];
  const supply = [...master.supply];
  const bins: OpenBin[] = [];
  let mix: Mix | undefined = start;
  while (mix !== undefined) {
    if (costOfBins(problem, bins) + mix.cost > most + COST_EPSILON) return undefined;
    const taken = wholeBinsOf(ranked(looking, mix, master.patterns, noise), demand, supply, noise === 0);
    for (const { bin, trees } of taken) bins.push(binOf(problem, bin, trees));
    if (taken.length === 0 || areaAsked(problem, demand) < (problem.bins[0]?.area ?? 0)) break;
    // Whatever is left can at least be cut one by one.
    if (taken.some(({ bin }) => supply[bin] === 0))
      for (const [kind, count] of demand.entries())
        if (count > 0) for (const single of singles(looking, kind, supply)) master.add(single);
    master.ask(demand, supply);
    mix = generateColumns(looking, master, pricer, (until - looking.looks) * ROUND_SHARE);
  }
  return { bins, left: kindsAsked(demand) };
}

type Share = { readonly pattern: Pattern; readonly times: number };

/** The patterns of a mix, those with the largest shares first. */
function ranked({ chance }: Looking, { times }: Mix, patterns: readonly Pattern[], noise: number): readonly Share[] {
  const shares: (Share & { readonly key: number })[] = [];
  for (const [index, pattern] of patterns.entries()) {
    const share = times[index] ?? 0;
    if (share > 1e-6) shares.push({ pattern, times: share, key: noise === 0 ? share : share * (1 - noise * chance()) });
  }
  return shares.sort((one, two) => two.key - one.key);
}

/** Takes whole bins off demand and supply: as often as whole numbers say, then once for large shares, or at least one. */
function wholeBinsOf(
  shares: readonly Share[],
  demand: number[],
  supply: number[],
  largeShares: boolean,
): readonly Pattern[] {
  const taken: Pattern[] = [];
  const takeOnce = (pattern: Pattern): void => {
    if (!isWithin(pattern, demand) || (supply[pattern.bin] ?? 0) <= 0) return;
    for (const [kind, count] of pattern.counts) demand[kind] = (demand[kind] ?? 0) - count;
    supply[pattern.bin] = (supply[pattern.bin] ?? 0) - 1;
    taken.push(pattern);
  };
  for (const { pattern, times } of shares) for (let time = 1; time <= times + 1e-6; time += 1) takeOnce(pattern);
  if (largeShares) for (const { pattern, times } of shares) if (times % 1 >= SHARE_LEAST) takeOnce(pattern);
  const [first] = shares;
  if (taken.length === 0 && first !== undefined) takeOnce(first.pattern);
  return taken;
}
