import type { LayoutProblems } from '../../problems/layout.ts';
import type { Words } from '../../words.ts';

export const layout: Words<LayoutProblems> = {
  'pot-too-small': ({ step, door, litres, pot }) => ({
    what: `One coat of ${step} on ${door} takes ${litres.toFixed(2)} l and the pot holds ${pot.toFixed(2)} l.`,
    mend: 'Set a larger pot in Shop, or fill it twice and keep a wet edge.',
  }),
  'rack-too-small': ({ step, wet, slots }) => ({
    what: `In ${step}, ${wet} doors are wet at once and the rack holds ${slots}.`,
    mend: 'The day plan coats them in several loads. Set more rack slots in Shop if there are more.',
  }),
  'prices-missing': ({ items }) => ({
    what: `The total lacks the price of ${items.join(', ')}.`,
    mend: 'Write the missing prices in Stock, Hardware, Finish and Shop.',
  }),
  'hardware-not-listed': ({ use, count }) => ({
    what: `The job needs ${count} ${use}${count === 1 ? '' : 's'} and Hardware lists none.`,
    mend: `Add a row to Hardware with the use ${use}.`,
  }),
  'piece-fits-no-stock': ({ code, stock, length, width }, size) => ({
    what: `${code} needs ${size(length)} × ${size(width)} and no ${stock} is that large.`,
    mend: 'Add a larger board or sheet to Stock.',
  }),
  'stock-runs-out': ({ stock, pieces }) => ({
    what: `${stock} on hand is used up, and ${pieces} pieces are not cut yet.`,
    mend: 'Write yes in Buy for a size of it, or add what is on hand.',
  }),
};
