import type { Answer } from './answer.ts';
import type { KeptEvent } from './event.ts';
import type { OpenJob } from './open-job.ts';
import { answerDone } from './piece-answer.ts';
import { answerBatch } from './setup-answer.ts';
import { answerSpoiled } from './spoil-answer.ts';
import { answerUndone } from './undo-answer.ts';

/** The answer to a scan that was kept before: its device did not hear it, and asks with the same key. */
export function answerKept(job: OpenJob, { what }: KeptEvent): Answer {
  switch (what.kind) {
    case 'done':
      return what.setup === null ? answerDone(job, what) : answerBatch(job, what);
    case 'spoiled':
      return answerSpoiled(job, what);
    case 'undone':
      return answerUndone(job, what, undefined);
  }
}
