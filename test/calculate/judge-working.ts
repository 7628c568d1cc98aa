import type { FactWorking, LengthWorking, Working } from '../../src/calculate/door-set.ts';

/**
 * Says what is wrong with a working, reading it as a person would: the printed formula, the numbers put in, the result.
 * Shares no code with what made it.
 */
export const judgeWorking = (working: Working): readonly string[] =>
  working.kind === 'length' ? judgeSum(working) : judgeFormula(working);

function judgeSum({ of, terms, given, sharedBy, roundedTo, rest, value }: LengthWorking): readonly string[] {
  const total = terms.reduce((sum, { count, symbol }) => sum + count * (given[symbol] ?? Number.NaN), 0);
  const wrong: string[] = [];
  if (sharedBy * value + rest !== total) wrong.push(`${of}: ${sharedBy} · ${value} + ${rest} is not ${total}`);
  if (roundedTo === undefined && rest !== 0) wrong.push(`${of}: nothing was rounded and ${rest} is left`);
  if (roundedTo !== undefined && (rest < 0 || rest >= sharedBy * roundedTo))
    wrong.push(`${of}: ${rest} is left of ${sharedBy} shares of ${roundedTo}`);
  if (roundedTo !== undefined && value % roundedTo !== 0) wrong.push(`${of}: ${value} is not on ${roundedTo}`);
  return wrong;
}

/** Lengths count in metres. */
function judgeFormula({ of, formula, inputs, given, value }: FactWorking): readonly string[] {
  const known = new Map(
    inputs.map(({ symbol, unit }) => [symbol, (given[symbol] ?? Number.NaN) / (unit === 'length' ? 1e9 : 1)]),
  );
  const expected = evaluate(formula, known);
  const said = value.unit === 'length' ? value.value / 1e9 : value.value;
  // A length is printed to the nanometre; a float to its last digits.
  const slack = Math.max(value.unit === 'length' ? 1.5e-9 : 0, Math.abs(expected) * 1e-9);
  return Math.abs(expected - said) <= slack ? [] : [`${of}: ${formula} is ${expected}, not ${said}`];
}

/** Works out `1800 / W · (K · h / (1 − K · h) + …)`, `√(W² + H²)`, `max(0, …)`, `⌈a / b⌉` by recursive descent. */
function evaluate(formula: string, known: ReadonlyMap<string, number>): number {
  // Symbols may have spaces and brackets of their own, so the longest is looked for first.
  const symbols = [...known.keys()].sort((a, b) => b.length - a.length);
  let at = 0;
  const skip = () => {
    while (formula[at] === ' ') at += 1;
  };
  const take = (token: string): boolean => {
    skip();
    if (!formula.startsWith(token, at)) return false;
    at += token.length;
    return true;
  };
  const expect = (token: string): void => {
    if (!take(token)) throw new Error(`${formula}: "${token}" is missing at ${at}`);
  };
  const sum = (): number => {
    let total = product();
    for (;;) {
      if (take('+')) total += product();
      else if (take('−')) total -= product();
      else return total;
    }
  };
  const product = (): number => {
    let total = power();
    for (;;) {
      if (take('·')) total *= power();
      else if (take('/')) total /= power();
      else return total;
    }
  };
  const power = (): number => {
    const base = atom();
    return take('²') ? base * base : base;
  };
  const atom = (): number => {
    skip();
    if (take('√(')) return closed(Math.sqrt(sum()), ')');
    if (take('⌈')) return closed(Math.ceil(sum() - 1e-9), '⌉');
    if (take('max(')) {
      const first = sum();
      expect(',');
      return closed(Math.max(first, sum()), ')');
    }
    if (take('(')) return closed(sum(), ')');
    const symbol = symbols.find(each => formula.startsWith(each, at));
    if (symbol !== undefined) {
      at += symbol.length;
      return known.get(symbol) ?? Number.NaN;
    }
    const [figure = ''] = /^\d+(\.\d+)?/.exec(formula.slice(at)) ?? [];
    at += figure.length;
    return figure === '' ? Number.NaN : Number(figure);
  };
  const closed = (value: number, bracket: string): number => {
    expect(bracket);
    return value;
  };
  const result = sum();
  skip();
  return at === formula.length ? result : Number.NaN;
}
