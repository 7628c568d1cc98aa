import type { Answer, Count, Decision, Missing, PieceFacts, Step } from './answer.ts';
import { compareRevisions, type Piece } from './book.ts';
import type { Happening } from './event.ts';
import type { JobState } from './job-state.ts';
import { advance, currentMarks, draftOf, pieceState } from './job-state.ts';
import { keep, type OpenJob, type Tagged, tell } from './open-job.ts';
import { currentCode, factsOf, instructionFor, nextStep, stepOf } from './piece-facts.ts';
import type { Mark } from './piece-states.ts';
import { currentRemake, isDone, isReady, left, runOf, undoneBefore, waitBefore } from './route.ts';
import type { Scan } from './scan.ts';

/** A second pull of the trigger within this time is one scan, where a station has the piece's next operation too. */
const BOUNCE_MS = 4000;

/** A tag of a part or a door: its next operation here is done, unless something speaks against it. */
export function answerToPiece(job: OpenJob, tagged: Tagged, scan: Scan, now: Date): Decision {
  const { piece, remake } = tagged;
  const current = currentRemake(job.state, piece.code);
  if (remake > current) return tell({ kind: 'unknown', code: scan.code });
  if (remake < current)
    return tell({ kind: 'old-tag', piece: factsOf(job.book, piece, remake), code: currentCode(job.state, piece) });
  const changed = changedSince(job, piece);
  if (changed !== undefined && !scan.agreed.includes('changed')) return tell(changed);
  return answerToStep(job, piece, scan, now);
}

function answerToStep(job: OpenJob, piece: Piece, scan: Scan, now: Date): Decision {
  const here = operationsHere(job, piece, scan);
  const marks = currentMarks(pieceState(job.state, piece.code));
  const operation = here.find(id => !isDone(job.state, piece, id));
  const facts = factsOf(job.book, piece, currentRemake(job.state, piece.code));
  const next = nextStep(job.book, job.state, piece);
  if (here.length === 0) return tell({ kind: 'elsewhere', piece: facts, here: scan.operation ?? scan.station, next });
  const had = marks.findLast(mark => here.includes(mark.operation) && (operation === undefined || bounced(mark, scan)));
  if (had !== undefined || operation === undefined) return tell(twice(job, facts, had, next));
  const question = orderQuestion(job, piece, operation, now);
  if (question !== undefined && (!scan.agreed.includes('order') || scan.reason === '')) return tell(question);
  return done(job, piece, operation, scan.reason);
}

/** Operations of the piece's route that are done at this station; just the one that is run there where it is named. */
const operationsHere = ({ book }: OpenJob, piece: Piece, scan: Scan): readonly string[] =>
  piece.route.filter(id =>
    scan.operation === null ? book.operations.get(id)?.operation.station === scan.station : id === scan.operation,
  );

const bounced = (mark: Mark, scan: Scan): boolean =>
  mark.how === 'scanned' &&
  mark.device === scan.device &&
  mark.station === scan.station &&
  Math.abs(Date.parse(scan.at) - Date.parse(mark.deviceTime)) < BOUNCE_MS;

const twice = ({ book }: OpenJob, piece: PieceFacts, had: Mark | undefined, next: Step | undefined): Answer => ({
  kind: 'twice',
  piece,
  step: stepOf(book, had?.operation ?? ''),
  at: had?.serverTime ?? '',
  next,
});

/** Asked once for each piece that a later revision made different, before it is worked on again. */
export function changedSince(
  { book, earlier, state }: OpenJob,
  piece: Piece,
): (Answer & { readonly kind: 'ask-changed' }) | undefined {
  const known = pieceState(state, piece.code);
  const current = currentMarks(known);
  const seen = [...current, ...known.spoils].some(each => compareRevisions(each.revision, book.revision) >= 0);
  const was = seen ? undefined : earlier.find(each => (each.pieces.get(piece.code)?.make ?? piece.make) !== piece.make);
  const old = was?.pieces.get(piece.code);
  if (was === undefined || old === undefined) return undefined;
  return {
    kind: 'ask-changed',
    piece: factsOf(book, piece, currentRemake(state, piece.code)),
    revision: book.revision,
    was: old.size,
    wasRevision: was.revision,
    marks: current.length,
  };
}

function orderQuestion({ book, state }: OpenJob, piece: Piece, operation: string, now: Date): Answer | undefined {
  const missing = missingBefore(book, state, piece, operation);
  const early = waitBefore(book, state, piece, operation, now);
  if (missing.length === 0 && early === undefined) return undefined;
  const facts = factsOf(book, piece, currentRemake(state, piece.code));
  return { kind: 'ask-order', piece: facts, step: stepOf(book, operation), missing, early };
}

export const missingBefore = (
  book: OpenJob['book'],
  state: JobState,
  piece: Piece,
  operation: string,
): readonly Missing[] =>
  undoneBefore(book, state, piece, operation).map(each => ({
    code: currentCode(state, each.piece),
    operations: each.operations.map(id => stepOf(book, id).operation),
  }));

function done(job: OpenJob, piece: Piece, operation: string, reason: string): Decision {
  const { book, state } = job;
  const ref = (each: Piece) => ({ code: each.code, remake: currentRemake(state, each.code) });
  const skipped = undoneBefore(book, state, piece, operation).flatMap(each =>
    each.operations.map(id => ({ piece: ref(each.piece), operation: id })),
  );
  const what: Happening = { kind: 'done', operation, pieces: [ref(piece)], skipped, reason, setup: null };
  return keep(job, what, answerDone(job, what));
}

/** What a kept `done` of one piece is told as: at once, or to a device that did not hear it the first time. */
export function answerDone({ book, state }: OpenJob, what: Happening & { readonly kind: 'done' }): Answer {
  const after = stateAfter(state, what);
  const [ref] = what.pieces;
  const piece = book.pieces.get(ref?.code ?? '');
  if (ref === undefined || piece === undefined)
    return { kind: 'gone', code: ref?.code ?? '', job: book.job, revision: book.revision };
  return {
    kind: 'done',
    piece: factsOf(book, piece, ref.remake),
    step: stepOf(book, what.operation),
    instruction: instructionFor(book, what.operation, piece.code),
    next: nextStep(book, after, piece),
    run: runOf(book, after, what.operation),
    parts: partsReady(book, after, piece),
    complete: completed(book, after, piece),
    vouched: what.skipped.length,
  };
}

/** The state as it will be once `what` is kept: what the answer speaks of. */
export function stateAfter(state: JobState, what: Happening): JobState {
  const after = draftOf(state);
  const nobody = { key: '', job: '', revision: '', station: '', device: '', deviceTime: '', serverTime: '' };
  advance(after, { ...nobody, seq: state.seq, what });
  return after;
}

const partsReady = (book: OpenJob['book'], state: JobState, piece: Piece): Count => {
  const parts = book.partsOfDoor.get(piece.door) ?? [];
  return { done: parts.filter(part => isReady(state, part)).length, total: parts.length };
};

function completed(book: OpenJob['book'], state: JobState, piece: Piece): 'no' | 'part' | 'door-parts' | 'door' {
  if (left(state, piece).length > 0) return 'no';
  if (piece.kind === 'door') return 'door';
  const { done, total } = partsReady(book, state, piece);
  return done === total ? 'door-parts' : 'part';
}
