import { type Heap, heap } from './heap.ts';
import { activityAt, type Network } from './network.ts';
import { freeAt, type Need, overAt, type Plan } from './project.ts';

/**
 * The parallel scheme: time goes on from one event to the next, and whatever is ready and finds its resources free is
 * started, lowest priority number first. Activities that need the same wait in one queue, so that one that finds too
 * little stands for all behind it: it takes about n log n steps, and is what a very large job is planned by.
 */
export function dispatch(network: Network, priority: ArrayLike<number>): Plan {
  const { project } = network;
  const starts = new Int32Array(project.activities.length);
  const open = project.activities.map(activity => activity.after.length);
  const readyAt = new Float64Array(project.activities.length);
  const free = [...project.capacities];
  const events = heap<Event>((a, b) => a.time - b.time);
  const queues = queuesOf(network, priority);
  let makespan = 0;

  const start = (at: number, time: number): void => {
    const activity = activityAt(project, at);
    const end = time + activity.duration;
    const over = overAt(activity, time, project.clock);
    const freed = freeAt(activity, time, project.clock);
    starts[at] = time;
    makespan = Math.max(makespan, over);
    for (const { resource, amount, held } of activity.needs) {
      free[resource] = (free[resource] ?? 0) - amount;
      events.push({ time: held ? freed : end, resource, amount });
    }
    for (const next of network.successors[at] ?? []) {
      readyAt[next] = Math.max(readyAt[next] ?? 0, over);
      open[next] = (open[next] ?? 0) - 1;
      if (open[next] === 0) events.push({ time: readyAt[next] ?? 0, ready: next });
    }
  };

  for (const at of network.order) if (open[at] === 0) events.push({ time: 0, ready: at });
  for (let event = events.pop(); event !== undefined; event = events.pop()) {
    if ('ready' in event) queues.add(event.ready);
    else free[event.resource] = (free[event.resource] ?? 0) + event.amount;
    const next = events.peek();
    if (next !== undefined && next.time === event.time) continue;
    for (let at = queues.next(free); at !== undefined; at = queues.next(free)) start(at, event.time);
  }
  return { starts, makespan };
}

type Event =
  | { readonly time: number; readonly ready: number }
  | { readonly time: number; readonly resource: number; readonly amount: number };

/** A queue for each set of needs; `next` takes out the first of all those for which enough is free. */
function queuesOf(network: Network, priority: ArrayLike<number>) {
  const first = (a: number, b: number): number =>
    (priority[a] ?? 0) - (priority[b] ?? 0) || (network.rank[a] ?? 0) - (network.rank[b] ?? 0);
  const queues = new Map<string, { readonly needs: readonly Need[]; readonly waiting: Heap<number> }>();
  return {
    add: (at: number): void => {
      const { needs } = activityAt(network.project, at);
      const key = needs.map(need => `${need.resource}:${need.amount}`).join(' ');
      const queue = queues.get(key) ?? { needs, waiting: heap(first) };
      queue.waiting.push(at);
      queues.set(key, queue);
    },
    next: (free: readonly number[]): number | undefined => {
      let best: Heap<number> | undefined;
      for (const { needs, waiting } of queues.values()) {
        const [head, leader] = [waiting.peek(), best?.peek()];
        if (head === undefined || (leader !== undefined && first(leader, head) < 0)) continue;
        if (needs.every(need => need.amount <= (free[need.resource] ?? 0))) best = waiting;
      }
      return best?.pop();
    },
  };
}
