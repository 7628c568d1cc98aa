import type { Bench } from './exchange-bench.ts';

/** Thirty bits of chance: G. Marsaglia, "Xorshift RNGs", J. Stat. Softw. 8 (2003) 14. */
export function drawn(bench: Bench): number {
  let { chance } = bench;
  chance ^= chance << 13;
  chance ^= chance >>> 17;
  chance ^= chance << 5;
  bench.chance = chance;
  return chance >>> 2;
}

/** Thirty bits are three choices of ten bits each, or one fine one. */
export const BITS = 10;
const TEN_BITS = 0x3ff;
export const FINE = 2 ** 30;

/** A whole number below `count` from the last ten bits of what was drawn. */
export const of = (count: number, draw: number): number => (count * (draw & TEN_BITS)) >>> BITS;

/** One of the ways in which a piece may lie. */
export function asItLies(bench: Bench, lie: number): number {
  const twin = bench.few.twins[lie] ?? lie;
  return twin !== lie && of(2, drawn(bench)) === 0 ? twin : lie;
}
