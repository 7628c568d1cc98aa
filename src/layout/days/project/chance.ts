/** Numbers that look random and are the same for the same seed. */
export type Chance = {
  /** A whole number from 0 up to, and not including, `below`. */
  readonly whole: (below: number) => number;
  /** From 0 up to, and not including, 1. */
  readonly share: () => number;
};

/** The generator mulberry32 (public domain): 32 bits of state are plenty for choosing among plans. */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  const share = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return { share, whole: below => Math.floor(share() * below) };
}
