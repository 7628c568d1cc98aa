import type { Network } from './network.ts';
import { overAt } from './project.ts';

/** What no plan can be shorter than, and what makes it so: the longest path, or the resource of that number. */
export type Bound = { readonly makespan: number; readonly by: 'path' | number };

/** The longest chain of work and waits, or the busiest resource, whichever asks for more. */
export function boundOf(network: Network): Bound {
  let bound: Bound = { makespan: longestPath(network), by: 'path' };
  for (const resource of network.project.capacities.keys()) {
    const makespan = busiest(network, resource);
    if (makespan > bound.makespan) bound = { makespan, by: resource };
  }
  return bound;
}

function longestPath({ project, heads }: Network): number {
  const ends = project.activities.map((activity, at) => overAt(activity, heads[at] ?? 0, project.clock));
  return ends.reduce((longest, end) => Math.max(longest, end), 0);
}

/**
 * Of all activities that cannot start before some moment: that moment, all their use of the resource shared out over
 * what there is of it, and the least that follows any of them. Tried for the head of each activity, latest first.
 */
function busiest({ project, heads, tails }: Network, resource: number): number {
  const capacity = project.capacities[resource] ?? 0;
  const users = project.activities
    .flatMap((activity, at) => {
      const amount = activity.needs.reduce((sum, need) => sum + (need.resource === resource ? need.amount : 0), 0);
      return amount === 0 || activity.duration === 0 ? [] : [{ at, work: amount * activity.duration }];
    })
    .sort((a, b) => (heads[b.at] ?? 0) - (heads[a.at] ?? 0) || a.at - b.at);
  let bound = 0;
  let work = 0;
  let tail = Number.POSITIVE_INFINITY;
  for (const user of users) {
    work += user.work;
    tail = Math.min(tail, tails[user.at] ?? 0);
    bound = Math.max(bound, (heads[user.at] ?? 0) + Math.ceil(work / capacity) + tail);
  }
  return bound;
}
