import { type Length, nm, plus, share, times } from '../units/length.ts';
import type { LengthWorking, Term } from './door-set.ts';
import type { Worked } from './worked.ts';

/**
 * A length and the sum that it is. The sum that is computed and the one that is printed come from the same terms, so
 * they cannot disagree: `work('rail', [1, 'W', leaf.width], [-2, 'S', style.stileWidth], [2, 'T', style.tongueLength])`.
 */
export const work = (of: Worked, ...terms: readonly Term[]): LengthWorking => ({
  kind: 'length',
  of,
  terms,
  sharedBy: 1,
  roundedTo: undefined,
  rest: nm(0),
  value: total(terms),
});

/** The sum shared out equally and rounded down to the increment; the rest is what the shares leave over. */
export function workShared(
  of: Worked,
  sharing: { readonly by: number; readonly to: Length },
  ...terms: readonly Term[]
): LengthWorking {
  const { each, rest } = share(total(terms), sharing.by, sharing.to);
  return { kind: 'length', of, terms, sharedBy: sharing.by, roundedTo: sharing.to, rest, value: each };
}

const total = (terms: readonly Term[]): Length => plus(...terms.map(([count, , length]) => times(count, length)));
