import type { KeptEvent } from './floor/event.ts';
import { advance, type JobState, untouched } from './floor/job-state.ts';
import { allEvents, type Ledger, PAGE_MAX } from './ledger/ledger.ts';

/** The state of each job that somebody asked for, kept in step with the ledger. */
export type States = {
  /** Read from the ledger the first time. */
  readonly of: (job: string) => Promise<JobState>;
  /** Events that the ledger has now, in order. */
  readonly takeIn: (events: readonly KeptEvent[]) => void;
  /** Takes in what this or another program has appended since. */
  readonly catchUp: () => Promise<void>;
  /** Is called with the number of each job that changed; returns how to stop. */
  readonly follow: (changed: (job: string) => void) => () => void;
};

export async function openStates(ledger: Ledger): Promise<States> {
  const states = new Map<string, JobState>();
  const followers = new Set<(job: string) => void>();
  let read = await ledger.last();

  const takeIn = (events: readonly KeptEvent[]): void => {
    for (const event of events) {
      const state = states.get(event.job);
      // A state that was read from the ledger after the event happened has it already.
      if (state !== undefined && state.seq < event.seq) advance(state, event);
      read = Math.max(read, event.seq);
    }
    for (const job of new Set(events.map(event => event.job))) for (const tell of followers) tell(job);
  };

  return {
    of: async job => {
      const state = states.get(job) ?? (await stateIn(ledger, job));
      states.set(job, state);
      return state;
    },
    takeIn,
    catchUp: async () => {
      for (;;) {
        const page = await ledger.after(read, PAGE_MAX);
        takeIn(page);
        if (page.length < PAGE_MAX) return;
      }
    },
    follow: changed => {
      followers.add(changed);
      return () => followers.delete(changed);
    },
  };
}

/** A job's state from all its events. */
export async function stateIn(ledger: Ledger, job: string): Promise<JobState> {
  const state = untouched();
  for await (const page of allEvents(ledger, job)) for (const event of page) advance(state, event);
  return state;
}
