import type { Answer, Decision } from './floor/answer.ts';
import { answerTo } from './floor/answer-to.ts';
import type { FloorEvent, KeptEvent } from './floor/event.ts';
import { advance, draftOf } from './floor/job-state.ts';
import { answerKept } from './floor/kept-answer.ts';
import { type OpenJob, tell } from './floor/open-job.ts';
import type { Scan } from './floor/scan.ts';
import { jobsOf, type Shelf, type ShelvedJob, tidyCode } from './floor/shelf.ts';
import { answerToUndo } from './floor/undo-answer.ts';
import type { States } from './states.ts';

/** What to say to each scan, and what has to be in the ledger before it is said. */
export type Decided = { readonly answers: readonly Answer[]; readonly events: readonly FloorEvent[] };

/**
 * Decides each scan in the light of those before it. `kept` are the events that the ledger has under the keys that
 * the scans speak of (`keysOf`), `told` the answers to scans of which nothing was kept: a scan that comes again is
 * answered from them, as it was the first time, whatever happened meanwhile.
 */
export async function decideAll(
  scans: readonly Scan[],
  kept: readonly KeptEvent[],
  told: ReadonlyMap<string, Answer>,
  shelf: Shelf,
  states: States,
  now: Date,
): Promise<Decided> {
  const known = new Map(kept.map(event => [event.key, event]));
  const draft = drafts(states);
  const said = new Map(told);
  const answers: Answer[] = [];
  const events: FloorEvent[] = [];
  for (const scan of scans) {
    const before = said.get(scan.key);
    const decision = before === undefined ? await decide(scan, known, shelf, draft, now) : tell(before);
    answers.push(decision.answer);
    if (decision.keep === undefined && !known.has(scan.key)) said.set(scan.key, decision.answer);
    if (decision.keep === undefined) continue;
    const event = eventOf(scan, decision.keep, now);
    const { state } = await draft(jobIn(shelf, event.job));
    advance(state, { ...event, seq: state.seq });
    known.set(event.key, { ...event, seq: state.seq });
    events.push(event);
  }
  return { answers, events };
}

/** The keys that the answers to `scans` depend on: their own, and those of what they undo. */
export const keysOf = (scans: readonly Scan[]): readonly string[] => [
  ...new Set(scans.flatMap(scan => (scan.act === 'undo' ? [scan.key, scan.code] : [scan.key]))),
];

type Draft = (job: ShelvedJob) => Promise<OpenJob>;

/** Each job's state to think ahead in, so that nothing is believed before it is kept. */
function drafts(states: States): Draft {
  const opened = new Map<string, OpenJob>();
  return async job => {
    const open = opened.get(job.book.job) ?? { ...job, state: draftOf(await states.of(job.book.job)) };
    opened.set(job.book.job, open);
    return open;
  };
}

async function decide(
  scan: Scan,
  known: ReadonlyMap<string, KeptEvent>,
  shelf: Shelf,
  draft: Draft,
  now: Date,
): Promise<Decision> {
  const before = known.get(scan.key);
  if (before !== undefined && shelf.jobs.has(before.job))
    return tell(answerKept(await draft(jobIn(shelf, before.job)), before));
  if (scan.act !== 'undo') {
    const jobs = [];
    for (const job of jobsOf(shelf, tidyCode(scan.code))) jobs.push(await draft(job));
    return answerTo(scan, jobs, now);
  }
  const target = known.get(scan.code);
  if (target === undefined || !shelf.jobs.has(target.job)) return tell({ kind: 'nothing-to-undo' });
  return answerToUndo(await draft(jobIn(shelf, target.job)), target);
}

function jobIn(shelf: Shelf, number: string): ShelvedJob {
  const job = shelf.jobs.get(number);
  if (job === undefined) throw new Error(`job ${number} left the shelf in the middle of a scan`);
  return job;
}

const eventOf = (scan: Scan, { job, revision, what }: NonNullable<Decision['keep']>, now: Date): FloorEvent => ({
  key: scan.key,
  job,
  revision,
  station: scan.station,
  device: scan.device,
  deviceTime: scan.at,
  serverTime: now.toISOString(),
  what,
});
