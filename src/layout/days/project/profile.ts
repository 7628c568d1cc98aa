import { type Activity, freeAt, type Project } from './project.ts';

/**
 * How much of each resource is taken from when to when: breakpoints in time, and between one and the next what is used
 * of each. The arrays are made once for a project, and cleared for each plan: thousands of plans are tried in a second.
 */
export type Profile = {
  readonly project: Project;
  count: number;
  readonly at: Int32Array;
  readonly used: Int32Array;
};

export function emptyProfile(project: Project): Profile {
  const room = 3 * project.activities.length + 2;
  return {
    project,
    count: 1,
    at: new Int32Array(room),
    used: new Int32Array(room * project.capacities.length),
  };
}

export function clear(profile: Profile): void {
  profile.count = 1;
  profile.at[0] = 0;
  profile.used.fill(0, 0, profile.project.capacities.length);
}

/** The first start, not before `from`, at which there is enough of everything as long as the activity needs it. */
export function earliest(profile: Profile, activity: Activity, from: number): number {
  const { at } = profile;
  const { clock } = profile.project;
  let start = from;
  let segment = segmentAt(profile, start);
  for (;;) {
    const end = start + activity.duration;
    const free = freeAt(activity, start, clock);
    if (free <= start) return start;
    let clash = segment;
    while (clash < profile.count && (at[clash] ?? 0) < free && fits(profile, activity, clash, (at[clash] ?? 0) < end)) {
      clash += 1;
    }
    if (clash >= profile.count || (at[clash] ?? 0) >= free) return start;
    // The last segment is empty and never clashes, so there is always a next one.
    segment = clash + 1;
    start = at[segment] ?? 0;
  }
}

/** The last start, such that the activity ends by `until`, at which there is enough of everything; undefined for none. */
export function latest(profile: Profile, activity: Activity, until: number): number | undefined {
  const { at } = profile;
  const { clock } = profile.project;
  let end = until;
  for (;;) {
    const start = end - activity.duration;
    if (start < 0) return undefined;
    const free = freeAt(activity, start, clock);
    if (free <= start) return start;
    let clash = segmentAt(profile, free - 1);
    while (clash >= 0 && reaches(profile, clash, start) && fits(profile, activity, clash, (at[clash] ?? 0) < end)) {
      clash -= 1;
    }
    if (clash < 0 || !reaches(profile, clash, start)) return start;
    // What is held clashes: the hold must be over before. What is used must end before.
    const begins = at[clash] ?? 0;
    end = fits(profile, activity, clash, false) ? begins : Math.min(end - 1, clock.before(begins, activity.hold));
  }
}

/** Takes what the activity needs from `start` on. */
export function take(profile: Profile, activity: Activity, start: number): void {
  const end = start + activity.duration;
  const free = freeAt(activity, start, profile.project.clock);
  if (free <= start) return;
  const resources = profile.project.capacities.length;
  const first = split(profile, start);
  split(profile, end);
  split(profile, free);
  for (let segment = first; (profile.at[segment] ?? 0) < free; segment += 1) {
    const working = (profile.at[segment] ?? 0) < end;
    for (const need of activity.needs) {
      if (working || need.held) {
        const place = segment * resources + need.resource;
        profile.used[place] = (profile.used[place] ?? 0) + need.amount;
      }
    }
  }
}

/** Whether the segment has room for what the activity needs while it is worked at, or while it waits. */
function fits(profile: Profile, activity: Activity, segment: number, working: boolean): boolean {
  const { capacities } = profile.project;
  for (const need of activity.needs) {
    if (!working && !need.held) continue;
    const used = profile.used[segment * capacities.length + need.resource] ?? 0;
    if (used + need.amount > (capacities[need.resource] ?? 0)) return false;
  }
  return true;
}

/** Whether the segment goes on past `time`. */
const reaches = (profile: Profile, segment: number, time: number): boolean =>
  segment + 1 >= profile.count || (profile.at[segment + 1] ?? 0) > time;

/** The segment that `time` lies in: the last one that begins at it or before. */
function segmentAt(profile: Profile, time: number): number {
  let low = 0;
  let high = profile.count - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((profile.at[middle] ?? 0) <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Makes `time` a breakpoint, and returns the segment that begins with it. */
function split(profile: Profile, time: number): number {
  const { at, used } = profile;
  const before = segmentAt(profile, time);
  if (at[before] === time) return before;
  const resources = profile.project.capacities.length;
  const added = before + 1;
  at.copyWithin(added + 1, added, profile.count);
  used.copyWithin((added + 1) * resources, added * resources, profile.count * resources);
  used.copyWithin(added * resources, before * resources, added * resources);
  at[added] = time;
  profile.count += 1;
  return added;
}
