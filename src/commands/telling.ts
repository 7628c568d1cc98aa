import { type Diagnostic, isError } from '../diagnostics/diagnostic.ts';
import type { Language } from '../diagnostics/languages.ts';
import { inOrder, printDiagnostics, printPlace } from '../diagnostics/print.ts';
import { say } from '../diagnostics/words.ts';
import type { Job } from '../import/job.ts';
import { shopDefaults } from '../trade/shop-defaults.ts';
import type { Length } from '../units/length.ts';
import { type LengthFormat, printLength } from '../units/print-length.ts';

/** How findings are said: the job's language and its way of writing lengths. */
export type Tongue = { readonly language: Language; readonly lengths: LengthFormat };

export const tongueOf = (job: Job): Tongue => ({ language: job.language, lengths: job.shop.printing.lengths });

/** How to speak of a file that could not be read, so that its own language is unknown. */
export const PLAIN_TONGUE: Tongue = { language: 'en', lengths: shopDefaults('inch', 'letter').printing.lengths };

/** What was found, for a person: on standard error, so that results can be piped. */
export const tellFound = (diagnostics: readonly Diagnostic[], tongue: Tongue): void => {
  process.stderr.write(printDiagnostics(diagnostics, tongue.language, sizeIn(tongue)));
};

/** What was found, for a program: sorted, each with its sentence beside its code. */
export const foundAsData = (diagnostics: readonly Diagnostic[], tongue: Tongue) =>
  inOrder(diagnostics).map(diagnostic => ({
    severity: diagnostic.severity,
    code: diagnostic.code,
    at: printPlace(diagnostic.at),
    also: diagnostic.also.map(printPlace),
    ...say(diagnostic, tongue.language, sizeIn(tongue)),
  }));

export const tellJson = (result: object): void => {
  process.stdout.write(`${JSON.stringify(result, null, 2)}\n`);
};

export const tellLine = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

/** `1 door`, `2 doors`. */
export const count = (number: number, one: string, many = `${one}s`): string =>
  `${number} ${number === 1 ? one : many}`;

export const errorsIn = (diagnostics: readonly Diagnostic[]): number => diagnostics.filter(isError).length;

const sizeIn =
  ({ lengths }: Tongue) =>
  (length: Length): string =>
    printLength(length, lengths);
