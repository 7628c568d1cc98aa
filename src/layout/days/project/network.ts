import assert from 'node:assert';
import { type Activity, overAt, type Project } from './project.ts';

/** A project, and what every method asks of it again and again. */
export type Network = {
  readonly project: Project;
  readonly successors: readonly (readonly number[])[];
  /** Each activity after those that it comes after; of two that are free, the lower number first. */
  readonly order: readonly number[];
  /** The place of each activity in `order`. */
  readonly rank: readonly number[];
  /** The earliest start of each activity if resources were plenty. */
  readonly heads: readonly number[];
  /** The least that passes from the end of each activity to the end of the project. */
  readonly tails: readonly number[];
};

/** Throws where activities wait for each other in a circle: the tasks of a shop are made so that they cannot. */
export function networkOf(project: Project): Network {
  const successors: number[][] = project.activities.map(() => []);
  for (const [activity, { after }] of project.activities.entries()) {
    for (const before of after) successors[before]?.push(activity);
  }
  const order = inOrder(project.activities, successors);
  const rank: number[] = [];
  for (const [place, at] of order.entries()) rank[at] = place;
  return {
    project,
    successors,
    order,
    rank,
    heads: headsOf(project, order),
    tails: tailsOf(project, successors, order),
  };
}

export const activityAt = (project: Project, at: number): Activity => {
  const activity = project.activities[at];
  assert(activity !== undefined, `the project has no activity ${at}`);
  return activity;
};

function inOrder(activities: readonly Activity[], successors: readonly (readonly number[])[]): readonly number[] {
  const open = activities.map(activity => activity.after.length);
  const order = open.flatMap((count, activity) => (count === 0 ? [activity] : []));
  for (const activity of order) {
    for (const next of successors[activity] ?? []) {
      open[next] = (open[next] ?? 0) - 1;
      if (open[next] === 0) order.push(next);
    }
  }
  assert(order.length === activities.length, 'activities wait for each other in a circle');
  return order;
}

function headsOf(project: Project, order: readonly number[]): readonly number[] {
  const heads = project.activities.map(() => 0);
  for (const at of order) {
    for (const before of activityAt(project, at).after) {
      const over = overAt(activityAt(project, before), heads[before] ?? 0, project.clock);
      heads[at] = Math.max(heads[at] ?? 0, over);
    }
  }
  return heads;
}

function tailsOf(
  project: Project,
  successors: readonly (readonly number[])[],
  order: readonly number[],
): readonly number[] {
  const tails = project.activities.map(() => 0);
  for (const at of [...order].reverse()) {
    const next = (successors[at] ?? []).map(to => activityAt(project, to).duration + (tails[to] ?? 0));
    tails[at] =
      project.clock.least(activityAt(project, at).wait) + next.reduce((longest, each) => Math.max(longest, each), 0);
  }
  return tails;
}
