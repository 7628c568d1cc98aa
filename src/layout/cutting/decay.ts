/**
 * e to the power of −x, for x from 0 on. By sums and products, which every engine rounds alike; of the engine's own
 * function the last digit is its choice, and a plan must be the same everywhere.
 */
export function decay(x: number): number {
  if (x > NOTHING_LEFT) return 0;
  const y = x / 1024;
  const series = 1 - y * (1 - (y / 2) * (1 - (y / 3) * (1 - (y / 4) * (1 - (y / 5) * (1 - (y / 6) * (1 - y / 7))))));
  let power = series;
  for (let doubled = 1; doubled < 1024; doubled *= 2) power *= power;
  return power;
}

/** Less than one part of 2 to the power of 43 is no chance. */
const NOTHING_LEFT = 30;
