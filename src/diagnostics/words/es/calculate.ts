import type { CalculateProblems } from '../../problems/calculate.ts';
import type { Words } from '../../words.ts';

export const calculate: Words<CalculateProblems> = {
  'rail-has-no-length': ({ door, shoulder }, size) => ({
    what: `${door} es demasiado angosta para sus largueros: quedan ${size(shoulder)} entre ellos.`,
    mend: 'Ensanche el hueco o use largueros más angostos.',
  }),
};
