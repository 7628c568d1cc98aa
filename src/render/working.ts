import assert from 'node:assert';
import type { FactValue, FactWorking, LengthWorking, Working } from '../calculate/door-set.ts';
import type { Job } from '../import/job.ts';
import { type Length, minus, nm } from '../units/length.ts';
import { printedValue } from '../units/print-length.ts';
import { decimal } from './quantities.ts';
import type { Say } from './say.ts';

/** What it takes to write a working down. */
export type Writer = { readonly job: Job; readonly say: Say; readonly size: (length: Length) => string };

/**
 * A working as the shop's paper has it: what, its formula, the numbers put in, the result; then what rounding left over,
 * and by how much the true value differs from the printed one.
 * `rail length = W − 2·S + 2·T = 14 3/8 − 2·2 + 2·3/8 = 11 1/8`
 */
export const printWorking = (working: Working, writer: Writer): string =>
  `${writer.say(`working.${working.of}`)} = ${printHow(working, writer)}`;

/** The same without its name: numbers that come about in one way can share a line. */
export function printHow(working: Working, writer: Writer): string {
  const [formula, numbers] = [formulaOf(working, writer), printNumbers(working, writer)];
  return numbers.startsWith(`${formula} = `) ? numbers : `${formula} = ${numbers}`;
}

/** `W − 2·S + 2·T` */
export function formulaOf(working: Working, { say }: Pick<Writer, 'say'>): string {
  if (working.kind === 'length') return shared(sum(working.terms.map(({ count, symbol }) => [count, symbol])), working);
  // No typeface for reading has the brackets of mathematics.
  return working.formula.replaceAll('⌈', `${say('working.up')}(`).replaceAll('⌉', ')');
}

/** `14 3/8 − 2·2 + 2·3/8 = 11 1/8`, or `5.36 % (M 8 %)` where there is no sum; then what rounding left over. */
export function printNumbers(working: Working, writer: Writer): string {
  const said = working.kind === 'fact' ? printGiven(working, writer) : printSum(working, writer);
  return [said, ...remarks(working, writer)].join(', ');
}

function printGiven({ inputs, given, value }: FactWorking, writer: Writer): string {
  const put = inputs.map(({ symbol, unit }) => `${symbol} ${printFact(unit, putIn(given, symbol), writer)}`).join(', ');
  return `${printFact(value.unit, value.value, writer)}${put === '' ? '' : ` (${put})`}`;
}

function printSum(working: LengthWorking, { size }: Writer): string {
  const numbers = sum(working.terms.map(({ count, symbol }) => [count, size(putIn(working.given, symbol))]));
  return `${shared(numbers, working)} = ${size(working.value)}`;
}

function putIn<Value extends number>(given: Readonly<Record<string, Value>>, symbol: string): Value {
  const value = given[symbol];
  assert(value !== undefined, 'a formula asks for what was not put in');
  return value;
}

function remarks(working: Working, writer: Writer): readonly string[] {
  const value = lengthIn(working);
  const more = value === undefined ? nm(0) : minus(value, printedIn(value, writer));
  const rest = working.kind === 'fact' ? nm(0) : working.rest;
  return [
    ...(rest < NOTHING ? [] : [writer.say('doors.rest', { rest: printRest(rest, writer) })]),
    ...(more === 0 ? [] : [writer.say(more > 0 ? 'working.more' : 'working.less', { by: printLittle(more, writer) })]),
  ];
}

/** Less than a micrometre is left over where an odd number of nanometres was halved; no tape shows it. */
const NOTHING = nm(1000);

const lengthIn = (working: Working): Length | undefined => {
  if (working.kind === 'length') return working.value;
  return working.value.unit === 'length' ? working.value.value : undefined;
};

const printedIn = (length: Length, { job }: Writer): Length => printedValue(length, job.shop.printing.lengths);

const printRest = (rest: Length, writer: Writer): string =>
  printedIn(rest, writer) === 0 ? printLittle(rest, writer) : writer.size(rest);

/** What printing took is too little for fractions: ten-thousandths of an inch, or thousandths of a millimetre. */
const printLittle = (length: Length, { job }: Writer): string =>
  job.units === 'inch' ? `${decimal(Math.abs(length) / 25_400_000, 4)} in` : `${decimal(Math.abs(length) / 1e6, 3)} mm`;

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

function printFact(unit: FactValue['unit'], value: number, { size }: Writer): string {
  if (unit === 'length') return size(nm(value));
  if (unit === 'count' || unit === 'ratio') return decimal(value, 5);
  return `${decimal(value, unit === 'm³' || unit === 'm²' ? 4 : 2)} ${unit}`;
}
