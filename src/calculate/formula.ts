import { type Length, ratio } from '../units/length.ts';
import type { FactValue, FactWorking } from './door-set.ts';
import type { Worked } from './worked.ts';

/**
 * A formula that knows its value: what is printed and what is computed are built by the same calls, so they cannot
 * disagree. Lengths count in metres. For numbers that are no sums of lengths; those are `work`'s.
 */
export type Formula = {
  readonly text: string;
  readonly value: number;
  readonly inputs: FactWorking['inputs'];
  /** What may stand beside it without parentheses. */
  readonly binds: 'sum' | 'product' | 'atom';
};

/** A formula written down as the working of a number. */
export const fact = (of: Worked, unit: Exclude<FactValue['unit'], 'length'>, formula: Formula): FactWorking => ({
  kind: 'fact',
  of,
  formula: formula.text,
  inputs: formula.inputs,
  value: { unit, value: formula.value },
});

/** A formula whose result is a length, rounded by the caller as the trade wants it. */
export const lengthFact = (of: Worked, formula: Formula, value: Length): FactWorking => ({
  kind: 'fact',
  of,
  formula: formula.text,
  inputs: formula.inputs,
  value: { unit: 'length', value },
});

export const lengthInput = (symbol: string, value: Length): Formula => ({
  text: symbol,
  value: value / 1e9,
  inputs: [{ symbol, value: { unit: 'length', value } }],
  binds: 'atom',
});

export const input = (symbol: string, unit: Exclude<FactValue['unit'], 'length'>, value: number): Formula => ({
  text: symbol,
  value,
  inputs: [{ symbol, value: { unit, value } }],
  binds: 'atom',
});

export const constant = (value: number): Formula => ({ text: String(value), value, inputs: [], binds: 'atom' });

export const sum = (...terms: readonly Formula[]): Formula => ({
  text: terms.map(term => term.text).join(' + '),
  value: terms.reduce((total, term) => total + term.value, 0),
  inputs: inputsOf(terms),
  binds: 'sum',
});

export const difference = (from: Formula, taken: Formula): Formula => ({
  text: `${from.text} − ${inSum(taken)}`,
  value: from.value - taken.value,
  inputs: inputsOf([from, taken]),
  binds: 'sum',
});

export const product = (...factors: readonly Formula[]): Formula => ({
  text: factors.map(inProduct).join(' · '),
  value: factors.reduce((total, factor) => total * factor.value, 1),
  inputs: inputsOf(factors),
  binds: 'product',
});

export const quotient = (over: Formula, under: Formula): Formula => ({
  text: `${inProduct(over)} / ${under.binds === 'atom' ? under.text : `(${under.text})`}`,
  value: over.value / under.value,
  inputs: inputsOf([over, under]),
  binds: 'product',
});

export const square = (of: Formula): Formula => ({
  text: `${of.binds === 'atom' ? of.text : `(${of.text})`}²`,
  value: of.value * of.value,
  inputs: of.inputs,
  binds: 'atom',
});

/** What cannot be less than nothing. */
export const atLeastZero = (of: Formula): Formula => ({
  text: `max(0, ${of.text})`,
  value: Math.max(0, of.value),
  inputs: of.inputs,
  binds: 'atom',
});

/** How many of `under` it takes to reach `over`. Worked out on whole nanometres, so that 12 in is three times 4 in. */
export const timesNeeded = (over: Named, under: Named): Formula => ({
  text: `⌈${over.symbol} / ${under.symbol}⌉`,
  value: Math.ceil(ratio(over.length, under.length)),
  inputs: inputsOf([lengthInput(over.symbol, over.length), lengthInput(under.symbol, under.length)]),
  binds: 'atom',
});

type Named = { readonly symbol: string; readonly length: Length };

const inSum = (term: Formula): string => (term.binds === 'sum' ? `(${term.text})` : term.text);
const inProduct = (factor: Formula): string => (factor.binds === 'sum' ? `(${factor.text})` : factor.text);

/** Each symbol once. */
function inputsOf(formulas: readonly Formula[]): FactWorking['inputs'] {
  const inputs: FactWorking['inputs'][number][] = [];
  for (const formula of formulas)
    for (const each of formula.inputs) if (!inputs.some(known => known.symbol === each.symbol)) inputs.push(each);
  return inputs;
}
