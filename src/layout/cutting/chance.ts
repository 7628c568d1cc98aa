/** A stream of numbers in [0, 1) that looks like chance and is the same for the same seed. */
export type Chance = () => number;

/** The generator "mulberry32" (T. Ettinger, public domain), from memory; any well-mixed 32-bit stream would do. */
export function chanceFrom(seed: number): Chance {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export const pick = (chance: Chance, count: number): number => Math.floor(chance() * count);
