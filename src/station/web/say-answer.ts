import type { Language } from '../../diagnostics/languages.ts';
import { type Answer, questionOf } from '../floor/answer.ts';
import { type Card, factsOfPiece, sayInstruction, sayNext, type Told, tagAddress } from './card.ts';
import { sayQuestion } from './card-question.ts';
import { sayTrouble } from './card-trouble.ts';
import { type Say, sayerOf } from './words.ts';

export const sayAnswerCard = (answer: Answer, language: Language, time: (iso: string) => string): Card =>
  cardOf(answer, sayerOf(language), time);

/** An answer in words. `time` writes a moment of the server's clock as the shop's clock on the wall shows it. */
export function cardOf(answer: Answer, say: Say, time: (iso: string) => string): Card {
  const told = sayAnswer(answer, say, time);
  const about = questionOf(answer);
  return {
    ...EMPTY,
    ...told,
    question: about === undefined ? undefined : { about, ...sayQuestion(answer, say) },
    kept: KEPT.includes(answer.kind),
  };
}

function sayAnswer(answer: Answer, say: Say, time: (iso: string) => string): Told {
  switch (answer.kind) {
    case 'done':
      return sayDone(answer, say);
    case 'batch-done':
      return {
        tone: 'go',
        title: say('batchDone.title', { operation: answer.step.operation }),
        headline: say('batchDone.headline', { count: answer.pieces.length }),
        lines: [say('card.run', answer.run)],
      };
    case 'spoiled':
      return saySpoiled(answer, say);
    case 'undone':
      return {
        tone: 'note',
        title: say('undone.title'),
        headline: answer.pieces.join(', '),
        lines: [
          answer.step === undefined ? say('undone.spoiled') : say('undone.step', { operation: answer.step.operation }),
        ],
      };
    default:
      return sayTrouble(answer, say, time);
  }
}

function sayDone(answer: Answer & { readonly kind: 'done' }, say: Say): Told {
  const { piece, step, instruction, run, parts, complete, vouched } = answer;
  const ready = { no: [], part: ['done.part'], 'door-parts': ['done.doorParts'], door: ['done.door'] }[complete];
  return {
    tone: 'go',
    title: say('done.title', { operation: step.operation }),
    ...factsOfPiece(piece, say),
    ...sayInstruction(instruction, say),
    next: sayNext(answer.next, say),
    lines: [
      ...ready.map(key => say(key, { door: piece.door })),
      say('card.run', run),
      ...(piece.kind === 'part' ? [say('card.parts', parts)] : []),
      ...(vouched > 0 ? [say('done.vouched', { count: vouched })] : []),
    ],
  };
}

function saySpoiled({ piece, remakes, from }: Answer & { readonly kind: 'spoiled' }, say: Say): Told {
  return {
    tone: 'go',
    title: say('spoiled.title'),
    ...factsOfPiece(piece, say),
    headline: say('spoiled.headline', { code: remakes[0] ?? '' }),
    lines: [
      say('spoiled.start'),
      ...from.map(source =>
        source.kind === 'offcut'
          ? say('spoiled.offcut', { code: source.code, size: source.size.join(' × ') })
          : say('spoiled.stock', { stock: source.stock }),
      ),
    ],
    links: remakes.map(code => ({ href: tagAddress(piece.job, code), label: say('spoiled.tag', { code }) })),
  };
}

const KEPT: readonly Answer['kind'][] = ['done', 'batch-done', 'spoiled'];

const EMPTY = {
  headline: '',
  size: '',
  facts: [],
  settings: [],
  next: '',
  lines: [],
  reminders: [],
  jobs: [],
  links: [],
};
