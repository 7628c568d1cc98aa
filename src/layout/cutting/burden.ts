import type { CuttingProblem } from './problem.ts';
import { type Handling, isOfFirstCut, type OpenBin } from './rows.ts';

/** What boards, settings and remnants are worth to a shop against each other, in settings of fence or stop. */
export type Weights = {
  /** Of a remnant as large as a bin. */
  readonly remnant: number;
  /** Of what a bin costs; undefined where no setting is worth any wood. */
  readonly bin: number | undefined;
};

/** A whole board or sheet that is hard to guide is worth less than a setting: a helper can be called. */
const AWKWARD = 0.8;
/** A setting of first cuts counts for so much more: whole boards and sheets are broken down before anything else. */
const FIRST = 0.7;
/** A cut takes about a tenth of the time of a setting. It keeps strips from being cut wider than their pieces for nothing. */
const CUT = 0.1;
/** A pair of stiles that should look alike outweighs a setting. */
const ODD = 2;

/** What bins ask for together. Settings are counted as bins come and go, so that a try is not all counted anew. */
export type Tally = {
  readonly change: (gone: Iterable<OpenBin>, come: Iterable<OpenBin>) => void;
  readonly burden: (bins: readonly OpenBin[]) => number;
};

/** Settings that are `made` anyway are not counted. */
export function openTally(
  problem: CuttingProblem,
  made: ReadonlySet<number>,
  handle: (bin: OpenBin) => Handling,
  weights: Weights,
): Tally {
  const times = new Map<number, number>();
  let distinct = 0;
  return {
    change: (gone, come) => {
      for (const bin of come)
        for (const key of handle(bin).settings) {
          const before = times.get(key) ?? 0;
          times.set(key, before + 1);
          if (before === 0 && !made.has(key)) distinct += worthOf(key);
        }
      for (const bin of gone)
        for (const key of handle(bin).settings) {
          const after = (times.get(key) ?? 0) - 1;
          times.set(key, after);
          if (after === 0 && !made.has(key)) distinct -= worthOf(key);
        }
    },
    burden: bins => {
      let remnant = 0;
      let others = 0;
      let cost = 0;
      for (let at = 0; at < bins.length; at += 1) {
        const bin = bins[at];
        if (bin === undefined) continue;
        const handling = handle(bin);
        remnant = Math.max(remnant, handling.remnant);
        others += CUT * handling.cuts + ODD * handling.odd + (handling.awkward ? AWKWARD : 0);
        cost += problem.bins[bin.kind]?.cost ?? 0;
      }
      return distinct + others + (weights.bin ?? 0) * cost - weights.remnant * remnant;
    },
  };
}

const worthOf = (setting: number): number => (isOfFirstCut(setting) ? FIRST : 1);
