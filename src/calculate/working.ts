import { type Length, nm, share, times } from '../units/length.ts';
import type { LengthWorking, Term } from './door-set.ts';
import type { Worked } from './worked.ts';

/**
 * A sum as it is printed, of which numbers are worked out: `sumOf('rail', [1, 'W'], [-2, 'S'], [2, 'T'])` is
 * `rail = W − 2·S + 2·T`. Written down once and shared by every number that comes about so, since most are never printed.
 */
export type Sum<Symbol extends string> = { readonly of: Worked; readonly terms: readonly Term<Symbol>[] };

/** What each symbol stands for. */
export type Given<Symbol extends string> = Readonly<Record<Symbol, Length>>;

export const sumOf = <Symbol extends string>(of: Worked, ...terms: readonly Counted<Symbol>[]): Sum<Symbol> => ({
  of,
  terms: terms.map(([count, symbol]) => ({ count, symbol })),
});

/** A term as it is written down. */
export type Counted<Symbol extends string> = readonly [count: number, symbol: Symbol];

/**
 * A length and the sum that it is. The sum that is computed and the one that is printed have the same terms, so they
 * cannot disagree: `work(RAIL, { W: leaf.width.value, S: style.stileWidth, T: style.tongueLength })`.
 */
export const work = <Symbol extends string>(
  { of, terms }: Sum<Symbol>,
  given: Given<NoInfer<Symbol>>,
): LengthWorking => ({
  kind: 'length',
  of,
  terms,
  given,
  sharedBy: 1,
  roundedTo: undefined,
  rest: nm(0),
  value: total(terms, given),
});

/** The sum shared out equally and rounded down to the increment; the rest is what the shares leave over. */
export function workShared<Symbol extends string>(
  { of, terms }: Sum<Symbol>,
  sharing: { readonly by: number; readonly to: Length },
  given: Given<NoInfer<Symbol>>,
): LengthWorking {
  const { each, rest } = share(total(terms, given), sharing.by, sharing.to);
  return { kind: 'length', of, terms, given, sharedBy: sharing.by, roundedTo: sharing.to, rest, value: each };
}

function total<Symbol extends string>(terms: readonly Term<Symbol>[], given: Given<Symbol>): Length {
  let sum = 0;
  for (const { count, symbol } of terms) sum += times(count, given[symbol]);
  return nm(sum);
}
