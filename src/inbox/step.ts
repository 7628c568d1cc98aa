/** A file that was dropped, as far as the inbox has come with it. */
export type Drop = {
  readonly name: string;
  readonly stamp: Stamp;
  readonly phase: Phase;
  /** Polls for which it has not changed. */
  readonly quiet: number;
  /** The job that it is for, once it has been read; empty where the file tells none. */
  readonly job: string;
  /** What is of one line is built one after the other: the workbooks of a job. */
  readonly line: string;
};

/** Size, time and number of a file in one text: another stamp is another file. */
export type Stamp = string;

/**
 * `settling` until it is quiet; `reading`, then `queued` until its job's turn and a builder's; `building`; and `stuck`
 * where it could not be read, built or filed, until it changes or its time to try again has come.
 */
export type Phase = 'settling' | 'reading' | 'queued' | 'building' | 'stuck';

export type State = {
  /** In the order in which they were first seen. */
  readonly drops: readonly Drop[];
  /** How many packets may be built at once. */
  readonly builders: number;
};

export type Event =
  /** What lies in the folder now. */
  | { readonly kind: 'listed'; readonly files: readonly { readonly name: string; readonly stamp: Stamp }[] }
  /** It was read: a workbook of this job. */
  | { readonly kind: 'read'; readonly name: string; readonly job: string; readonly line: string }
  /** It was read and is not whole: somebody may still be copying it. */
  | { readonly kind: 'half'; readonly name: string }
  /** It is filed and gone from the folder. */
  | { readonly kind: 'filed'; readonly name: string }
  /** The machine refused, or it changed while it was read or built. It stays where it is. */
  | { readonly kind: 'failed'; readonly name: string };

export type Action =
  /** `patient` as long as a file that is not whole may still become so. */
  | { readonly kind: 'read'; readonly name: string; readonly stamp: Stamp; readonly patient: boolean }
  | { readonly kind: 'build'; readonly name: string; readonly stamp: Stamp; readonly job: string };

export const EMPTY = (builders: number): State => ({ drops: [], builders });

/** Quiet for so many polls, a file is read. A workbook shows itself whether it is whole; of plain text none can tell. */
const quietPolls = (name: string): number => (isText(name) ? 4 : 2);
/**
 * The pause before the next look, in polls. Somebody waits for what has just been dropped; of plain text, that it is quiet
 * is all there is to go by, so it is given longer.
 */
export function pauseOf(drops: readonly Drop[]): number {
  const settling = drops.filter(({ phase }) => phase === 'settling');
  if (settling.length === 0) return 1;
  return settling.every(({ name, quiet }) => quiet < quietPolls(name) && !isText(name)) ? 1 / 8 : 1 / 2;
}

const isText = (name: string): boolean => /\.csv$/i.test(name);

/** A file that is not whole and has not changed for so many polls is taken for what it is. */
const PATIENCE_POLLS = 60;
/** What the machine refused is tried again after so many. */
const RETRY_POLLS = 15;

/** What the inbox is to do next. Pure: a day's work can be told as lines. */
export function step(state: State, event: Event): readonly [State, readonly Action[]] {
  switch (event.kind) {
    case 'listed':
      return started({ ...state, drops: listed(state.drops, event.files) });
    case 'read':
      return started(changed(state, event.name, { phase: 'queued', job: event.job, line: event.line }));
    case 'half':
      return started(stillHalf(state, event.name));
    case 'filed':
      return started({ ...state, drops: state.drops.filter(({ name }) => name !== event.name) });
    case 'failed':
      return started(changed(state, event.name, { phase: 'stuck', quiet: 0 }));
  }
}

const changed = (state: State, name: string, change: Partial<Drop>): State => ({
  ...state,
  drops: state.drops.map(drop => (drop.name === name ? { ...drop, ...change } : drop)),
});

/** Quiet counts on, so that it is not read again before the next poll. */
const stillHalf = (state: State, name: string): State => ({
  ...state,
  drops: state.drops.map(drop => (drop.name === name ? { ...drop, phase: 'settling', quiet: drop.quiet + 1 } : drop)),
});

/** What is being read or built stays, whatever lies in the folder: its end will be told. */
function listed(drops: readonly Drop[], files: Extract<Event, { kind: 'listed' }>['files']): readonly Drop[] {
  const stamps = new Map(files.map(({ name, stamp }) => [name, stamp]));
  const known = new Set(drops.map(({ name }) => name));
  const kept = drops.flatMap(drop => {
    if (drop.phase === 'reading' || drop.phase === 'queued' || drop.phase === 'building') return [drop];
    const stamp = stamps.get(drop.name);
    if (stamp === undefined) return [];
    if (stamp !== drop.stamp) return [fresh(drop.name, stamp)];
    const quiet = drop.quiet + 1;
    return [drop.phase === 'stuck' && quiet >= RETRY_POLLS ? fresh(drop.name, stamp) : { ...drop, quiet }];
  });
  const arrived = files.filter(({ name }) => !known.has(name)).map(({ name, stamp }) => fresh(name, stamp));
  return [...kept, ...arrived];
}

const fresh = (name: string, stamp: Stamp): Drop => ({ name, stamp, phase: 'settling', quiet: 0, job: '', line: '' });

/**
 * Starts what can be started: all that is quiet is read; of the queue, one of each job, as many as there are builders.
 * What was dropped before and is being read may be of the same job, and then it comes first: so all wait for it.
 */
function started(state: State): readonly [State, readonly Action[]] {
  const actions: Action[] = [];
  const busy = new Set(state.drops.filter(({ phase }) => phase === 'building').map(({ line }) => line));
  let free = state.builders - state.drops.filter(({ phase }) => phase === 'building').length;
  let reading = state.drops.filter(({ phase }) => phase === 'reading').length;
  let isFirst = true;
  const drops = state.drops.map((drop): Drop => {
    const { name, stamp, job, line } = drop;
    if (drop.phase === 'reading') isFirst = false;
    if (drop.phase === 'settling' && isDue(drop) && reading < READING_MAX) {
      reading += 1;
      isFirst = false;
      actions.push({ kind: 'read', name, stamp, patient: drop.quiet < PATIENCE_POLLS });
      return { ...drop, phase: 'reading' };
    }
    if (drop.phase === 'queued' && isFirst && free > 0 && !busy.has(line)) {
      free -= 1;
      busy.add(line);
      actions.push({ kind: 'build', name, stamp, job });
      return { ...drop, phase: 'building' };
    }
    return drop;
  });
  return [{ ...state, drops }, actions];
}

/** Thousands of files dropped at once are not all held in memory. */
const READING_MAX = 4;

/** At its first quiet moment, and then less and less often, as long as it is not whole. */
const isDue = ({ name, quiet }: Drop): boolean =>
  quiet === quietPolls(name) || (quiet > quietPolls(name) && (quiet % 10 === 0 || quiet >= PATIENCE_POLLS));
