import { type Length, nm, ratio } from '../units/length.ts';
import type { FactValue, FactWorking, Input } from './door-set.ts';
import type { Worked } from './worked.ts';

/**
 * A formula that can be reckoned: what is printed and what is computed are built by the same calls, so they cannot
 * disagree. Written down once and shared by every number that comes about so. Lengths are given as such and count in
 * metres. For numbers that are no sums of lengths; those are `work`'s.
 */
export type Formula<Symbol extends string> = {
  readonly text: string;
  readonly inputs: readonly Input<Symbol>[];
  readonly reckon: (given: Given<Symbol>) => number;
  /** What may stand beside it without parentheses. */
  readonly binds: 'sum' | 'product' | 'atom';
};

type Given<Symbol extends string> = Readonly<Record<Symbol, number>>;

/** A number, its unit, and the formula that it comes from. */
export type Fact<Symbol extends string> = {
  readonly of: Worked;
  readonly unit: Exclude<FactValue['unit'], 'length'>;
  readonly formula: Formula<Symbol>;
};

/** A fact with the numbers that were put in, and what came out. */
export const fact = <Symbol extends string>(
  { of, unit, formula }: Fact<Symbol>,
  given: Given<NoInfer<Symbol>>,
): FactWorking => ({
  kind: 'fact',
  of,
  formula: formula.text,
  inputs: formula.inputs,
  given,
  value: { unit, value: formula.reckon(given) },
});

/** A formula whose result is a length, rounded to whole nanometres as the trade wants it. */
export function lengthFact<Symbol extends string>(
  of: Worked,
  formula: Formula<Symbol>,
  given: Given<NoInfer<Symbol>>,
  round: (nanometres: number) => number,
): LengthFact {
  const value = nm(round(formula.reckon(given) * 1e9));
  return { kind: 'fact', of, formula: formula.text, inputs: formula.inputs, given, value: { unit: 'length', value } };
}

/** A fact that is a length. */
export type LengthFact = FactWorking & { readonly value: { readonly unit: 'length'; readonly value: Length } };

export const lengthInput = <Symbol extends string>(symbol: Symbol): Formula<Symbol> => ({
  text: symbol,
  inputs: [{ symbol, unit: 'length' }],
  reckon: given => given[symbol] / 1e9,
  binds: 'atom',
});

export const input = <Symbol extends string>(
  symbol: Symbol,
  unit: Exclude<FactValue['unit'], 'length'>,
): Formula<Symbol> => ({
  text: symbol,
  inputs: [{ symbol, unit }],
  reckon: given => given[symbol],
  binds: 'atom',
});

export const constant = (value: number): Formula<never> => ({
  text: String(value),
  inputs: [],
  reckon: () => value,
  binds: 'atom',
});

export const sum = <Symbol extends string>(...terms: readonly Formula<Symbol>[]): Formula<Symbol> => ({
  text: terms.map(term => term.text).join(' + '),
  inputs: inputsOf(terms),
  reckon: given => terms.reduce((total, term) => total + term.reckon(given), 0),
  binds: 'sum',
});

export const difference = <Symbol extends string>(from: Formula<Symbol>, taken: Formula<Symbol>): Formula<Symbol> => ({
  text: `${from.text} − ${inSum(taken)}`,
  inputs: inputsOf([from, taken]),
  reckon: given => from.reckon(given) - taken.reckon(given),
  binds: 'sum',
});

export const product = <Symbol extends string>(...factors: readonly Formula<Symbol>[]): Formula<Symbol> => ({
  text: factors.map(inProduct).join(' · '),
  inputs: inputsOf(factors),
  reckon: given => factors.reduce((total, factor) => total * factor.reckon(given), 1),
  binds: 'product',
});

export const quotient = <Symbol extends string>(over: Formula<Symbol>, under: Formula<Symbol>): Formula<Symbol> => ({
  text: `${inProduct(over)} / ${under.binds === 'atom' ? under.text : `(${under.text})`}`,
  inputs: inputsOf([over, under]),
  reckon: given => over.reckon(given) / under.reckon(given),
  binds: 'product',
});

export const square = <Symbol extends string>(of: Formula<Symbol>): Formula<Symbol> => ({
  text: `${of.binds === 'atom' ? of.text : `(${of.text})`}²`,
  inputs: of.inputs,
  reckon: given => of.reckon(given) * of.reckon(given),
  binds: 'atom',
});

/** What cannot be less than nothing. */
export const atLeastZero = <Symbol extends string>(of: Formula<Symbol>): Formula<Symbol> => ({
  text: `max(0, ${of.text})`,
  inputs: of.inputs,
  reckon: given => Math.max(0, of.reckon(given)),
  binds: 'atom',
});

/** How many of one length it takes to reach another. Worked out on whole nanometres, so that 12 in is three times 4 in. */
export const timesNeeded = <Symbol extends string>(over: Symbol, under: Symbol): Formula<Symbol> => ({
  text: `⌈${over} / ${under}⌉`,
  inputs: inputsOf([lengthInput(over), lengthInput(under)]),
  reckon: given => Math.ceil(ratio(nm(given[over]), nm(given[under]))),
  binds: 'atom',
});

const inSum = (term: Formula<string>): string => (term.binds === 'sum' ? `(${term.text})` : term.text);
const inProduct = (factor: Formula<string>): string => (factor.binds === 'sum' ? `(${factor.text})` : factor.text);

/** Each symbol once. */
function inputsOf<Symbol extends string>(formulas: readonly Formula<Symbol>[]): readonly Input<Symbol>[] {
  const inputs = new Map<Symbol, Input<Symbol>>();
  for (const formula of formulas)
    for (const each of formula.inputs) if (!inputs.has(each.symbol)) inputs.set(each.symbol, each);
  return [...inputs.values()];
}
