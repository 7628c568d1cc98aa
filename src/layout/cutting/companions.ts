import type { FewPieces } from './few-pieces.ts';
import { threeComeOut, twoComeOut } from './two-or-three.ts';

/**
 * Which pieces come out of a bin together with any two others: a bit for each piece as it lies, so that a few words tell of
 * all pieces at once. A set of which no three are apart may still not come out; one of which three are, never does.
 */
export type Companions = {
  readonly few: FewPieces;
  /** How many words of 32 bits each pair has. */
  readonly words: number;
  readonly bits: Int32Array;
  /** Whether a pair's bits have been worked out. */
  readonly made: Uint8Array;
};

export function openCompanions(few: FewPieces): Companions {
  const words = (few.lengths.length + 31) >> 5;
  const pairs = (few.lengths.length + 1) ** 2;
  return { few, words, bits: new Int32Array(pairs * words), made: new Uint8Array(pairs) };
}

/** The number that stands for no piece: in a pair with it, a piece is alone. */
export const nobody = ({ few }: Companions): number => few.lengths.length;

/** Where in `bits` those stand that come out with these two. */
export function companionsOf(companions: Companions, one: number, two: number): number {
  const { few, words, made } = companions;
  const low = Math.min(one, two);
  const high = Math.max(one, two);
  const pair = low * (few.lengths.length + 1) + high;
  if (made[pair] === 0) workOut(companions, low, high, pair);
  return pair * words;
}

function workOut({ few, words, bits, made }: Companions, low: number, high: number, pair: number): void {
  const { length, width, lengths } = few;
  made[pair] = 1;
  for (let lie = 0; lie < lengths.length; lie += 1) {
    const comesOut =
      low === lengths.length ||
      (high === lengths.length
        ? twoComeOut(few, lie, low, length, width)
        : threeComeOut(few, lie, low, high, length, width));
    if (comesOut) bits[pair * words + (lie >> 5)] = (bits[pair * words + (lie >> 5)] ?? 0) | (1 << (lie & 31));
  }
}

/** Whether a piece's bit is set among those that begin at a place. */
export const isAmong = (bits: Int32Array, from: number, lie: number): boolean =>
  ((bits[from + (lie >> 5)] ?? 0) & (1 << (lie & 31))) !== 0;

/** Takes a piece's bit away. */
export function strike(bits: Int32Array, from: number, lie: number): void {
  bits[from + (lie >> 5)] = (bits[from + (lie >> 5)] ?? 0) & ~(1 << (lie & 31));
}
