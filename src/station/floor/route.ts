import { type Book, onlyWaits, type Piece } from './book.ts';
import { currentMarks, type JobState, pieceState, remakeOf } from './job-state.ts';

/** Whether the piece that is in the shop now has had `operation`. */
export const isDone = (state: JobState, piece: Piece, operation: string): boolean =>
  pieceState(state, piece.code).done.has(operation);

/** What is left of its route, in order. */
export const left = (state: JobState, piece: Piece): readonly string[] =>
  piece.route.filter(operation => !isDone(state, piece, operation));

/** A part is ready when its route is done; a door when its own is, since it starts with its parts. */
export const isReady = (state: JobState, piece: Piece): boolean => left(state, piece).length === 0;

/** What a piece should have had before `operation`: its own route up to there, and for a door that of its parts. */
export function undoneBefore(
  book: Book,
  state: JobState,
  piece: Piece,
  operation: string,
): readonly { readonly piece: Piece; readonly operations: readonly string[] }[] {
  const order = book.operations.get(operation)?.order ?? 0;
  const earlier = (id: string): boolean => (book.operations.get(id)?.order ?? 0) < order;
  const own = piece.route.slice(0, Math.max(0, piece.route.indexOf(operation)));
  const parts = piece.kind === 'door' ? (book.partsOfDoor.get(piece.code) ?? []) : [];
  return [
    { piece, operations: own.filter(id => !isDone(state, piece, id)) },
    ...parts.map(part => ({ piece: part, operations: left(state, part).filter(earlier) })),
  ].filter(each => each.operations.length > 0);
}

/** The wait before `operation` that is not over yet, by the server's clock. */
export function waitBefore(
  book: Book,
  state: JobState,
  piece: Piece,
  operation: string,
  now: Date,
): { readonly operation: string; readonly minutes: number } | undefined {
  const order = book.operations.get(operation)?.order ?? 0;
  const mark = lastMarkBefore(book, state, piece, order);
  if (mark === undefined) return undefined;
  const from = book.operations.get(mark.operation)?.order ?? 0;
  const waits = book.manifest.operations
    .slice(from, order)
    .filter((each, at) => each.waitMinutes > 0 && (at === 0 || (onlyWaits(each) && waitsFor(book, piece, each.id))));
  const minutes = waits.reduce((total, each) => total + each.waitMinutes, 0);
  const remaining = Math.ceil(minutes - (now.getTime() - Date.parse(mark.serverTime)) / 60_000);
  const longest = waits.at(-1);
  return remaining > 0 && longest !== undefined ? { operation: longest.name, minutes: remaining } : undefined;
}

/** How many of `operation`'s pieces have had it. */
export function runOf(
  book: Book,
  state: JobState,
  operation: string,
): { readonly done: number; readonly total: number } {
  const codes = book.operations.get(operation)?.codes;
  return codes === undefined
    ? { done: 0, total: 0 }
    : { done: state.pieces.count(operation, codes), total: codes.size };
}

/** The piece that is in the shop now: 0 the first, 1 its first remake … */
export const currentRemake = (state: JobState, code: string): number => remakeOf(pieceState(state, code));

function lastMarkBefore(book: Book, state: JobState, piece: Piece, order: number) {
  return currentMarks(pieceState(state, piece.code))
    .filter(mark => (book.operations.get(mark.operation)?.order ?? order) < order)
    .at(-1);
}

const waitsFor = (book: Book, piece: Piece, operation: string): boolean =>
  (piece.part?.route ?? book.manifest.doors.find(door => door.code === piece.code)?.route ?? []).includes(operation);
