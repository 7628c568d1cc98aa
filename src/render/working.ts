import type { FactValue, Working } from '../calculate/door-set.ts';
import { times } from '../units/length.ts';
import type { Draft } from './draft.ts';
import { decimal } from './quantities.ts';

/**
 * A working as the shop's paper has it: what, its formula, the numbers put in, the result.
 * `rail length = W − 2·S + 2·T = 14 3/8 − 2·2 + 2·3/8 = 11 1/8`
 */
export function printWorking(working: Working, draft: Draft): string {
  const name = draft.say(`working.${working.of}`);
  if (working.kind === 'fact') {
    const inputs = working.inputs.map(({ symbol, value }) => `${symbol} ${printFact(value, draft)}`).join(', ');
    return `${name} = ${working.formula} = ${printFact(working.value, draft)}${inputs === '' ? '' : ` (${inputs})`}`;
  }
  const symbols = sum(working.terms.map(([count, symbol]) => [count, symbol]));
  const numbers = sum(working.terms.map(([count, , length]) => [count, draft.size(length)]));
  const rest =
    working.rest === times(0, working.rest) ? '' : `, ${draft.say('doors.rest', { rest: draft.size(working.rest) })}`;
  return [
    name,
    shared(symbols, working),
    ...(symbols === numbers ? [] : [shared(numbers, working)]),
    draft.size(working.value),
  ]
    .join(' = ')
    .concat(rest);
}

const shared = (terms: string, working: { readonly sharedBy: number }): string =>
  working.sharedBy === 1 ? terms : `(${terms}) ÷ ${working.sharedBy}`;

/** `W − 2·S + 2·T`; a term that counts nothing is left out. */
function sum(terms: readonly (readonly [count: number, what: string])[]): string {
  const said = terms
    .filter(([count]) => count !== 0)
    .map(([count, what], index) => {
      const sign = count < 0 ? '−' : '+';
      const times = Math.abs(count) === 1 ? what : `${Math.abs(count)}·${what}`;
      if (index === 0) return count < 0 ? `−${times}` : times;
      return `${sign} ${times}`;
    });
  return said.length === 0 ? '0' : said.join(' ');
}

function printFact(fact: FactValue, draft: Draft): string {
  if (fact.unit === 'length') return draft.size(fact.value);
  if (fact.unit === 'count' || fact.unit === 'ratio') return decimal(fact.value, 5);
  return `${decimal(fact.value, fact.unit === 'm³' || fact.unit === 'm²' ? 4 : 2)} ${fact.unit}`;
}
