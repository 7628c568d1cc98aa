import type { Place } from './place.ts';
import { type Code, type Problems, type Severity, severityOf } from './problems.ts';

/** One thing that is wrong: what it is, where, and the facts its sentence is made of. The words come later. */
export type Diagnostic = {
  readonly [C in Code]: {
    readonly severity: Severity;
    readonly code: C;
    readonly at: Place;
    /** Other places that have a part in it: the neighbour that the overlay runs into. */
    readonly also: readonly Place[];
    readonly facts: Problems[C];
  };
}[Code];

/** A value, and everything that was found on the way to it. Every stage returns one; none throws for bad input. */
export type Diagnosed<T> = { readonly value: T; readonly diagnostics: readonly Diagnostic[] };

export function problem<C extends Code>(
  code: C,
  at: Place,
  facts: Problems[C],
  also: readonly Place[] = [],
): Diagnostic {
  // The compiler does not see that code and facts belong together once they are in one object.
  return { severity: severityOf[code], code, at, also, facts } as unknown as Diagnostic;
}

export const isError = (diagnostic: Diagnostic): boolean => diagnostic.severity === 'error';

/** Values and findings of many, in their order. */
export const gather = <T>(all: readonly Diagnosed<T>[]): Diagnosed<readonly T[]> => ({
  value: all.map(each => each.value),
  diagnostics: all.flatMap(each => each.diagnostics),
});
