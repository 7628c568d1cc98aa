import type { RenderProblems } from '../../problems/render.ts';
import type { Words } from '../../words.ts';

export const render: Words<RenderProblems> = {
  'template-unreadable': ({ reason }) => ({
    what: `No se puede leer esta plantilla: ${reason}.`,
    mend: 'Corrija la plantilla, o quítela para usar la que viene con el programa.',
  }),
  'sheet-has-no-room': ({ reason }) => ({
    what: `Esto no cabe en su hoja: ${reason}.`,
    mend: 'Acorte el texto, o indique etiquetas o papel más grandes en el libro; o corrija la plantilla.',
  }),
};
