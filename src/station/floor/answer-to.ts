import { barcodeFor } from '../../codes/barcode.ts';
import type { Answer, Decision } from './answer.ts';
import { pieceState } from './job-state.ts';
import { type OpenJob, type Tagged, tell } from './open-job.ts';
import { answerToPiece } from './piece-answer.ts';
import type { Scan } from './scan.ts';
import { answerToSetup } from './setup-answer.ts';
import { isSymbol, splitRemake, tidyCode } from './shelf.ts';
import { answerToSpoiled } from './spoil-answer.ts';

/**
 * What a scan means. `jobs` are those that its code may be of (`jobsOf`); `now` is the server's clock, which only
 * waits are measured by. Says what to tell and what to keep; asks where a person has to decide.
 */
export function answerTo(scan: Scan, jobs: readonly OpenJob[], now: Date): Decision {
  const code = tidyCode(scan.code);
  const meant = jobs.filter(job => find(job, code) !== undefined);
  const chosen = meant.find(({ book }) => book.job === scan.job);
  const [first] = meant;
  if (first === undefined) return tell(unfound(code, jobs));
  if (chosen !== undefined) return answerIn(chosen, code, scan, now);
  if (scan.job !== null) return tell({ kind: 'wrong-job', code, job: first.book.job, chosen: scan.job });
  if (meant.length > 1) return tell({ kind: 'which-job', code, jobs: meant.map(({ book }) => book.job) });
  return answerIn(first, code, scan, now);
}

type Found =
  | { readonly kind: 'piece'; readonly tagged: Tagged }
  | { readonly kind: 'setup' | 'offcut'; readonly code: string }
  | { readonly kind: 'gone'; readonly code: string };

function answerIn(job: OpenJob, code: string, scan: Scan, now: Date): Decision {
  const found = find(job, code);
  switch (found?.kind) {
    case undefined:
      return tell({ kind: 'unknown', code });
    case 'gone':
      return tell({ kind: 'gone', code: found.code, job: job.book.job, revision: job.book.revision });
    case 'offcut':
      return tell(offcut(job, found.code));
    case 'setup':
      return answerToSetup(job, found.code, scan, now);
    case 'piece':
      return scan.act === 'spoiled'
        ? answerToSpoiled(job, found.tagged, scan)
        : answerToPiece(job, found.tagged, scan, now);
  }
}

/** What `code`, a symbol or typed letters, stands for in a job. */
function find(job: OpenJob, code: string): Found | undefined {
  if (!isSymbol(code)) {
    const { base, remake } = splitRemake(code);
    return pieceFound(job, base, remake);
  }
  const target = job.targets.get(code);
  if (target?.kind === 'piece') return pieceFound(job, target.code, 0);
  return target === undefined ? remakeFound(job, code) : { kind: target.kind, code: target.code };
}

function pieceFound(job: OpenJob, code: string, remake: number): Found | undefined {
  const piece = job.book.pieces.get(code);
  if (piece !== undefined) return { kind: 'piece', tagged: { piece, remake } };
  return job.earlier.some(book => book.pieces.has(code)) ? { kind: 'gone', code } : undefined;
}

/** Tags of remakes are in no manifest: they are known by what was spoiled. */
function remakeFound(job: OpenJob, code: string): Found | undefined {
  for (const base of job.state.pieces.keys()) {
    const remakes = pieceState(job.state, base).spoils.map((_, at) => at + 1);
    const remake = remakes.find(each => barcodeFor(job.book.job, `${base}+${each}`) === code);
    if (remake !== undefined) return pieceFound(job, base, remake);
  }
  return undefined;
}

function offcut({ book }: OpenJob, code: string): Answer {
  for (const plan of book.manifest.cutPlans) {
    const found = plan.offcuts.find(each => each.code === code);
    if (found === undefined) continue;
    return { kind: 'offcut', code, job: book.job, stock: plan.stock, size: [found.length.text, found.width.text] };
  }
  return { kind: 'gone', code, job: book.job, revision: book.revision };
}

/** Eleven letters and figures whose check character is wrong were read or typed wrong; others are no tag of ours. */
function unfound(code: string, jobs: readonly OpenJob[]): Answer {
  if (isSymbol(code)) return { kind: jobs.length === 0 ? 'unknown-job' : 'unknown', code };
  return { kind: /^[0-9A-Z]{9,13}$/.test(code) ? 'mistyped' : 'unknown', code };
}
