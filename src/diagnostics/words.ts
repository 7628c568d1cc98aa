import type { Length } from '../units/length.ts';
import type { Diagnostic } from './diagnostic.ts';
import type { Language } from './languages.ts';
import type { Code, Problems } from './problems.ts';
import { english } from './words/en/index.ts';
import { spanish } from './words/es/index.ts';

/** What is wrong, in one sentence, and how to mend it, in another. */
export type Saying = { readonly what: string; readonly mend: string };

/** Words for every problem; `size` writes a length as the job wants it. */
export type Words<P> = { readonly [C in keyof P]: (facts: P[C], size: (length: Length) => string) => Saying };

const WORDS: { readonly [L in Language]: Words<Problems> } = { en: english, es: spanish };

export function say(diagnostic: Diagnostic, language: Language, size: (length: Length) => string): Saying {
  // One code, its own facts: the pairing is in the type of Diagnostic and lost on the way through the table.
  const words = WORDS[language][diagnostic.code as Code] as (
    facts: unknown,
    size: (length: Length) => string,
  ) => Saying;
  return words(diagnostic.facts, size);
}
