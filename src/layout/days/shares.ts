import type { DoorSet } from '../../calculate/door-set.ts';
import type { OperationId } from '../../trade/operations.ts';
import { type Duration, minutes } from '../../units/duration.ts';
import type { Operation } from '../shop-plan.ts';

/** The work of each operation for one group of doors or parts. An operation that has nothing to do for it is missing. */
export type Share = ReadonlyMap<OperationId, Duration>;

/** How long an operation takes if it is done in one go. */
export const wholeWork = ({ minutes: { setup, pieces } }: Operation): Duration => wholeMinutes(setup + pieces);

/** Rounded up to the minute: nobody comes back in the morning for twelve seconds. */
export const wholeMinutes = (count: number): Duration => minutes(Math.ceil(count - NOISE));

/** Of sums of fractions of minutes. */
const NOISE = 1e-6;

/**
 * An operation's minutes, shared out over `groups` of doors or parts: each group makes the set-ups that its pieces need,
 * once for itself, and runs its own pieces. A part counts for the group that it, or its door, is in.
 */
export function sharesOf(
  operations: readonly Operation[],
  groups: readonly (readonly string[])[],
  doorSet: DoorSet,
): readonly Share[] {
  const groupOf = new Map<string, number>(groups.flatMap((codes, group) => codes.map(code => [code, group])));
  const doorOf = new Map<string, string>(doorSet.parts.map(part => [part.code, part.door]));
  const shares = groups.map(() => new Map<OperationId, Duration>());
  for (const operation of operations) {
    const tallies = tally(operation, code => groupOf.get(code) ?? groupOf.get(doorOf.get(code) ?? ''));
    const pieces = [...tallies.values()].reduce((sum, each) => sum + each.pieces, 0);
    for (const [group, { setups, pieces: own }] of tallies) {
      const setup = (operation.minutes.setup * setups.size) / operation.setups.length;
      shares[group]?.set(operation.id, wholeMinutes(setup + (operation.minutes.pieces * own) / pieces));
    }
  }
  return shares;
}

type Tally = { readonly setups: Set<number>; pieces: number };

/** For each group: the set-ups that have a piece of it, and how many pieces. */
function tally(operation: Operation, groupOf: (code: string) => number | undefined): ReadonlyMap<number, Tally> {
  const tallies = new Map<number, Tally>();
  for (const [setup, { pieces }] of operation.setups.entries()) {
    for (const { code } of pieces) {
      const group = groupOf(code);
      if (group === undefined) continue;
      const found = tallies.get(group) ?? { setups: new Set(), pieces: 0 };
      found.setups.add(setup);
      found.pieces += 1;
      tallies.set(group, found);
    }
  }
  return tallies;
}
