import { isAmong, strike } from './bits.ts';
import { decay } from './decay.ts';
import { type Bench, put, takes } from './exchange-bench.ts';
import { asItLies, BITS, drawn, FINE, of } from './exchange-chance.ts';
import { FEW, FULL } from './few-pieces.ts';
import { fillUp } from './from-beside.ts';
import { areTogether, isWelcome, welcomeTo } from './welcome.ts';

/** What makes the sum of the squares of what bins are filled less by so much is done one time in e. */
const TEMPERATURE = 0.0065;

/** Of a hundred exchanges, those of one piece for none, and of one for none or one; the others are two for one. */
const ONE_FOR_NONE = 5;
const ONE_FOR_ONE = 30;

/** What a piece that may be exchanged costs, and an exchange, in looks. */
const LOOKS_A_CANDIDATE = 2.6;
const LOOKS_A_CHANGE = 100;

/** Exchanges one or two pieces of a bin for one of another, or for none; and what lies beside may go into these two then. */
export function swap(bench: Bench): void {
  const { counts, places } = bench;
  const draw = drawn(bench);
  const to = of(counts.length, draw);
  const start = of(places.length, draw >>> BITS);
  const share = of(100, draw >>> (2 * BITS));
  const others = counts[to] ?? 0;
  if (share < ONE_FOR_NONE) oneFor(bench, to, FEW, start);
  else if (others === 0) return;
  else if (share < ONE_FOR_ONE) oneFor(bench, to, of(others, drawn(bench)), start);
  else twoFor(bench, to, of(others, drawn(bench)), start);
}

/** Exchanges a piece of a bin, or none, for one of another: the first with which this can be, from a certain number on. */
function oneFor(bench: Bench, to: number, back: number, start: number): void {
  const { few, lies, filled, places, weights, welcome, candidates } = bench;
  const open = welcomeTo(bench, to, back);
  const out = back === FEW ? -1 : (lies[to * FEW + back] ?? 0);
  const weight = out < 0 ? 0 : (weights[out] ?? 0);
  const count = candidatesFor(bench, to, open, start, weight + FULL - (filled[to] ?? 0));
  for (let at = 0; at < count; at += 1) {
    const lie = candidates[at] ?? 0;
    const place = places[lie] ?? 0;
    const from = (place / FEW) | 0;
    const moved = (weights[lie] ?? 0) - weight;
    if (moved < (filled[from] ?? 0) - FULL) continue;
    const one = place - from * FEW;
    const goes = out < 0 ? -1 : asItLies(bench, out);
    const there = welcomeTo(bench, from, one);
    if ((goes >= 0 && !isAmong(welcome, there, goes)) || !isWorth(bench, from, to, moved)) continue;
    if (!takes(bench, to, back, back, lie, -1)) strike(welcome, open, lie);
    else if (goes >= 0 && !takes(bench, from, one, one, goes, -1)) strike(welcome, there, goes);
    else {
      put(bench, from, one, one, goes, -1);
      put(bench, to, back, back, lie, -1);
      few.spent += LOOKS_A_CHANGE;
      fillUp(bench, from);
      fillUp(bench, to);
      return;
    }
  }
}

/** Exchanges a piece of a bin for two of another: the first two with which this can be, from a certain number on. */
function twoFor(bench: Bench, to: number, back: number, start: number): void {
  const { few, lies, counts, filled, places, weights, welcome, candidates } = bench;
  const open = welcomeTo(bench, to, back);
  const out = lies[to * FEW + back] ?? 0;
  const weight = weights[out] ?? 0;
  const most = FULL - (filled[to] ?? 0);
  const candidateCount = candidatesFor(bench, to, open, start, weight + most);
  for (let at = 0; at < candidateCount; at += 1) {
    const lie = candidates[at] ?? 0;
    const place = places[lie] ?? 0;
    const from = (place / FEW) | 0;
    const first = (weights[lie] ?? 0) - weight;
    const one = place - from * FEW;
    const count = counts[from] ?? 0;
    const least = (filled[from] ?? 0) - FULL;
    for (let two = one + 1; two < count; two += 1) {
      const other = lies[from * FEW + two] ?? 0;
      const moved = first + (weights[other] ?? 0);
      if (moved > most || moved < least) continue;
      const also = asItLies(bench, other);
      if (!isAmong(welcome, open, also)) continue;
      const goes = asItLies(bench, out);
      if (!isWelcome(bench, from, one, two, goes) || !areTogether(bench, to, back, lie, also)) continue;
      if (!isWorth(bench, from, to, moved)) continue;
      if (!takes(bench, to, back, back, lie, also) || !takes(bench, from, one, two, goes, -1)) continue;
      put(bench, from, one, two, goes, -1);
      put(bench, to, back, back, lie, also);
      few.spent += LOOKS_A_CHANGE;
      fillUp(bench, from);
      fillUp(bench, to);
      return;
    }
  }
}

/**
 * Writes down the pieces of other bins that may come into a bin and weigh so much at most, in the order of their numbers
 * from one on and around; how many they are.
 */
function candidatesFor(bench: Bench, to: number, open: number, start: number, most: number): number {
  const { few, places, weights, welcome, candidates } = bench;
  const { words } = bench.companions;
  const first = start >> 5;
  const after = -1 << (start & 31);
  const from = to * FEW;
  let count = 0;
  for (let step = 0; step <= words; step += 1) {
    const word = first + step < words ? first + step : first + step - words;
    let bits = (welcome[open + word] ?? 0) & (step === 0 ? after : step === words ? ~after : -1);
    while (bits !== 0) {
      const lie = (word << 5) + 31 - Math.clz32(bits & -bits);
      bits &= bits - 1;
      const place = places[lie] ?? -1;
      if (place < 0 || (place >= from && place < from + FEW) || (weights[lie] ?? 0) > most) continue;
      candidates[count] = lie;
      count += 1;
    }
  }
  few.spent += LOOKS_A_CANDIDATE * count;
  return count;
}

/** Whether so much may move between two bins: always, where it makes the fuller of them fuller. */
function isWorth(bench: Bench, from: number, to: number, moved: number): boolean {
  const { filled } = bench;
  // What the squares of what both are filled grow by.
  const fuller = (2 * moved * (moved + (filled[to] ?? 0) - (filled[from] ?? 0))) / (FULL * FULL);
  return fuller >= 0 || drawn(bench) < FINE * decay(-fuller / TEMPERATURE);
}
