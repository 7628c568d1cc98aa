import type { DoorCode } from '../../codes/codes.ts';
import type { OperationId } from '../../trade/operations.ts';
import type { Duration } from '../../units/duration.ts';

/** The days of the job, for one person and for the people that the shop has. */
export type DayPlan = {
  readonly schedules: readonly Schedule[];
};

export type Schedule = {
  readonly people: number;
  readonly startDate: string | undefined;
  /** When the last task is done and its wait is over. */
  readonly ends: Moment;
  /** Whether it is as short as its bound: no schedule at all is shorter. */
  readonly proven: boolean;
  /** Working seconds from the start of the job to its end, and what no schedule can be shorter than. */
  readonly makespan: Duration;
  readonly bound: {
    readonly makespan: Duration;
    readonly by: 'critical-path' | 'people' | 'clamps' | 'spray' | 'rack';
  };
  readonly tasks: readonly Task[];
  readonly days: readonly Day[];
};

/** A stretch of one operation: the doors of one glue-up batch, or all pieces of a set-up run. */
export type Task = {
  readonly id: string;
  readonly operation: OperationId;
  /** Batch or coat, where an operation is done in several goes. */
  readonly go: number;
  /** For a coat of the finish: the step's number in the finish plan, and which of its coats. */
  readonly coat: { readonly step: number; readonly number: number } | undefined;
  readonly doors: readonly DoorCode[];
  readonly people: number;
  readonly helperAlone: boolean;
  /** Beside a pair of hands. Spray places while somebody works; clamps and rack slots until the wait is over. */
  readonly takes: { readonly clamps: number; readonly sprayPlaces: number; readonly rackSlots: number };
  readonly work: Duration;
  /** Passes after the work, before the next task may start; nights count. */
  readonly wait: Duration;
  readonly after: readonly string[];
  readonly starts: Moment;
  readonly ends: Moment;
  /** When its wait is over, by the clock. */
  readonly over: Moment;
};

/**
 * `day` 0 is the first working day; `second` counts from the start of work on that day. Where a wait begins
 * or is over it may lie after the day's work: in the evening, or on the weekend that follows.
 */
export type Moment = { readonly day: number; readonly date: string | undefined; readonly second: number };

export type Day = {
  readonly day: number;
  readonly date: string | undefined;
  readonly entries: readonly {
    readonly task: string;
    readonly starts: number;
    readonly ends: number;
    /** From 1; of two or more, the last is the helper. */
    readonly person: number;
  }[];
};
