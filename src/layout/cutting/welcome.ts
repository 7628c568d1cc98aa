import { isAmong } from './bits.ts';
import { companionsOf, nobody } from './companions.ts';
import type { Bench } from './exchange-bench.ts';
import { FEW } from './few-pieces.ts';

/**
 * Where in `welcome` the bits stand of those that may go into a bin when what is at a place of it comes out, or nothing if
 * that is `FEW`: no three of what is then in the bin are apart.
 */
export function welcomeTo(bench: Bench, bin: number, place: number): number {
  const { companions, made } = bench;
  const at = bin * (FEW + 1) + place;
  if (made[at] === 0) workOut(bench, bin, place, at);
  return at * companions.words;
}

function workOut({ companions, welcome, made, lies, counts }: Bench, bin: number, out: number, at: number): void {
  const { words, bits } = companions;
  const start = bin * FEW;
  const count = counts[bin] ?? 0;
  const none = nobody(companions);
  const to = at * words;
  made[at] = 1;
  const any = companionsOf(companions, none, none);
  for (let word = 0; word < words; word += 1) welcome[to + word] = bits[any + word] ?? 0;
  const isAlone = count === (out === FEW ? 1 : 2);
  for (let one = 0; one < count; one += 1) {
    if (one === out) continue;
    const lie = lies[start + one] ?? 0;
    // Who comes out with two comes out with each of them.
    for (let two = isAlone ? one : one + 1; two < count; two += 1) {
      if (two === out) continue;
      const row = companionsOf(companions, lie, isAlone ? none : (lies[start + two] ?? 0));
      for (let word = 0; word < words; word += 1)
        welcome[to + word] = (welcome[to + word] ?? 0) & (bits[row + word] ?? 0);
      if (isAlone) break;
    }
  }
}

/** Whether a piece may go into a bin when what is at one place and another comes out. */
export function isWelcome(
  { companions, lies, counts }: Bench,
  bin: number,
  place: number,
  place2: number,
  lie: number,
): boolean {
  const { bits } = companions;
  const start = bin * FEW;
  const count = counts[bin] ?? 0;
  const alone = companionsOf(companions, lie, nobody(companions));
  for (let one = 0; one < count; one += 1) {
    if (one === place || one === place2) continue;
    const beside = lies[start + one] ?? 0;
    if (!isAmong(bits, alone, beside)) return false;
    const row = companionsOf(companions, lie, beside);
    for (let two = one + 1; two < count; two += 1) {
      if (two === place || two === place2) continue;
      if (!isAmong(bits, row, lies[start + two] ?? 0)) return false;
    }
  }
  return true;
}

/** Whether two pieces come out with any one that stays in a bin when what is at a place of it comes out. */
export function areTogether(
  { companions, lies, counts }: Bench,
  bin: number,
  place: number,
  one: number,
  two: number,
): boolean {
  const row = companionsOf(companions, one, two);
  const count = counts[bin] ?? 0;
  for (let at = 0; at < count; at += 1)
    if (at !== place && !isAmong(companions.bits, row, lies[bin * FEW + at] ?? 0)) return false;
  return true;
}
