import { heap } from './heap.ts';
import { activityAt, type Network } from './network.ts';
import { freeAfter } from './profile.ts';
import type { Activity, Plan } from './project.ts';

/**
 * The parallel scheme: time goes on from one event to the next, and whatever is ready and finds its resources free is
 * started, lowest priority number first. It takes n log n steps where few are ready at once, so that it is what a very
 * large job is planned by.
 */
export function dispatch(network: Network, priority: ArrayLike<number>): Plan {
  const { project } = network;
  const starts = new Int32Array(project.activities.length);
  const open = project.activities.map(activity => activity.after.length);
  const readyAt = new Float64Array(project.activities.length);
  const free = [...project.capacities];
  const events = heap<Event>((a, b) => a.time - b.time);
  const waiting = heap<number>(
    (a, b) => (priority[a] ?? 0) - (priority[b] ?? 0) || rank(network, a) - rank(network, b),
  );
  let makespan = 0;

  const start = (at: number, time: number): void => {
    const activity = activityAt(project, at);
    const end = time + activity.duration;
    const over = project.clock.after(end, activity.wait);
    starts[at] = time;
    makespan = Math.max(makespan, over);
    takeNow(activity, end, freeAfter(activity, end, project.clock));
    for (const next of network.successors[at] ?? []) {
      readyAt[next] = Math.max(readyAt[next] ?? 0, over);
      open[next] = (open[next] ?? 0) - 1;
      if (open[next] === 0) events.push({ time: readyAt[next] ?? 0, ready: next });
    }
  };
  const takeNow = (activity: Activity, end: number, over: number): void => {
    for (const { resource, amount, held } of activity.needs) {
      free[resource] = (free[resource] ?? 0) - amount;
      events.push({ time: held ? over : end, resource, amount });
    }
  };

  for (const at of network.order) if (open[at] === 0) events.push({ time: 0, ready: at });
  for (let event = events.pop(); event !== undefined; event = events.pop()) {
    happen(event, free, waiting);
    const next = events.peek();
    if (next === undefined || next.time > event.time) startWhatFits(event.time);
  }
  return { starts, makespan };

  function startWhatFits(time: number): void {
    const left: number[] = [];
    for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
      if (activityAt(project, at).needs.every(need => need.amount <= (free[need.resource] ?? 0))) start(at, time);
      else left.push(at);
    }
    for (const at of left) waiting.push(at);
  }
}

type Event =
  | { readonly time: number; readonly ready: number }
  | { readonly time: number; readonly resource: number; readonly amount: number };

function happen(event: Event, free: number[], waiting: { push: (at: number) => void }): void {
  if ('ready' in event) waiting.push(event.ready);
  else free[event.resource] = (free[event.resource] ?? 0) + event.amount;
}

const rank = (network: Network, at: number): number => network.rank[at] ?? 0;
