import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Language } from '../diagnostics/languages.ts';
import { inOrder, printPlace } from '../diagnostics/print.ts';
import type { Severity } from '../diagnostics/problems.ts';
import { say } from '../diagnostics/words.ts';
import type { Length } from '../units/length.ts';

/** A finding as it is marked in a workbook: in words, at a cell or only on a sheet. */
export type Mark = {
  /** Empty where the finding is about the file. */
  readonly sheet: string;
  readonly cell: string | undefined;
  readonly where: string;
  readonly severity: Severity;
  readonly what: string;
  readonly mend: string;
};

export type MarkWords = {
  readonly headings: readonly string[];
  readonly severities: { readonly [S in Severity]: string };
};

/** The findings of a workbook as marks, in the order in which they are listed. */
export const marksOf = (
  diagnostics: readonly Diagnostic[],
  language: Language,
  size: (length: Length) => string,
): readonly Mark[] =>
  inOrder(diagnostics).map(diagnostic => {
    const { at, severity, also } = diagnostic;
    const { what, mend } = say(diagnostic, language, size);
    const places = [at, ...also].map(printPlace).join(', ');
    return {
      sheet: at.kind === 'cell' || at.kind === 'sheet' ? at.sheet : '',
      cell: at.kind === 'cell' ? at.cell : undefined,
      ...{ where: places, severity, what, mend },
    };
  });

export const MARK_WORDS: { readonly [L in Language]: MarkWords } = {
  en: {
    headings: ['', 'Where', 'What is wrong', 'How to mend it'],
    severities: { error: 'mend', warning: 'look', note: 'note' },
  },
  es: {
    headings: ['', 'Dónde', 'Qué está mal', 'Cómo corregirlo'],
    severities: { error: 'corregir', warning: 'mirar', note: 'nota' },
  },
};
