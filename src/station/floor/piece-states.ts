/** What is known of each piece of a job. */
export type PieceStates = {
  readonly get: (code: string) => PieceState | undefined;
  readonly set: (code: string, state: PieceState) => void;
  readonly keys: () => Iterable<string>;
  /** How many of `codes` have had `operation`: counted once for a set of codes, then kept, since every answer tells it. */
  readonly count: (operation: string, codes: ReadonlySet<string>) => number;
};

export type PieceState = {
  readonly marks: readonly Mark[];
  /** One for each time that it was spoiled: so many remakes it has had. */
  readonly spoils: readonly Spoil[];
  /** The operations that the piece which is in the shop now has had; kept, because every scan asks it of every piece. */
  readonly done: ReadonlySet<string>;
};

/** An operation that a piece has had. */
export type Mark = {
  readonly operation: string;
  readonly remake: number;
  /** The event that made it. */
  readonly key: string;
  /** Scanned, or vouched for by somebody who scanned a later operation. */
  readonly how: 'scanned' | 'vouched';
  readonly revision: string;
  readonly station: string;
  readonly device: string;
  readonly deviceTime: string;
  readonly serverTime: string;
};

export type Spoil = { readonly key: string; readonly revision: string; readonly reason: string };

export function pieceStates(): PieceStates {
  const states = new Map<string, PieceState>();
  /** By operation, for the codes that were last asked about: those of the job's latest revision. */
  const tallies = new Map<string, { readonly codes: ReadonlySet<string>; count: number }>();
  return {
    get: code => states.get(code),
    set: (code, state) => {
      for (const [operation, tally] of tallies)
        if (tally.codes.has(code)) tally.count += had(state, operation) - had(states.get(code), operation);
      states.set(code, state);
    },
    keys: () => states.keys(),
    count: (operation, codes) => {
      const known = tallies.get(operation);
      if (known?.codes === codes) return known.count;
      let count = 0;
      for (const code of codes) count += had(states.get(code), operation);
      tallies.set(operation, { codes, count });
      return count;
    },
  };
}

/** States to think ahead in: what is put into them does not reach `before`. */
export function aheadOf(before: PieceStates): PieceStates {
  const ahead = new Map<string, PieceState>();
  return {
    get: code => ahead.get(code) ?? before.get(code),
    set: (code, state) => {
      ahead.set(code, state);
    },
    keys: () => new Set([...before.keys(), ...ahead.keys()]),
    count: (operation, codes) => {
      let count = before.count(operation, codes);
      for (const [code, state] of ahead)
        if (codes.has(code)) count += had(state, operation) - had(before.get(code), operation);
      return count;
    },
  };
}

const had = (state: PieceState | undefined, operation: string): number => (state?.done.has(operation) ? 1 : 0);
