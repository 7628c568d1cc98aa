import { activityAt, type Network } from './network.ts';
import { overAt } from './project.ts';

/** What no plan can be shorter than, and what makes it so: the longest path, or the resource of that number. */
export type Bound = { readonly makespan: number; readonly by: 'path' | number };

/** The longest chain of work and waits, or the busiest resource, whichever asks for more. */
export function boundOf(network: Network): Bound {
  let bound: Bound = { makespan: longestPath(network), by: 'path' };
  for (const resource of network.project.capacities.keys()) {
    for (const makespan of [inTurn(network, resource, bound.makespan), busiest(network, resource, bound.makespan)]) {
      if (makespan > bound.makespan) bound = { makespan, by: resource };
    }
  }
  return bound;
}

function longestPath({ project, heads }: Network): number {
  const ends = project.activities.map((activity, at) => overAt(activity, heads[at] ?? 0, project.clock));
  return ends.reduce((longest, end) => Math.max(longest, end), 0);
}

/**
 * Of all activities that cannot start before some moment: one of them ends last, and not before all their use of the
 * resource is through, shared out over what there is of it. The project ends no sooner than after that one's followers.
 * Tried for the head of each activity. Returns `least` where nothing asks for more.
 */
function busiest(network: Network, resource: number, least: number): number {
  const capacity = network.project.capacities[resource] ?? 0;
  const users = usersOf(network, resource).sort((a, b) => b.head - a.head || a.at - b.at);
  let work = 0;
  let soonest: User | undefined;
  const tries = users.map((user, place) => {
    work += user.amount * user.duration;
    if (soonest === undefined || tailOf(network, user) < tailOf(network, soonest)) soonest = user;
    const end = user.head + Math.ceil(work / capacity);
    // Any one of them tells what the try can give at most, and spares nearly every other look at them all.
    return { count: place + 1, end, atMost: overAfter(network, soonest.at, end) };
  });
  const activities = users.map(user => user.at);
  let bound = least;
  for (const { count, end, atMost } of tries.sort((a, b) => b.atMost - a.atMost)) {
    if (atMost <= bound) break;
    bound = endsAfter(network, activities.slice(0, count), end, bound);
  }
  return bound;
}

const tailOf = ({ tails }: Network, { at }: User): number => tails[at] ?? 0;

/**
 * Activities of which no two find room together come one after the other, each when what the one before it holds is free
 * again. None is shorter, or held for less, than the shortest.
 */
function inTurn(network: Network, resource: number, least: number): number {
  const { project } = network;
  const capacity = project.capacities[resource] ?? 0;
  const users = usersOf(network, resource).filter(user => 2 * user.amount > capacity);
  if (users.length < 2) return least;
  const shortest = users.reduce((most, user) => Math.min(most, user.duration), Number.POSITIVE_INFINITY);
  const hold = users.reduce((most, user) => Math.min(most, user.hold), Number.POSITIVE_INFINITY);
  let end = users.reduce((first, user) => Math.min(first, user.head), Number.POSITIVE_INFINITY) + shortest;
  for (let turn = 1; turn < users.length; turn += 1) end = project.clock.after(end, hold) + shortest;
  return endsAfter(
    network,
    users.map(user => user.at),
    end,
    least,
  );
}

/** When the project ends at the earliest if one of `activities` ends at `end`; `least` where that is no later. */
function endsAfter(network: Network, activities: readonly number[], end: number, least: number): number {
  let earliest = Number.POSITIVE_INFINITY;
  for (const at of activities) {
    earliest = Math.min(earliest, overAfter(network, at, end));
    if (earliest <= least) return least;
  }
  return earliest;
}

/** What no plan can be over before if `at` ends at `end`: for very many activities, the sum of least waits must do. */
const overAfter = (network: Network, at: number, end: number): number =>
  network.order.length > FOLLOWED_MAX ? end + (network.tails[at] ?? 0) : followedFrom(network, at, end);

/** When everything that comes after `at` is over, if that ends at `end` and resources are plenty. */
function followedFrom({ project, successors, order, rank }: Network, at: number, end: number): number {
  const ready = new Float64Array(order.length).fill(NOT_AFTER);
  let latest = project.clock.after(end, activityAt(project, at).wait);
  for (const next of successors[at] ?? []) ready[next] = latest;
  for (let place = (rank[at] ?? 0) + 1; place < order.length; place += 1) {
    const from = order[place] ?? 0;
    const start = ready[from] ?? NOT_AFTER;
    if (start === NOT_AFTER) continue;
    const over = overAt(activityAt(project, from), start, project.clock);
    latest = Math.max(latest, over);
    for (const next of successors[from] ?? []) ready[next] = Math.max(ready[next] ?? NOT_AFTER, over);
  }
  return latest;
}

const NOT_AFTER = -1;

type User = {
  readonly at: number;
  readonly head: number;
  readonly duration: number;
  readonly amount: number;
  readonly hold: number;
};

/** Those that are worked at and need the resource. */
const usersOf = ({ project, heads }: Network, resource: number): User[] =>
  project.activities.flatMap(({ duration, hold, needs }, at) => {
    const own = needs.filter(need => need.resource === resource);
    const amount = own.reduce((sum, need) => sum + need.amount, 0);
    const held = own.some(need => need.held) ? hold : 0;
    return amount === 0 || duration === 0 ? [] : [{ at, head: heads[at] ?? 0, duration, amount, hold: held }];
  });

const FOLLOWED_MAX = 600;
