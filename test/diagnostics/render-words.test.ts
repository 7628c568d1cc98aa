import { describe, expect, it } from 'vitest';
import { problem } from '../../src/diagnostics/diagnostic.ts';
import { printDiagnostics } from '../../src/diagnostics/print.ts';

const at = { kind: 'template', file: 'templates/cover.hbs', line: 3 } as const;
const found = [
  problem('sheet-has-no-room', at, { reason: '<bar>: the symbol of "A7" is 90 points wide, and its place is 80' }),
  problem('template-unreadable', at, { reason: '"nmae" not defined' }),
];

describe('what is wrong with paper', () => {
  it('is said at the line of the template, with how to mend it', () => {
    expect(printDiagnostics(found, 'en', String)).toMatchInlineSnapshot(`
      "error  templates/cover.hbs:3: This cannot be put on its sheet: <bar>: the symbol of "A7" is 90 points wide, and its place is 80.
               Shorten what is written there, or set larger labels or paper in the workbook; or mend the template.
      error  templates/cover.hbs:3: This template does not read: "nmae" not defined.
               Mend the template, or remove it to use the one that comes with the program.
      "
    `);
  });

  it('is said in Spanish too', () => {
    expect(printDiagnostics(found, 'es', String)).toMatchInlineSnapshot(`
      "error  templates/cover.hbs:3: Esto no cabe en su hoja: <bar>: the symbol of "A7" is 90 points wide, and its place is 80.
               Acorte el texto, o indique etiquetas o papel más grandes en el libro; o corrija la plantilla.
      error  templates/cover.hbs:3: No se puede leer esta plantilla: "nmae" not defined.
               Corrija la plantilla, o quítela para usar la que viene con el programa.
      "
    `);
  });
});
