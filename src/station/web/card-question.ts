import type { Answer } from '../floor/answer.ts';
import type { CardQuestion } from './card.ts';
import type { Say } from './words.ts';

/** The two ways out of a question, and the reasons to choose from where one has to be given. */
export function sayQuestion(answer: Answer, say: Say): Omit<CardQuestion, 'about'> {
  switch (answer.kind) {
    case 'ask-order':
      return { ...waysOut('askOrder', say, { operation: answer.step.operation }), reasons: reasons('askOrder', say) };
    case 'ask-changed':
      return { ...waysOut('askChanged', say), reasons: [] };
    case 'ask-batch':
      return { ...waysOut('askBatch', say, { count: answer.ready.length }), reasons: [] };
    case 'ask-spoil':
      return { ...waysOut('askSpoil', say), reasons: reasons('askSpoil', say) };
    default:
      return { yes: say('card.yes'), no: say('card.no'), reasons: [] };
  }
}

const waysOut = (about: string, say: Say, facts: { readonly [name: string]: string | number } = {}) => ({
  yes: say(`${about}.yes`, facts),
  no: say(`${about}.no`),
});

const reasons = (about: string, say: Say): readonly string[] => [1, 2, 3].map(each => say(`${about}.reason${each}`));
