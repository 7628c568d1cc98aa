import type { Plan, Project } from '../../../src/layout/days/project/project.ts';

/**
 * Says what is wrong with a plan on a plain clock. Written without a line of the planner: it looks at each unit of time
 * and counts what is in use.
 */
export function judgeProject(project: Project, { starts, makespan }: Plan): readonly string[] {
  const wrong: string[] = [];
  const ends = project.activities.map((activity, at) => (starts[at] ?? Number.NaN) + activity.duration);
  for (const [at, activity] of project.activities.entries()) {
    if (!((starts[at] ?? -1) >= 0)) wrong.push(`${at} starts at ${starts[at]}`);
    for (const before of activity.after) {
      const ready = (ends[before] ?? Number.NaN) + (project.activities[before]?.wait ?? 0);
      if (!((starts[at] ?? -1) >= ready)) wrong.push(`${at} starts at ${starts[at]}, ${before} is over at ${ready}`);
    }
  }
  const last = Math.max(0, ...ends.map((end, at) => end + (project.activities[at]?.wait ?? 0)));
  if (last !== makespan) wrong.push(`the last is over at ${last}, not at ${makespan}`);
  for (let time = 0; time < last; time += 1) {
    for (const [resource, capacity] of project.capacities.entries()) {
      let used = 0;
      for (const [at, activity] of project.activities.entries()) {
        for (const need of activity.needs) {
          const until = (ends[at] ?? 0) + (need.held ? activity.hold : 0);
          if (need.resource === resource && (starts[at] ?? 0) <= time && time < until) used += need.amount;
        }
      }
      if (used > capacity) wrong.push(`at ${time} ${used} of resource ${resource} are used, there are ${capacity}`);
    }
  }
  return wrong;
}
