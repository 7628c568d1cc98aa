import { isHighHalf } from '../fonts.ts';
import { meaningOf } from '../typeset.ts';

/** The codes that were used of a face, with what each means to a reader, in the order of their codes. */
export type CodesOfFace = ReadonlyMap<number, string>;

export type UsedCodes = {
  readonly note: (set: string, bold: boolean) => void;
  readonly of: (face: 'regular' | 'bold') => CodesOfFace;
};

export function openUsedCodes(): UsedCodes {
  const seen = { regular: new Map<number, string>(), bold: new Map<number, string>() };
  return {
    note: (set, bold) => note(set, bold ? seen.bold : seen.regular),
    of: face => new Map([...seen[face]].sort(([a], [b]) => a - b)),
  };
}

function note(set: string, seen: Map<number, string>): void {
  for (let at = 0; at < set.length; at += 1) {
    const code = set.charCodeAt(at);
    if (seen.has(code)) continue;
    if (isHighHalf(code)) continue;
    // The second half of a pair stands for both.
    const isPair = at > 0 && isHighHalf(set.charCodeAt(at - 1));
    seen.set(code, isPair ? set.slice(at - 1, at + 1) : meaningOf(code));
  }
}
