import type { ImportProblems } from '../../problems/import.ts';
import type { Words } from '../../words.ts';

export const importing: Words<ImportProblems> = {
  'length-unreadable': ({ column, typed }) => ({
    what: `“${typed}” in ${column} is not a length.`,
    mend: 'Write it like 14 3/8, 14.375 or 365 mm.',
  }),
};
