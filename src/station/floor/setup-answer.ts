import type { Answer, Decision } from './answer.ts';
import type { Operation, Piece, Setup } from './book.ts';
import type { Happening } from './event.ts';
import { keep, type OpenJob, tell } from './open-job.ts';
import { changedSince, missingBefore, stateAfter } from './piece-answer.ts';
import { currentCode, instructionFor, stepOf } from './piece-facts.ts';
import { currentRemake, isDone, runOf, waitBefore } from './route.ts';
import type { Scan } from './scan.ts';

/** A set-up card stands for its pieces. Those that are not ready for it are named and left out. */
export function answerToSetup(job: OpenJob, code: string, scan: Scan, now: Date): Decision {
  const found = findSetup(job, code);
  if (found === undefined) return tell({ kind: 'gone', code, job: job.book.job, revision: job.book.revision });
  const { operation, setup } = found;
  const here = scan.operation === null ? operation.station === scan.station : operation.id === scan.operation;
  if (!here) return tell({ kind: 'setup-elsewhere', setup: code, step: stepOf(job.book, operation.id) });
  const run = sort(job, operation, setup, now);
  const notReady = run.notReady.map(piece => currentCode(job.state, piece));
  if (run.ready.length === 0)
    return tell({ kind: 'batch-twice', step: stepOf(job.book, operation.id), pieces: run.before, notReady });
  if (!scan.agreed.includes('batch')) return tell(question(job, operation, setup, run));
  return batchDone(job, operation.id, code, run.ready);
}

/** What a kept batch is told as: at once, or to a device that did not hear it the first time. */
export function answerBatch({ book, state }: OpenJob, what: Happening & { readonly kind: 'done' }): Answer {
  return {
    kind: 'batch-done',
    step: stepOf(book, what.operation),
    pieces: what.pieces.map(piece => piece.code),
    run: runOf(book, stateAfter(state, what), what.operation),
  };
}

type Run = { readonly ready: readonly Piece[]; readonly notReady: readonly Piece[]; readonly before: number };

function findSetup(
  { book }: OpenJob,
  code: string,
): { readonly operation: Operation; readonly setup: Setup } | undefined {
  for (const operation of book.manifest.operations) {
    const setup = operation.setups.find(each => each.code === code);
    if (setup !== undefined) return { operation, setup };
  }
  return undefined;
}

function sort(job: OpenJob, operation: Operation, setup: Setup, now: Date): Run {
  // Test pieces and spares have no tag, so the card does not count them.
  const pieces = setup.pieces.flatMap(code => job.book.pieces.get(code) ?? []);
  const undone = pieces.filter(piece => piece.route.includes(operation.id) && !isDone(job.state, piece, operation.id));
  const isReady = (piece: Piece): boolean =>
    changedSince(job, piece) === undefined &&
    missingBefore(job.book, job.state, piece, operation.id).length === 0 &&
    waitBefore(job.book, job.state, piece, operation.id, now) === undefined;
  const ready = undone.filter(isReady);
  return { ready, notReady: undone.filter(piece => !ready.includes(piece)), before: pieces.length - undone.length };
}

function question(job: OpenJob, operation: Operation, setup: Setup, run: Run): Answer {
  const [first] = run.ready;
  return {
    kind: 'ask-batch',
    setup: setup.code,
    step: stepOf(job.book, operation.id),
    instruction: instructionFor(job.book, operation.id, first?.code ?? ''),
    ready: run.ready.map(piece => currentCode(job.state, piece)),
    before: run.before,
    notReady: run.notReady.map(piece => currentCode(job.state, piece)),
  };
}

function batchDone(job: OpenJob, operation: string, setup: string, ready: readonly Piece[]): Decision {
  const pieces = ready.map(({ code }) => ({ code, remake: currentRemake(job.state, code) }));
  const what = { kind: 'done' as const, operation, pieces, skipped: [], reason: '', setup };
  return keep(job, what, answerBatch(job, what));
}
