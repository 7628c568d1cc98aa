/**
 * Work that has to be put in order: activities that take time and resources, some of them after others. Times are whole
 * numbers of any unit; activities and resources are named by their place in the lists.
 */
export type Project = {
  readonly activities: readonly Activity[];
  /** How much of each resource there is. No activity may need more. */
  readonly capacities: readonly number[];
  readonly clock: Clock;
};

export type Activity = {
  readonly duration: number;
  /** Passes after its end before a successor may start. */
  readonly wait: number;
  /** For so long after its end what is `held` stays taken. */
  readonly hold: number;
  /** Must have ended, and their waits be over, before this starts. */
  readonly after: readonly number[];
  readonly needs: readonly Need[];
};

/** So much of a resource, for the duration; where it is `held`, for the hold too (a clamp, a rack slot). */
export type Need = { readonly resource: number; readonly amount: number; readonly held: boolean };

/**
 * How waits pass. On a plain clock a wait of 3 takes 3; on a shop's clock, which shows working time only, a night passes
 * in no time at all. `after` never falls as `end` grows.
 */
export type Clock = {
  /** The first moment at which something may start that has to wait so long after `end`. */
  readonly after: (end: number, wait: number) => number;
  /** The same for what takes no time itself: on a shop's clock it begins in the morning, not on the evening before. */
  readonly afterIdle: (start: number, wait: number) => number;
  /** The last end after which so long a wait is over by `start`; negative where there is none. */
  readonly before: (start: number, wait: number) => number;
  /** What the wait takes at least, whenever it begins. */
  readonly least: (wait: number) => number;
};

export const PLAIN_CLOCK: Clock = {
  after: (end, wait) => end + wait,
  afterIdle: (start, wait) => start + wait,
  before: (start, wait) => start - wait,
  least: wait => wait,
};

/** When the wait after an activity is over, if it starts at `start`. */
export const overAt = (activity: Activity, start: number, clock: Clock): number =>
  passed(activity, start, activity.wait, clock);

/** When all that the activity needs is free again. */
export const freeAt = (activity: Activity, start: number, clock: Clock): number =>
  passed(activity, start, activity.hold, clock);

const passed = ({ duration }: Activity, start: number, wait: number, clock: Clock): number =>
  duration === 0 ? clock.afterIdle(start, wait) : clock.after(start + duration, wait);

/** When each activity starts, and when the last wait of all is over. */
export type Plan = { readonly starts: Int32Array; readonly makespan: number };
