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
          ...answer.missing
            .slice(0, NAMED_MAX)
            .map(({ code, operations }) => say('askOrder.missing', { code, operations: operations.join(', ') })),
          ...(answer.missing.length > NAMED_MAX
            ? [someOf(answer.missing.map(each => each.code).slice(NAMED_MAX), say)]
            : []),
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
        headline: answer.step.operation,
        size: say('askBatch.headline', { count: answer.ready.length }),
        ...sayInstruction(answer.instruction, say),
        lines: [
          say('askBatch.pieces', { codes: someOf(answer.ready, say) }),
          ...(answer.before > 0 ? [say('askBatch.before', { count: answer.before })] : []),
          ...(answer.notReady.length > 0 ? [say('askBatch.notReady', { codes: someOf(answer.notReady, say) })] : []),
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
          ...(answer.notReady.length > 0 ? [say('askBatch.notReady', { codes: someOf(answer.notReady, say) })] : []),
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

/** As many codes as can be taken in at a glance; a machine's whole run may be hundreds. */
const NAMED_MAX = 12;

const someOf = (codes: readonly string[], say: Say): string =>
  codes.length <= NAMED_MAX
    ? codes.join(', ')
    : say('card.more', { codes: codes.slice(0, NAMED_MAX).join(', '), count: codes.length - NAMED_MAX });

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
