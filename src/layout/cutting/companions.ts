import { add, wordsFor } from './bits.ts';
import type { FewPieces } from './few-pieces.ts';

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
  readonly byLength: Smallest;
  readonly byWidth: Smallest;
};

/** The bits of the smallest pieces: of none, of the smallest, of the two smallest, and so on to all. */
type Smallest = { readonly sizes: Int32Array; readonly bits: Int32Array };

export function openCompanions(few: FewPieces): Companions {
  const words = wordsFor(few.lengths.length);
  const pairs = (few.lengths.length + 1) ** 2;
  return {
    few,
    words,
    bits: new Int32Array(pairs * words),
    made: new Uint8Array(pairs),
    byLength: smallestBy(few.lengths, words),
    byWidth: smallestBy(few.widths, words),
  };
}

function smallestBy(sizes: Int32Array, words: number): Smallest {
  const order = [...sizes.keys()].sort((one, two) => (sizes[one] ?? 0) - (sizes[two] ?? 0));
  const bits = new Int32Array((order.length + 1) * words);
  for (const [rank, lie] of order.entries()) {
    const to = (rank + 1) * words;
    bits.copyWithin(to, rank * words, to);
    add(bits, to, lie);
  }
  return { sizes: Int32Array.from(sizes).sort(), bits };
}

/** Where in the bits of the smallest those stand that are no larger than this. */
function upTo({ sizes, bits }: Smallest, size: number): number {
  let count = 0;
  let above = sizes.length;
  while (count < above) {
    const middle = (count + above) >> 1;
    if ((sizes[middle] ?? 0) <= size) count = middle + 1;
    else above = middle;
  }
  return count * (bits.length / (sizes.length + 1));
}

/** The number that stands for no piece: in a pair with it, a piece is alone. */
export const nobody = ({ few }: Companions): number => few.lengths.length;

/** Where in `bits` those stand that come out with these two. */
export function companionsOf(companions: Companions, one: number, two: number): number {
  const { few, words, made } = companions;
  const low = Math.min(one, two);
  const high = Math.max(one, two);
  const pair = low * (few.lengths.length + 1) + high;
  if (made[pair] === 0) {
    made[pair] = 1;
    if (high < few.lengths.length) workOut(companions, low, high, pair * words);
    else workOutAlone(companions, low, pair * words);
  }
  return pair * words;
}

/** Who comes out with one piece, beyond it or beside it; or with none. */
function workOutAlone({ few, words, bits, byLength, byWidth }: Companions, lie: number, to: number): void {
  const beyond = upTo(byLength, few.length - (few.lengths[lie] ?? 0));
  const beside = upTo(byWidth, few.width - (few.widths[lie] ?? 0));
  for (let word = 0; word < words; word += 1)
    bits[to + word] = (byLength.bits[beyond + word] ?? 0) | (byWidth.bits[beside + word] ?? 0);
}

/**
 * Who comes out with two pieces: where they lie beside each other, who has room beyond both, or beyond one and beside the
 * other; and so crosswise; and who lies in a row with both. As `threeComeOut`, for all at once.
 */
function workOut(companions: Companions, low: number, high: number, to: number): void {
  const { few, words, bits, byLength, byWidth } = companions;
  const { length, width } = few;
  const long = (few.lengths[low] ?? 0) + (few.lengths[high] ?? 0);
  const wide = (few.widths[low] ?? 0) + (few.widths[high] ?? 0);
  const areBeyond = long <= length ? -1 : 0;
  const areBeside = wide <= width ? -1 : 0;
  const beyond1 = upTo(byLength, length - (few.lengths[low] ?? 0));
  const beyond2 = upTo(byLength, length - (few.lengths[high] ?? 0));
  const beside1 = upTo(byWidth, width - (few.widths[low] ?? 0));
  const beside2 = upTo(byWidth, width - (few.widths[high] ?? 0));
  const beyondBoth = upTo(byLength, length - long);
  const besideBoth = upTo(byWidth, width - wide);
  for (let word = 0; word < words; word += 1) {
    const long1 = byLength.bits[beyond1 + word] ?? 0;
    const long2 = byLength.bits[beyond2 + word] ?? 0;
    const wide1 = byWidth.bits[beside1 + word] ?? 0;
    const wide2 = byWidth.bits[beside2 + word] ?? 0;
    const both = (long1 & wide2) | (wide1 & long2);
    bits[to + word] =
      (areBeside & ((long1 & long2) | both)) |
      (areBeyond & ((wide1 & wide2) | both)) |
      (byLength.bits[beyondBoth + word] ?? 0) |
      (byWidth.bits[besideBoth + word] ?? 0);
  }
}
