import type { ImportProblems } from '../../problems/import.ts';
import type { Words } from '../../words.ts';

export const importing: Words<ImportProblems> = {
  'length-unreadable': ({ column, typed }) => ({
    what: `«${typed}» en ${column} no es una medida.`,
    mend: 'Escríbala como 14 3/8, 14.375 o 365 mm.',
  }),
};
