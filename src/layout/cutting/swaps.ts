import { isAmong, strike } from './companions.ts';
import { decay } from './decay.ts';
import { type Bench, put, takes } from './exchange-bench.ts';
import { asItLies, BITS, drawn, FINE, of } from './exchange-chance.ts';
import { FEW, FULL } from './few-pieces.ts';
import { fillUp } from './from-beside.ts';
import { areTogether, isWelcome, nextAmong, welcomeTo } from './welcome.ts';

/** What makes the sum of the squares of what bins are filled less by so much is done one time in e. */
const TEMPERATURE = 0.0065;

/** Of a hundred exchanges, those of one piece for none, and of one for none or one; the others are two for one. */
const ONE_FOR_NONE = 5;
const ONE_FOR_ONE = 30;

/** What a piece that may be exchanged costs, and an exchange, in looks. */
const LOOKS_A_CANDIDATE = 3;
const LOOKS_A_CHANGE = 115;

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
  const { few, lies, filled, places, weights, welcome } = bench;
  const open = welcomeTo(bench, to, back);
  const out = back === FEW ? -1 : (lies[to * FEW + back] ?? 0);
  const weight = out < 0 ? 0 : (weights[out] ?? 0);
  const most = FULL - (filled[to] ?? 0);
  for (let round = 0; round < 2; round += 1) {
    const until = round === 0 ? places.length : start;
    let lie = nextAmong(welcome, open, round === 0 ? start : 0, until);
    for (; lie < until; lie = nextAmong(welcome, open, lie + 1, until)) {
      few.spent += LOOKS_A_CANDIDATE;
      const place = places[lie] ?? -1;
      const from = (place / FEW) | 0;
      const moved = (weights[lie] ?? 0) - weight;
      if (place < 0 || from === to || moved > most || moved < (filled[from] ?? 0) - FULL) continue;
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
}

/** Exchanges a piece of a bin for two of another: the first two with which this can be, from a certain number on. */
function twoFor(bench: Bench, to: number, back: number, start: number): void {
  const { few, lies, counts, filled, places, weights, welcome } = bench;
  const open = welcomeTo(bench, to, back);
  const out = lies[to * FEW + back] ?? 0;
  const weight = weights[out] ?? 0;
  const most = FULL - (filled[to] ?? 0);
  for (let round = 0; round < 2; round += 1) {
    const until = round === 0 ? places.length : start;
    let lie = nextAmong(welcome, open, round === 0 ? start : 0, until);
    for (; lie < until; lie = nextAmong(welcome, open, lie + 1, until)) {
      few.spent += LOOKS_A_CANDIDATE;
      const place = places[lie] ?? -1;
      const from = (place / FEW) | 0;
      const first = (weights[lie] ?? 0) - weight;
      if (place < 0 || from === to || first > most) continue;
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
}

/** Whether so much may move between two bins: always, where it makes the fuller of them fuller. */
function isWorth(bench: Bench, from: number, to: number, moved: number): boolean {
  const { filled } = bench;
  // What the squares of what both are filled grow by.
  const fuller = (2 * moved * (moved + (filled[to] ?? 0) - (filled[from] ?? 0))) / (FULL * FULL);
  return fuller >= 0 || drawn(bench) < FINE * decay(-fuller / TEMPERATURE);
}
