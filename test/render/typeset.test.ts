import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meaningOf, typeset } from '../../src/render/typeset.ts';
import { law } from '../support/runs.ts';

/** Typeset text as a person sees it: a fraction in brackets, the narrow blank as `_`. */
const seen = (text: string): string =>
  [...typeset(text)]
    .map(sign => {
      const code = sign.charCodeAt(0);
      if (code === 0xe000) return '_';
      if (code === 0xe001) return '~';
      return code >= 0xe010 && code <= 0xe029 ? `(${meaningOf(code)})` : sign;
    })
    .join('')
    .replaceAll(')(', '');

describe('text as it is set', () => {
  it.each([
    ['14 3/8', '14_(3/8)', 'a length'],
    ['3/8', '(3/8)', 'a fraction alone'],
    ['1 1/2 and 63/64', '1_(1/2) and (63/64)', 'two in a line'],
    ['14 3/8+', '14_(3/8)+', 'a little over'],
    ['14 3/8−', '14_(3/8)−', 'a little under'],
    ['15 3/8 − 2·2 + 2·3/8 = 12 1/8', '15_(3/8) − 2·2 + 2·(3/8) = 12_(1/8)', 'a working'],
    ['(1/4), 1/4.', '((1/4)), (1/4).', 'at the end of a sentence'],
    ['14⅜', '14_(3/8)', 'typed as one sign'],
    ['½', '(1/2)', 'one sign alone'],
    ['3/4/2026', '3/4/2026', 'a date'],
    ['24/7', '24/7', 'no fraction of an inch'],
    ['9/8', '9/8', 'more than one'],
    ['1/2.5', '1/2.5', 'a scale'],
    ['B7/8', 'B7/8', 'a part of a code'],
    ['1/16th', '1/16th', 'a word'],
    ['12.5 mm in a bin', '12.5~mm in a bin', 'a number and its unit'],
    ['14 3/8 in, ± 1/64 in', '14_(3/8)~in, ±~(1/64)~in', 'a length with its unit and tolerance'],
    ['2 inside, 3 hinges', '2 inside, 3 hinges', 'words that begin like units'],
    ['a\tb\nc\u2003d', 'a b c d', 'blanks of all kinds'],
    ['a\u00a0b', 'a\u00a0b', 'a blank that does not break stays'],
    ['a\u200bb\u202ec\u00ad', 'abc', 'what cannot be seen goes'],
    ['e\u0301', 'é', 'a letter and its accent are one'],
    ['\ue010\uf8ff', '\ufffd\ufffd', 'signs of our own from outside are none'],
  ])('%j is set as %j: %s', (text, set) => {
    expect(seen(text)).toBe(set);
  });

  it('reads back as what it was', () => {
    law([fc.nat({ max: 400 }), fc.integer({ min: 1, max: 63 })], (whole, sixtyFourths) => {
      let [top, bottom] = [sixtyFourths, 64];
      while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
      const text = `${whole} ${top}/${bottom}`;
      expect(seen(text)).toContain('_(');
      expect([...typeset(text)].map(sign => meaningOf(sign.charCodeAt(0))).join('')).toBe(text);
    });
  });
});
