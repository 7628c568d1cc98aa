import type { Chance } from './chance.ts';
import { activityAt, type Network } from './network.ts';

/** A number for each activity: of those that could be next, the one with the lowest is. */
export type Rule = (network: Network) => Float64Array;

/** Least time to spare first: the latest finish that the longest path allows (LFT). */
const latestFinish: Rule = network => Float64Array.from(network.tails, tail => -tail);

/** Latest start (LST). */
const latestStart: Rule = network =>
  Float64Array.from(network.tails, (tail, at) => -(tail + activityAt(network.project, at).duration));

/** Most work waiting for it, directly: greatest rank positional weight (GRPW). */
const mostBehind: Rule = network =>
  Float64Array.from(network.successors, (next, at) =>
    next.reduce(
      (weight, to) => weight - activityAt(network.project, to).duration,
      -activityAt(network.project, at).duration,
    ),
  );

/** The priority rules that hold up best on published instances (Kolisch, European Journal of Operational Research 90, 1996). */
export const RULES: readonly Rule[] = [latestFinish, latestStart, mostBehind];

/** All activities, each after those that it comes after, by a rule. */
export const byRule = (network: Network, rule: Rule): Int32Array => {
  const priority = rule(network);
  return listOf(network, ready => {
    let best = 0;
    for (let place = 1; place < ready.length; place += 1) {
      if ((priority[ready[place] ?? 0] ?? 0) < (priority[ready[best] ?? 0] ?? 0)) best = place;
    }
    return best;
  });
};

/**
 * A list in which the latest finish weighs, and chance decides: each that could be next is drawn by how much worse than
 * the worst it would be to leave it (regret-based biased sampling: Drexl, Management Science 37, 1991).
 */
export function drawn(network: Network, chance: Chance): Int32Array {
  const priority = latestFinish(network);
  return listOf(network, ready => {
    const worst = ready.reduce((most, at) => Math.max(most, priority[at] ?? 0), Number.NEGATIVE_INFINITY);
    const regret = (at: number): number => worst - (priority[at] ?? 0) + 1;
    let left = chance.share() * ready.reduce((sum, at) => sum + regret(at), 0);
    for (const [place, at] of ready.entries()) {
      left -= regret(at);
      if (left < 0) return place;
    }
    return ready.length - 1;
  });
}

/** `choose` says at which place of those that are ready the next one stands. */
function listOf(network: Network, choose: (ready: readonly number[]) => number): Int32Array {
  const open = network.project.activities.map(activity => activity.after.length);
  const ready = network.order.filter(at => open[at] === 0);
  const list = new Int32Array(open.length);
  for (let place = 0; place < list.length; place += 1) {
    const [at = 0] = ready.splice(choose(ready), 1);
    list[place] = at;
    for (const next of network.successors[at] ?? []) {
      open[next] = (open[next] ?? 0) - 1;
      if (open[next] === 0) ready.push(next);
    }
  }
  return list;
}
