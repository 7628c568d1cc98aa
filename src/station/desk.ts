import type { Host } from '../host.ts';
import { decideAll, keysOf } from './decide.ts';
import type { Answer } from './floor/answer.ts';
import type { FloorEvent } from './floor/event.ts';
import { type Progress, progressOf } from './floor/progress.ts';
import type { Scan } from './floor/scan.ts';
import type { Shelf } from './floor/shelf.ts';
import type { Ledger } from './ledger/ledger.ts';
import { openStates, type States } from './states.ts';

/** Where all scans of a host come together: each is answered in its turn, and kept before it is answered. */
export type Desk = {
  /** Rejects where the ledger cannot keep it now; the same scan may come again. */
  readonly scan: (scan: Scan) => Promise<Answer>;
  readonly progress: (job: string) => Promise<Progress | undefined>;
  readonly catchUp: () => Promise<void>;
  readonly follow: States['follow'];
};

/** Scans that share one commit: more than this many stations never pull the trigger in one moment. */
const BATCH_MAX = 200;

export async function openDesk(ledger: Ledger, shelf: () => Shelf, host: Pick<Host, 'now'>): Promise<Desk> {
  const states = await openStates(ledger);
  const told = openTold();
  const inTurn = turns();
  const answerAll = async (scans: readonly Scan[]): Promise<readonly Answer[]> => {
    if (ledger.shared) await states.catchUp();
    const kept = await ledger.find(keysOf(scans));
    const { answers, events } = await decideAll(scans, kept, told.of(scans), shelf(), states, host.now());
    const appended = await ledger.append(events);
    told.remember(scans, answers, events);
    // On a shared ledger somebody else's event may lie between: its order is the ledger's, not ours.
    if (ledger.shared) await states.catchUp();
    else states.takeIn(appended);
    return answers;
  };
  return {
    scan: together(scans => inTurn(() => answerAll(scans))),
    progress: job =>
      inTurn(async () => {
        const shelved = shelf().jobs.get(job);
        return shelved === undefined ? undefined : progressOf(shelved.book, await states.of(job), host.now());
      }),
    catchUp: () => inTurn(states.catchUp),
    follow: states.follow,
  };
}

/** What was told of scans that were not kept, as long as a device may still send them again. */
function openTold() {
  const answers = new Map<string, Answer>();
  return {
    of: (scans: readonly Scan[]): ReadonlyMap<string, Answer> =>
      new Map(
        scans.flatMap(({ key }) => {
          const answer = answers.get(key);
          return answer === undefined ? [] : [[key, answer] as const];
        }),
      ),
    remember: (scans: readonly Scan[], given: readonly Answer[], events: readonly FloorEvent[]): void => {
      const kept = new Set(events.map(event => event.key));
      for (const [at, { key }] of scans.entries()) {
        const answer = given[at];
        if (answer !== undefined && !kept.has(key)) answers.set(key, answer);
      }
      // The oldest first: a map remembers the order in which its keys came.
      for (const key of answers.keys()) if (answers.size > TOLD_MAX) answers.delete(key);
    },
  };
}

/** Some hours of a busy shop. */
const TOLD_MAX = 5000;

/** Runs tasks one after the other, in the order in which they were handed in. */
function turns(): <T>(task: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return task => {
    const result = last.then(task);
    last = result.catch(() => undefined);
    return result;
  };
}

/** What comes in while others are being answered is answered together, in one commit: a disk is asked once for all. */
function together(answerAll: (scans: readonly Scan[]) => Promise<readonly Answer[]>): Desk['scan'] {
  type Waiting = { scan: Scan; answered: (answer: Answer) => void; failed: (why: unknown) => void };
  const waiting: Waiting[] = [];
  let busy = false;
  const work = async (): Promise<void> => {
    busy = true;
    while (waiting.length > 0) {
      // An embedded ledger answers without waiting for anything; this lets the other requests of the moment in.
      await new Promise(setImmediate);
      const batch = waiting.splice(0, BATCH_MAX);
      const outcome = await answerAll(batch.map(each => each.scan)).then(
        answers => ({ answers, why: undefined }),
        (why: unknown) => ({ answers: [], why }),
      );
      batch.forEach(({ answered, failed }, at) => {
        const answer = outcome.answers[at];
        if (answer === undefined) failed(outcome.why);
        else answered(answer);
      });
    }
    busy = false;
  };
  return scan =>
    new Promise((answered, failed) => {
      waiting.push({ scan, answered, failed });
      if (!busy) void work();
    });
}
