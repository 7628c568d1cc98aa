import type { Answer, Decision } from './answer.ts';
import type { Happening, KeptEvent } from './event.ts';
import { pieceState } from './job-state.ts';
import { keep, type OpenJob, tell } from './open-job.ts';
import { stepOf } from './piece-facts.ts';
import { remakeCode } from './shelf.ts';

/** Takes back what `event` did. What was spoiled comes back only while its remake has not been worked on. */
export function answerToUndo(job: OpenJob, event: KeptEvent): Decision {
  const { what } = event;
  if (what.kind === 'undone') return tell({ kind: 'nothing-to-undo' });
  const pieces = what.kind === 'done' ? [...what.pieces, ...what.skipped.map(each => each.piece)] : what.pieces;
  const codes = [...new Map(pieces.map(piece => [piece.code, piece])).values()];
  if (!codes.some(({ code }) => bears(job, code, event.key))) return tell({ kind: 'nothing-to-undo' });
  if (what.kind === 'spoiled' && what.pieces.some(({ code, remake }) => isRemade(job, code, remake + 1)))
    return tell({ kind: 'remade-since', codes: what.pieces.map(({ code, remake }) => remakeCode(code, remake + 1)) });
  const undone: Happening & { readonly kind: 'undone' } = { kind: 'undone', of: event.key, pieces: codes };
  return keep(job, undone, answerUndone(job, undone, what));
}

export const answerUndone = (
  { book }: OpenJob,
  undone: Happening & { readonly kind: 'undone' },
  what: Happening | undefined,
): Answer => ({
  kind: 'undone',
  pieces: undone.pieces.map(piece => piece.code),
  step: what?.kind === 'done' ? stepOf(book, what.operation) : undefined,
});

function bears({ state }: OpenJob, code: string, key: string): boolean {
  const { marks, spoils } = pieceState(state, code);
  return [...marks, ...spoils].some(each => each.key === key);
}

const isRemade = ({ state }: OpenJob, code: string, remake: number): boolean => {
  const { marks, spoils } = pieceState(state, code);
  return spoils.length > remake || marks.some(mark => mark.remake === remake);
};
