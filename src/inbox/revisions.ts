import type { Revision } from '../render/packet.ts';

/** The first letter that is not taken: A to Z, then AA. */
export function revisionAfter(taken: readonly string[]): string {
  const last = Math.max(0, ...taken.filter(each => /^[A-Z]{1,3}$/.test(each)).map(numberOf));
  return lettersOf(last + 1);
}

const numberOf = (letters: string): number =>
  [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);

function lettersOf(number: number): string {
  let letters = '';
  for (let rest = number; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

/** Doors and parts by their codes, each with all that makes it another piece if it changes. */
export type Listing = ReadonlyMap<string, string>;

/** What changed since an earlier revision, by code, in the order of the codes. */
export function changesSince(since: string, earlier: Listing, now: Listing): Exclude<Revision['changes'], undefined> {
  return {
    since,
    added: [...now.keys()].filter(code => !earlier.has(code)).sort(),
    removed: [...earlier.keys()].filter(code => !now.has(code)).sort(),
    changed: [...now]
      .filter(([code, facts]) => earlier.has(code) && earlier.get(code) !== facts)
      .map(([code]) => code)
      .sort(),
  };
}
