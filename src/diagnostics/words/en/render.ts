import type { RenderProblems } from '../../problems/render.ts';
import type { Words } from '../../words.ts';

export const render: Words<RenderProblems> = {
  'template-unreadable': ({ reason }) => ({
    what: `This template does not read: ${reason}.`,
    mend: 'Mend the template, or remove it to use the one that comes with the program.',
  }),
  'sheet-has-no-room': ({ reason }) => ({
    what: `This cannot be put on its sheet: ${reason}.`,
    mend: 'Shorten what is written there, or set larger labels or paper in the workbook; or mend the template.',
  }),
};
