import fc from 'fast-check';
import { expect, it } from 'vitest';
import { aheadOf, type PieceStates, pieceStates } from '../../src/station/floor/piece-states.ts';
import { law } from '../support/runs.ts';

const CODES = ['a', 'b', 'c', 'd'];
const OPERATIONS = ['groove', 'cope'];

/** A piece has had some operations, is spoiled and has had others, is asked about in one revision of the job or another. */
const aStep = fc.record({
  ahead: fc.nat(2),
  code: fc.constantFrom(...CODES),
  done: fc.subarray(OPERATIONS).map(each => new Set(each)),
  asked: fc.constantFrom(...OPERATIONS),
  revision: fc.nat(1),
});

const revisions = [new Set(CODES), new Set(['b', 'c'])];

const counted = (states: PieceStates, operation: string, codes: ReadonlySet<string>): number =>
  [...codes].filter(code => states.get(code)?.done.has(operation)).length;

it('a count that is kept is what counting gives, in a draft of a draft too, whatever was asked before', () => {
  law([fc.array(aStep, { maxLength: 30 })], steps => {
    const kept = pieceStates();
    for (const { ahead, code, done, asked, revision } of steps) {
      const codes = revisions[revision] ?? new Set();
      const drafts = [kept, aheadOf(kept), aheadOf(aheadOf(kept))];
      const states = drafts[ahead] ?? kept;
      states.count(asked, codes);
      states.set(code, { marks: [], spoils: [], done });
      expect(states.count(asked, codes)).toBe(counted(states, asked, codes));
      expect(kept.count(asked, codes)).toBe(counted(kept, asked, codes));
    }
  });
});
