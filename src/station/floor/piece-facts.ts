import type { Instruction, PieceFacts, Step } from './answer.ts';
import { type Book, type Piece, setupOf } from './book.ts';
import type { JobState } from './job-state.ts';
import { currentRemake, left } from './route.ts';
import { remakeCode } from './shelf.ts';

export const factsOf = (book: Book, piece: Piece, remake: number): PieceFacts => ({
  job: book.job,
  kind: piece.kind,
  code: remakeCode(piece.code, remake),
  name: piece.name,
  door: piece.door,
  cabinet: piece.cabinet,
  room: piece.room,
  size: piece.size,
});

export const stepOf = (book: Book, operation: string): Step => {
  const booked = book.operations.get(operation)?.operation;
  return { operation: booked?.name ?? operation, station: booked?.stationName ?? '' };
};

/** The first step that is left of a piece's route. */
export function nextStep(book: Book, state: JobState, piece: Piece): Step | undefined {
  const [next] = left(state, piece);
  return next === undefined ? undefined : stepOf(book, next);
}

/** The setting, the facing and the reminders that hold for this piece at this operation. */
export function instructionFor(book: Book, operation: string, code: string): Instruction {
  const setup = setupOf(book, operation, code);
  const general = book.operations.get(operation)?.operation.reminders ?? [];
  return {
    setup: setup?.code ?? '',
    facing: setup?.facing ?? '',
    settings: (setup?.settings ?? []).map(({ name, value }) => ({ name, text: value.text })),
    reminders: [
      // What names this piece first: it is why somebody should stop and read.
      ...(setup?.reminders ?? []).filter(each => each.pieces.includes(code)),
      ...(setup?.reminders ?? []).filter(each => each.pieces.length === 0),
      ...general.filter(each => each.pieces.includes(code)),
    ].map(each => each.text),
  };
}

/** The code of the piece that is in the shop now, with its remake number. */
export const currentCode = (state: JobState, piece: Piece): string =>
  remakeCode(piece.code, currentRemake(state, piece.code));
