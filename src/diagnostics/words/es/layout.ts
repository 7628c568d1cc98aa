import type { LayoutProblems } from '../../problems/layout.ts';
import type { Words } from '../../words.ts';

export const layout: Words<LayoutProblems> = {
  'piece-fits-no-stock': ({ code, stock, length, width }, size) => ({
    what: `${code} necesita ${size(length)} × ${size(width)} y ningún ${stock} es tan grande.`,
    mend: 'Agregue a Stock una tabla o un tablero mayor.',
  }),
};
