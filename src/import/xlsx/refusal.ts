import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import { problem } from '../../diagnostics/diagnostic.ts';
import type { Place } from '../../diagnostics/place.ts';
import type { Problems } from '../../diagnostics/problems.ts';

/** Thrown within the reading of one file, and caught where it began: there is nothing more to be found in the file. */
export class Refusal extends Error {
  readonly diagnose: (file: string) => Diagnostic;
  constructor(diagnose: (file: string) => Diagnostic) {
    super('refused');
    this.diagnose = diagnose;
  }
}

export const refusal = <C extends keyof Problems>(code: C, facts: Problems[C], sheet?: string): Refusal =>
  new Refusal(file => {
    const at: Place = sheet === undefined ? { kind: 'file', file } : { kind: 'sheet', sheet };
    return problem(code, at, facts);
  });

export const damaged = (part: string): Refusal => refusal('file-damaged', { part });
