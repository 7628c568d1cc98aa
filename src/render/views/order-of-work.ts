import type { Operation, OperationId } from '../../layout/shop-plan.ts';
import type { Draft } from '../draft.ts';
import type { SheetName } from '../sheet-names.ts';

/** An operation with its number in the order of work. */
export type Numbered = { readonly number: number; readonly operation: Operation };

/** What somebody does, in the order of work, numbered from 1: glue-up, finish and hanging stand elsewhere, and their numbers tell. */
export const orderOfWork = ({ plan }: Pick<Draft, 'plan'>): readonly Numbered[] =>
  plan.operations.filter(operation => !isWait(operation)).map((operation, index) => ({ number: index + 1, operation }));

/** Operations that have a section of their own, with its cautions and its boxes to tick. */
export const SECTION_OF: { readonly [id: string]: SheetName } = {
  'glue-up': 'glue-up',
  finish: 'finishing',
  hang: 'hanging',
} satisfies { readonly [O in OperationId]?: SheetName };

/** Only time passes, and nobody works. */
export const isWait = ({ wait, minutes }: Operation): boolean =>
  wait !== undefined && minutes.setup === 0 && minutes.pieces === 0;

/** `5 · Rip to final width`, by operation; a wait has its name alone. */
export function numberedNames(draft: Pick<Draft, 'plan' | 'say'>): ReadonlyMap<string, string> {
  const numbers = new Map(orderOfWork(draft).map(({ number, operation }) => [operation.id, number]));
  return new Map(
    draft.plan.operations.map(({ id }) => {
      const number = numbers.get(id);
      const name = draft.say(`operation.${id}`);
      return [id, number === undefined ? name : `${number} · ${name}`];
    }),
  );
}
