import type { Instruction, PieceFacts, Step } from '../floor/answer.ts';
import type { Question } from '../floor/scan.ts';
import type { Say } from './words.ts';

/** An answer as a page shows it: in words, with a tone that is told by sign, words, shape and sound, and colour last. */
export type Card = {
  readonly tone: 'go' | 'ask' | 'stop' | 'note';
  readonly title: string;
  /** What is read from an arm's length: the code. */
  readonly headline: string;
  readonly size: string;
  readonly facts: readonly Fact[];
  readonly settings: readonly Fact[];
  readonly next: string;
  readonly lines: readonly string[];
  readonly reminders: readonly string[];
  readonly question: CardQuestion | undefined;
  /** Jobs that the station may go on with instead. */
  readonly jobs: readonly { readonly job: string; readonly label: string }[];
  readonly links: readonly { readonly href: string; readonly label: string }[];
  /** Something was kept, and can be taken back. */
  readonly kept: boolean;
};

export type Fact = { readonly label: string; readonly text: string };

export type CardQuestion = {
  readonly about: Question;
  readonly yes: string;
  readonly no: string;
  /** Empty where no reason is asked for. */
  readonly reasons: readonly string[];
};

export type Told = Omit<Partial<Card>, 'kept' | 'question'> & Pick<Card, 'tone' | 'title'>;

export const factsOfPiece = (piece: PieceFacts, say: Say): Pick<Card, 'headline' | 'size' | 'facts'> => ({
  headline: piece.code,
  size: piece.size.join(' × '),
  facts: [
    ...(piece.kind === 'part' ? [{ label: say('card.part'), text: piece.name }] : []),
    { label: say('card.door'), text: piece.door },
    { label: say('card.cabinet'), text: [piece.cabinet, piece.room].filter(each => each !== '').join(' · ') },
    { label: say('card.job'), text: piece.job },
  ],
});

export const sayNext = (next: Step | undefined, say: Say): string =>
  next === undefined ? say('card.nothingNext') : say('card.nextAt', next);

export const sayInstruction = (instruction: Instruction, say: Say): Pick<Card, 'settings' | 'reminders'> => ({
  settings: [
    ...instruction.settings.map(({ name, text }) => ({ label: name, text })),
    ...(instruction.facing === '' ? [] : [{ label: say('card.facing'), text: instruction.facing }]),
  ],
  reminders: instruction.reminders,
});

export const tagAddress = (job: string, code: string): string =>
  `/tag/${encodeURIComponent(job)}/${encodeURIComponent(code)}`;
