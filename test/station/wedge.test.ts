import fc from 'fast-check';
import { expect, it } from 'vitest';
import { ALPHABET, checkCharacter } from '../../src/codes/check-character.ts';
import { isSymbol } from '../../src/station/floor/shelf.ts';
import { law } from '../support/runs.ts';

/** The page has to know a symbol before it reaches the host, so it has the check of its own. */
const page = new URL('../../templates/station/wedge.js', import.meta.url).href;
const { isSymbol: isSymbolOnPage, tidy } = (await import(page)) as {
  readonly isSymbol: (code: string) => boolean;
  readonly tidy: (code: string) => string;
};

const aCharacter = fc.constantFrom(...ALPHABET);
const aPayload = fc.string({ unit: aCharacter, minLength: 10, maxLength: 10 });

it('page and host know the same symbols', () => {
  const anyCode = fc.oneof(
    aPayload.map(each => each + checkCharacter(each)),
    fc.string({ unit: aCharacter, maxLength: 13 }),
    fc.string(),
  );
  law([anyCode], code => {
    expect(isSymbolOnPage(code)).toBe(isSymbol(code));
  });
});

it('a symbol with one character wrong is none', () => {
  law([aPayload, fc.nat(10), aCharacter], (payload, at, other) => {
    const symbol = payload + checkCharacter(payload);
    expect(isSymbolOnPage(symbol)).toBe(true);
    const wrong = symbol.slice(0, at) + other + symbol.slice(at + 1);
    expect(isSymbolOnPage(wrong)).toBe(wrong === symbol);
  });
});

it('what a scanner adds around a code is taken off', () => {
  expect(tidy(' kmm s8pm\tioo8\n')).toBe('KMMS8PMIOO8');
});
