import { isAmong, strike } from './bits.ts';
import { type Bench, putFromBeside, takes } from './exchange-bench.ts';
import { asItLies, BITS, drawn, FINE, of } from './exchange-chance.ts';
import { FEW, FULL } from './few-pieces.ts';
import { isWelcome, welcomeTo } from './welcome.ts';

/** What a bin that is looked into costs, in looks. */
const LOOKS_A_BIN = 5.3;

/**
 * Exchanges a piece that lies beside for one or two of the first bin, from a certain one on, where this can be. More may
 * come out than goes in, up to a share of a bin; but most times only a little.
 */
export function putIn(bench: Bench, share: number): void {
  const { few, counts, beside, weights } = bench;
  const draw = drawn(bench);
  const at = of(beside.length, draw);
  const start = of(counts.length, draw >>> BITS);
  const lie = asItLies(bench, beside[at] ?? 0);
  const chance = drawn(bench) / FINE;
  const most = Math.floor((weights[lie] ?? 0) + share * FULL * chance * chance * chance);
  for (let step = 0; step < counts.length; step += 1) {
    const bin = start + step < counts.length ? start + step : start + step - counts.length;
    few.spent += LOOKS_A_BIN;
    if (isPutInto(bench, bin, at, lie, 0, most)) {
      fillUp(bench, bin);
      return;
    }
  }
}

/** Puts a piece that lies beside into a bin that has changed, if there is one for which less than it comes out. */
export function fillUp(bench: Bench, bin: number): void {
  const { beside, weights } = bench;
  for (let at = 0; at < beside.length; at += 1) {
    const lie = asItLies(bench, beside[at] ?? 0);
    if (isPutInto(bench, bin, at, lie, -1, (weights[lie] ?? 0) - 1)) return;
  }
}

/**
 * Puts a piece that lies beside into a bin instead of one or two pieces, or of none too if the first place is −1, that
 * weigh so much at most; whether this can be.
 */
function isPutInto(bench: Bench, bin: number, at: number, lie: number, firstPlace: number, most: number): boolean {
  const { lies, counts, filled, weights } = bench;
  const count = counts[bin] ?? 0;
  const least = (filled[bin] ?? 0) + (weights[lie] ?? 0) - FULL;
  for (let one = firstPlace; one < count; one += 1) {
    const weight = one < 0 ? 0 : (weights[lies[bin * FEW + one] ?? 0] ?? 0);
    if (weight > most) continue;
    const place = one < 0 ? FEW : one;
    for (let two = one; two < (one < 0 ? 0 : count); two += 1) {
      const comesOut = two === one ? weight : weight + (weights[lies[bin * FEW + two] ?? 0] ?? 0);
      if (comesOut < least || comesOut > most) continue;
      const place2 = two === one ? place : two;
      if (!isTaken(bench, bin, place, place2, lie)) continue;
      putFromBeside(bench, at, bin, place, place2, lie);
      return true;
    }
  }
  return false;
}

function isTaken(bench: Bench, bin: number, one: number, two: number, lie: number): boolean {
  const { welcome } = bench;
  if (one !== two) return isWelcome(bench, bin, one, two, lie) && takes(bench, bin, one, two, lie, -1);
  const open = welcomeTo(bench, bin, one);
  if (!isAmong(welcome, open, lie)) return false;
  const yes = takes(bench, bin, one, two, lie, -1);
  if (!yes) strike(welcome, open, lie);
  return yes;
}
