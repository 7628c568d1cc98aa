import type { FloorEvent, KeptEvent } from '../floor/event.ts';

/**
 * What the floor did, in order, for ever. It is added to and never changed.
 *
 * An append is all or nothing and lasting when its promise resolves. A key that is already there is left alone, so
 * whoever saw no answer sends the same event again. What cannot be kept now (disk full, server away) rejects, with
 * nothing kept.
 */
export type Ledger = {
  /** Other programs may append too: a reader has to look for their events. */
  readonly shared: boolean;
  /** The events that were not there before, in their places. */
  readonly append: (events: readonly FloorEvent[]) => Promise<readonly KeptEvent[]>;
  /** Those of the keys that are there. */
  readonly find: (keys: readonly string[]) => Promise<readonly KeptEvent[]>;
  /** In order, after `seq`, at most `limit`; of one job where it is named. No later event will appear before the last. */
  readonly after: (seq: number, limit: number, job?: string) => Promise<readonly KeptEvent[]>;
  /** The place of the last event; 0 where there is none. */
  readonly last: () => Promise<number>;
  readonly close: () => Promise<void>;
};

/** How many events are read in one go. */
export const PAGE_MAX = 5000;

/** All events, of one job where it is named, page by page. */
export async function* allEvents(ledger: Ledger, job?: string): AsyncGenerator<readonly KeptEvent[]> {
  let seq = 0;
  for (;;) {
    const page = await ledger.after(seq, PAGE_MAX, job);
    if (page.length > 0) yield page;
    if (page.length < PAGE_MAX) return;
    seq = page.at(-1)?.seq ?? seq;
  }
}
