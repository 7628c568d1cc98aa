import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ALPHABET, checkCharacter, checks } from '../../src/codes/check-character.ts';
import { law } from '../support/runs.ts';

// ISO/IEC 7064:2003, MOD 37,36: worked examples that circulate with the standard.
describe('check character of ISO 7064 MOD 37,36', () => {
  it.each([
    ['A12425GABC1234002', 'M'],
    ['123AB', 'X'],
    ['DADPIDA3897722461', 'J'],
  ])('%s takes %s', (payload, check) => {
    expect(checkCharacter(payload)).toBe(check);
    expect(checks(payload + check)).toBe(true);
  });

  it('knows no other characters', () => {
    expect(checkCharacter('12a')).toBeUndefined();
    expect(checks('12a0')).toBe(false);
    expect(checks('')).toBe(false);
  });

  const aPayload = fc.string({ unit: fc.constantFrom(...ALPHABET), minLength: 1, maxLength: 10 });

  it('catches every single wrong character', () => {
    law([aPayload, fc.nat(), fc.integer({ min: 1, max: 35 })], (payload, at, by) => {
      const code = payload + checkCharacter(payload);
      const place = at % code.length;
      const wrong = ALPHABET[(ALPHABET.indexOf(code.charAt(place)) + by) % 36];
      expect(checks(code.slice(0, place) + wrong + code.slice(place + 1))).toBe(false);
    });
  });
});
