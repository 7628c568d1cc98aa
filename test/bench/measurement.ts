/**
 * One line of the bench's table. A bench is a file `test/bench/<subject>.bench.ts` that exports
 * `measure(): Promise<readonly Measurement[]>`; `npm run bench` runs each in a process of its own, prints one table and
 * writes `results.json`. Figures only mean something beside another one of the same run: a peer (a general-purpose
 * library or a published value) or a floor (work that nobody can leave out).
 */
export type Measurement = {
  /** What was done, with its size: "calculate 2,400 doors". */
  readonly what: string;
  readonly unit: string;
  readonly ours: number;
  readonly peer?: Beside;
  readonly floor?: Beside;
  /** What we mean to keep, in words: "≤ 4 × floor". */
  readonly target?: string;
  readonly met?: boolean;
};

export type Beside = { readonly name: string; readonly value: number };

export type Measured<T> = { readonly value: T; readonly seconds: number; readonly processorSeconds: number };

/** Runs `work` once and tells how long it took by the wall and by the processor. */
export async function timed<T>(work: () => T | Promise<T>): Promise<Measured<T>> {
  const processor = process.cpuUsage();
  const start = performance.now();
  const value = await work();
  const seconds = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(processor);
  return { value, seconds, processorSeconds: (user + system) / 1e6 };
}

/** Peak resident memory of this process so far, in MB. */
export const peakMemory = (): number => Math.round(process.resourceUsage().maxRSS / 1024);

/** b in y = a·x^b through two points: 1 is linear. */
export const growth = (
  from: readonly [size: number, cost: number],
  to: readonly [size: number, cost: number],
): number => Math.log(to[1] / from[1]) / Math.log(to[0] / from[0]);

/** Three figures or so, for people. */
export function figure(value: number): string {
  if (Number.isInteger(value)) return `${value}`;
  return value.toFixed(value >= 100 ? 0 : value >= 1 ? 2 : 4);
}
