import { isHighHalf } from '../fonts.ts';
import { meaningOf } from '../typeset.ts';

/** The codes that were used of a face, with what each means to a reader, in the order of their codes. */
export type CodesOfFace = ReadonlyMap<number, string>;

export type UsedCodes = {
  readonly note: (set: string, bold: boolean) => void;
  readonly of: (face: 'regular' | 'bold') => CodesOfFace;
};

export function openUsedCodes(): UsedCodes {
  const seen = { regular: openSeen(), bold: openSeen() };
  return {
    note: (set, bold) => note(set, bold ? seen.bold : seen.regular),
    of: face => new Map([...seen[face].meanings].sort(([a], [b]) => a - b)),
  };
}

/** Whether a code was seen, by its number: every letter of a packet is looked up here. */
type Seen = { readonly known: Uint8Array; readonly meanings: Map<number, string> };

const openSeen = (): Seen => ({ known: new Uint8Array(0x10000), meanings: new Map() });

function note(set: string, { known, meanings }: Seen): void {
  for (let at = 0; at < set.length; at += 1) {
    const code = set.charCodeAt(at);
    if (known[code] === 1) continue;
    known[code] = 1;
    if (isHighHalf(code)) continue;
    // The second half of a pair stands for both.
    const isPair = at > 0 && isHighHalf(set.charCodeAt(at - 1));
    meanings.set(code, isPair ? set.slice(at - 1, at + 1) : meaningOf(code));
  }
}
