import type { Answer } from '../floor/answer.ts';
import { factsOfPiece, sayInstruction, sayNext, type Told } from './card.ts';
import type { Say } from './words.ts';

type Trouble = Exclude<Answer, { readonly kind: 'done' | 'batch-done' | 'spoiled' | 'undone' }>;

/** Everything that was not simply done: what asks, and what tells why nothing was counted. */
export function sayTrouble(answer: Trouble, say: Say, time: (iso: string) => string): Told {
  switch (answer.kind) {
    case 'ask-order':
      return {
        tone: 'ask',
        title: say('askOrder.title'),
        ...factsOfPiece(answer.piece, say),
        lines: [
          ...answer.missing.map(({ code, operations }) =>
            say('askOrder.missing', { code, operations: operations.join(', ') }),
          ),
          ...(answer.early === undefined ? [] : [say('askOrder.early', answer.early)]),
        ],
      };
    case 'ask-changed':
      return {
        tone: 'ask',
        title: say('askChanged.title', { revision: answer.revision }),
        ...factsOfPiece(answer.piece, say),
        lines: [
          say('askChanged.was', { revision: answer.wasRevision, was: answer.was.join(' × ') }),
          ...(answer.marks > 0 ? [say('askChanged.marks', { count: answer.marks })] : []),
        ],
      };
    case 'ask-batch':
      return {
        tone: 'ask',
        title: say('askBatch.title'),
        headline: say('askBatch.headline', { count: answer.ready.length }),
        ...sayInstruction(answer.instruction, say),
        lines: [
          answer.step.operation,
          say('askBatch.pieces', { codes: answer.ready.join(', ') }),
          ...(answer.before > 0 ? [say('askBatch.before', { count: answer.before })] : []),
          ...(answer.notReady.length > 0 ? [say('askBatch.notReady', { codes: answer.notReady.join(', ') })] : []),
        ],
      };
    case 'ask-spoil':
      return {
        tone: 'ask',
        title: say('askSpoil.title'),
        ...factsOfPiece(answer.piece, say),
        lines: [say('askSpoil.remake', { codes: answer.remakes.join(', ') })],
      };
    case 'twice':
      return {
        tone: 'note',
        title: say('twice.title', { operation: answer.step.operation }),
        ...factsOfPiece(answer.piece, say),
        next: sayNext(answer.next, say),
        lines: [say('twice.line', { time: time(answer.at) })],
      };
    case 'batch-twice':
      return {
        tone: 'note',
        title: say('batchTwice.title'),
        headline: answer.step.operation,
        lines: [
          say('batchTwice.line', { count: answer.pieces }),
          ...(answer.notReady.length > 0 ? [say('askBatch.notReady', { codes: answer.notReady.join(', ') })] : []),
        ],
      };
    case 'elsewhere':
      return {
        tone: 'stop',
        title: say('elsewhere.title'),
        ...factsOfPiece(answer.piece, say),
        next: sayNext(answer.next, say),
      };
    default:
      return sayStranger(answer, say);
  }
}

type Stranger = Exclude<Trouble, { readonly kind: `ask-${string}` | 'twice' | 'batch-twice' | 'elsewhere' }>;

/** What is none of this station's business, or nobody's. */
function sayStranger(answer: Stranger, say: Say): Told {
  switch (answer.kind) {
    case 'nothing-to-undo':
      return { tone: 'note', title: say('nothingToUndo.title'), lines: [say('nothingToUndo.line')] };
    case 'remade-since':
      return stop('remadeSince', { codes: answer.codes.join(', ') }, '', say);
    case 'setup-elsewhere':
      return stop('setupElsewhere', answer.step, answer.setup, say);
    case 'old-tag':
      return { ...stop('oldTag', { code: answer.code }, '', say), headline: answer.piece.code };
    case 'gone':
      return stop('gone', answer, answer.code, say);
    case 'offcut':
      return {
        ...stop('offcut', { stock: answer.stock, size: answer.size.join(' × ') }, answer.code, say),
        tone: 'note',
      };
    case 'wrong-job':
      return {
        ...stop('wrongJob', answer, answer.code, say),
        jobs: [{ job: answer.job, label: say('wrongJob.switch', { job: answer.job }) }],
      };
    case 'which-job':
      return {
        ...stop('whichJob', { code: answer.code }, answer.code, say),
        jobs: answer.jobs.map(job => ({ job, label: job })),
      };
    case 'unknown-job':
    case 'unknown':
    case 'mistyped':
      return stop(STRANGE[answer.kind], { code: answer.code }, answer.code, say);
  }
}

const stop = (
  about: string,
  facts: { readonly [name: string]: string | number },
  headline: string,
  say: Say,
): Told => ({ tone: 'stop', title: say(`${about}.title`, facts), headline, lines: [say(`${about}.line`, facts)] });

const STRANGE = { 'unknown-job': 'unknownJob', unknown: 'unknown', mistyped: 'mistyped' } as const;
