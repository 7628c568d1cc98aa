import { describe, expect, it } from 'vitest';
import {
  atLeastZero,
  constant,
  difference,
  type Formula,
  fact,
  input,
  lengthFact,
  lengthInput,
  product,
  quotient,
  square,
  sum,
  timesNeeded,
} from '../../src/calculate/formula.ts';
import { sumOf, work, workShared } from '../../src/calculate/working.ts';
import { length } from '../support/length.ts';

type Symbols = 'a' | 'b' | 'c';
const a: Formula<Symbols> = input('a', 'ratio');
const b: Formula<Symbols> = input('b', 'ratio');
const c: Formula<Symbols> = input('c', '%');
const given = { a: 6, b: 4, c: 2 };

describe('a formula reads as it is reckoned', () => {
  it.each<[() => Formula<Symbols>, string, number]>([
    [() => sum(a, b, c), 'a + b + c', 12],
    [() => difference(a, b), 'a − b', 2],
    [() => difference(a, sum(b, c)), 'a − (b + c)', 0],
    [() => difference(a, product(b, c)), 'a − b · c', -2],
    [() => difference(sum(a, b), c), 'a + b − c', 8],
    [() => product(a, b, c), 'a · b · c', 48],
    [() => product(sum(a, b), c), '(a + b) · c', 20],
    [() => product(a, difference(b, c)), 'a · (b − c)', 12],
    [() => quotient(a, b), 'a / b', 1.5],
    [() => quotient(a, product(b, c)), 'a / (b · c)', 0.75],
    [() => quotient(a, sum(b, c)), 'a / (b + c)', 1],
    [() => quotient(sum(a, b), c), '(a + b) / c', 5],
    [() => quotient(product(a, b), c), 'a · b / c', 12],
    [() => product(quotient(a, b), c), 'a / b · c', 3],
    [() => square(a), 'a²', 36],
    [() => square(sum(a, b)), '(a + b)²', 100],
    [() => square(product(b, c)), '(b · c)²', 64],
    [() => product(square(a), b), 'a² · b', 144],
    [() => sum(product(constant(2), a), b), '2 · a + b', 16],
    [() => atLeastZero(difference(b, a)), 'max(0, b − a)', 0],
    [() => atLeastZero(difference(a, b)), 'max(0, a − b)', 2],
    [() => product(atLeastZero(a), b), 'max(0, a) · b', 24],
  ])('%#', (built, text, value) => {
    const formula = built();
    expect([formula.text, formula.reckon(given)]).toEqual([text, value]);
  });

  it('names each input once, in the order in which it is met', () => {
    expect(sum(product(b, a), quotient(a, c)).inputs.map(({ symbol }) => symbol)).toEqual(['b', 'a', 'c']);
    expect(product(constant(2), a).inputs).toEqual([{ symbol: 'a', unit: 'ratio' }]);
  });

  it('counts lengths in metres', () => {
    const metre = lengthInput('L');
    expect([metre.text, metre.binds, metre.inputs]).toEqual(['L', 'atom', [{ symbol: 'L', unit: 'length' }]]);
    expect(metre.reckon({ L: length('1000 mm') })).toBe(1);
  });

  it.each([
    ['12', '4', 3],
    ['12 1/64', '4', 4],
    ['4', '4', 1],
    ['1/64', '4', 1],
  ])('%s in of %s in wants %i', (over, under, count) => {
    const needed = timesNeeded('b', 'm');
    expect([needed.text, needed.reckon({ b: length(over), m: length(under) })]).toEqual(['⌈b / m⌉', count]);
    expect(needed.inputs).toEqual([
      { symbol: 'b', unit: 'length' },
      { symbol: 'm', unit: 'length' },
    ]);
  });

  it('becomes a working with its unit', () => {
    const formula = product(a, b);
    expect(fact({ of: 'mass', unit: 'kg', formula }, given)).toEqual({
      kind: 'fact',
      of: 'mass',
      formula: 'a · b',
      inputs: [...a.inputs, ...b.inputs],
      given,
      value: { unit: 'kg', value: 24 },
    });
  });

  it('whose result is a length is rounded as asked, to whole nanometres', () => {
    const third = quotient(lengthInput('L'), constant(3));
    const swells = (round: (nanometres: number) => number) => lengthFact('panel-swells', third, { L: 7 }, round).value;
    expect([Math.ceil, Math.round].map(swells)).toEqual([3, 2].map(value => ({ unit: 'length', value })));
  });
});

describe('a sum of lengths', () => {
  it('is exact, and rounds nothing', () => {
    const sum = sumOf('rail', [1, 'W'], [-2, 'S'], [2, 'T']);
    const rail = work(sum, { W: length('15 3/8'), S: length('2'), T: length('3/8') });
    expect(rail).toEqual({
      kind: 'length',
      of: 'rail',
      terms: [
        { count: 1, symbol: 'W' },
        { count: -2, symbol: 'S' },
        { count: 2, symbol: 'T' },
      ],
      given: { W: length('15 3/8'), S: length('2'), T: length('3/8') },
      sharedBy: 1,
      roundedTo: undefined,
      rest: 0,
      value: length('12 1/8'),
    });
  });

  it('shared out is rounded down, and says what is left', () => {
    const each = workShared(sumOf('sight-height', [1, 'h']), { by: 3, to: length('1/32') }, { h: length('32') });
    // 3 · 10 21/32 = 31 31/32.
    expect(each).toMatchObject({
      kind: 'length',
      of: 'sight-height',
      terms: [{ count: 1, symbol: 'h' }],
      given: { h: length('32') },
      sharedBy: 3,
      roundedTo: length('1/32'),
      rest: length('1/32'),
      value: length('10 21/32'),
    });
  });
});
