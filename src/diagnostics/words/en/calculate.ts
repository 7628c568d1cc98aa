import type { CalculateProblems } from '../../problems/calculate.ts';
import type { Words } from '../../words.ts';

export const calculate: Words<CalculateProblems> = {
  'rail-has-no-length': ({ door, shoulder }, size) => ({
    what: `${door} is too narrow for its stiles: ${size(shoulder)} is left between them.`,
    mend: 'Make the opening wider or the stiles narrower.',
  }),
};
