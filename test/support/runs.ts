import fc from 'fast-check';

/** How many cases each law is tried on: `RUNS=50000 npm test` goes deeper; `SEED=…` replays what a failure printed. */
export const RUNS = Number(process.env['RUNS'] ?? 1000);

const seed = process.env['SEED'];

/** A law: holds of everything that can be drawn. */
export function law<Drawn extends [unknown, ...unknown[]]>(
  drawn: { [K in keyof Drawn]: fc.Arbitrary<Drawn[K]> },
  holds: (...values: Drawn) => void,
  runs = RUNS,
): void {
  fc.assert(
    fc.property(...drawn, (...values: Drawn) => holds(...values)),
    {
      numRuns: Math.ceil(runs),
      ...(seed === undefined ? {} : { seed: Number(seed) }),
    },
  );
}
