import type { KeptEvent, PieceRef } from './event.ts';
import { aheadOf, type Mark, type PieceState, type PieceStates, pieceStates, type Spoil } from './piece-states.ts';

/** What is known of a job's pieces from its events alone. */
export type JobState = {
  readonly pieces: PieceStates;
  /** The place of the last event that is in it. */
  seq: number;
  /** The newest first, at most `RECENT_MAX`; what was undone is not in it. */
  recent: readonly KeptEvent[];
};

export const RECENT_MAX = 20;

/** The state that a row of events, in ledger order, leads to. */
export function replay(events: Iterable<KeptEvent>): JobState {
  const state = untouched();
  for (const event of events) advance(state, event);
  return state;
}

export const untouched = (): JobState => ({ pieces: pieceStates(), seq: 0, recent: [] });

/** A state to think ahead in: what is put into it does not reach `state`. */
export const draftOf = ({ pieces, seq, recent }: JobState): JobState => ({ pieces: aheadOf(pieces), seq, recent });

/**
 * Takes one more event into `state`. An event that comes too late to matter changes nothing: a mark that is there
 * already, a piece that is spoiled already. So two stations that meet in one piece need no lock.
 */
export function advance(state: JobState, event: KeptEvent): void {
  state.seq = event.seq;
  const { what } = event;
  switch (what.kind) {
    case 'done':
      for (const { piece, operation } of what.skipped) mark(state, piece, operation, 'vouched', event);
      for (const piece of what.pieces) mark(state, piece, what.operation, 'scanned', event);
      break;
    case 'spoiled':
      for (const piece of what.pieces) spoil(state, piece, what.reason, event);
      break;
    case 'undone':
      for (const piece of what.pieces) forget(state, piece.code, what.of);
  }
  state.recent = recentWith(state.recent, event);
}

export const pieceState = (state: JobState, code: string): PieceState => state.pieces.get(code) ?? UNTOUCHED;

export const remakeOf = (piece: PieceState): number => piece.spoils.length;

/** The marks of the piece that is in the shop now, not of those that it replaces. */
export const currentMarks = (piece: PieceState): readonly Mark[] =>
  piece.marks.filter(each => each.remake === remakeOf(piece));

function mark(state: JobState, piece: PieceRef, operation: string, how: Mark['how'], event: KeptEvent): void {
  const old = pieceState(state, piece.code);
  if (old.marks.some(each => each.operation === operation && each.remake === piece.remake)) return;
  const { key, revision, station, device, deviceTime, serverTime } = event;
  const made = { operation, remake: piece.remake, key, how, revision, station, device, deviceTime, serverTime };
  state.pieces.set(piece.code, pieceOf([...old.marks, made], old.spoils));
}

function spoil(state: JobState, piece: PieceRef, reason: string, event: KeptEvent): void {
  const old = pieceState(state, piece.code);
  if (remakeOf(old) !== piece.remake) return;
  const made = { key: event.key, revision: event.revision, reason };
  state.pieces.set(piece.code, pieceOf(old.marks, [...old.spoils, made]));
}

function forget(state: JobState, code: string, key: string): void {
  const old = pieceState(state, code);
  const others = (each: { readonly key: string }) => each.key !== key;
  state.pieces.set(code, pieceOf(old.marks.filter(others), old.spoils.filter(others)));
}

function recentWith(recent: readonly KeptEvent[], event: KeptEvent): readonly KeptEvent[] {
  const { what } = event;
  if (what.kind === 'undone') return recent.filter(each => each.key !== what.of);
  return [event, ...recent].slice(0, RECENT_MAX);
}

const pieceOf = (marks: readonly Mark[], spoils: readonly Spoil[]): PieceState => ({
  marks,
  spoils,
  done: new Set(marks.flatMap(each => (each.remake === spoils.length ? each.operation : []))),
});

const UNTOUCHED: PieceState = { marks: [], spoils: [], done: new Set() };
