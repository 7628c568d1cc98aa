import type { Answer, Decision } from './answer.ts';
import type { Piece } from './book.ts';
import type { Happening } from './event.ts';
import type { JobState } from './job-state.ts';
import type { ShelvedJob } from './shelf.ts';

/** A job with all that the floor has done to it. */
export type OpenJob = ShelvedJob & { readonly state: JobState };

/** Something with a tag, and which of its remakes the tag is of. */
export type Tagged = { readonly piece: Piece; readonly remake: number };

/** Told, and nothing kept. */
export const tell = (answer: Answer): Decision => ({ answer, keep: undefined });

/** Told, once it is kept. */
export const keep = ({ book }: OpenJob, what: Happening, answer: Answer): Decision => ({
  answer,
  keep: { job: book.job, revision: book.revision, what },
});
