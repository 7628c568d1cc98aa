import type { LayoutProblems } from '../../problems/layout.ts';
import type { Words } from '../../words.ts';

export const layout: Words<LayoutProblems> = {
  'piece-fits-no-stock': ({ code, stock, length, width }, size) => ({
    what: `${code} needs ${size(length)} × ${size(width)} and no ${stock} is that large.`,
    mend: 'Add a larger board or sheet to Stock.',
  }),
};
