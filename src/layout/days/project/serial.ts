import { activityAt, type Network } from './network.ts';
import { clear, earliest, latest, type Profile, take } from './profile.ts';
import { overAt, type Plan } from './project.ts';

/**
 * The serial scheme: one activity after the other in the order of `list`, each as early as its predecessors and the
 * resources let it. In `list` every activity stands after those that it comes after.
 */
export function serial(network: Network, profile: Profile, list: ArrayLike<number>): Plan {
  const { project } = network;
  const starts = new Int32Array(list.length);
  let makespan = 0;
  clear(profile);
  for (let place = 0; place < list.length; place += 1) {
    const at = list[place] ?? 0;
    const activity = activityAt(project, at);
    const start = earliest(profile, activity, readyAt(network, starts, at));
    take(profile, activity, start);
    starts[at] = start;
    makespan = Math.max(makespan, overAt(activity, start, project.clock));
  }
  return { starts, makespan };
}

/**
 * Justification: all work is moved as late as the makespan lets it, last first, and then as early as it goes, first
 * first. The plan comes out as long or shorter (Valls, Ballestín and Quintanilla, European Journal of Operational
 * Research 165, 2005). Where something cannot be moved for what is held through a wait, the plan stays as it is.
 */
export function justify(network: Network, profile: Profile, plan: Plan): Plan {
  const late = asLate(network, profile, plan);
  if (late === undefined) return plan;
  const early = serial(network, profile, byStart(network, late));
  return early.makespan <= plan.makespan ? early : plan;
}

/** All activities by their starts; of equal ones, that which comes first in the network's order. */
export function byStart(network: Network, starts: ArrayLike<number>): Int32Array {
  return Int32Array.from(network.order).sort(
    (a, b) => (starts[a] ?? 0) - (starts[b] ?? 0) || (network.rank[a] ?? 0) - (network.rank[b] ?? 0),
  );
}

function readyAt({ project }: Network, starts: Int32Array, at: number): number {
  let ready = 0;
  for (const before of activityAt(project, at).after) {
    ready = Math.max(ready, overAt(activityAt(project, before), starts[before] ?? 0, project.clock));
  }
  return ready;
}

function asLate(network: Network, profile: Profile, { starts, makespan }: Plan): Int32Array | undefined {
  const { project } = network;
  const late = new Int32Array(starts.length);
  clear(profile);
  for (const at of byEndLastFirst(network, starts)) {
    const activity = activityAt(project, at);
    let until = project.clock.before(makespan, activity.wait);
    for (const next of network.successors[at] ?? []) {
      until = Math.min(until, project.clock.before(late[next] ?? 0, activity.wait));
    }
    const start = latest(profile, activity, until);
    if (start === undefined) return undefined;
    take(profile, activity, start);
    late[at] = start;
  }
  return late;
}

function byEndLastFirst(network: Network, starts: Int32Array): Int32Array {
  const end = (at: number): number => (starts[at] ?? 0) + activityAt(network.project, at).duration;
  return Int32Array.from(network.order).sort(
    (a, b) => end(b) - end(a) || (network.rank[b] ?? 0) - (network.rank[a] ?? 0),
  );
}
