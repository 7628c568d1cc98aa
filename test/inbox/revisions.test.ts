import { describe, expect, it } from 'vitest';
import { changesSince, revisionAfter } from '../../src/inbox/revisions.ts';

describe('the letter of the next revision', () => {
  it.each([
    [[], 'A'],
    [['A'], 'B'],
    [['A', 'B', 'C'], 'D'],
    [['A', 'C'], 'D'],
    [['Z'], 'AA'],
    [['Z', 'AA'], 'AB'],
    [['AZ'], 'BA'],
    [['notes', 'a', 'A'], 'B'],
  ])('after %j is %s', (taken, letter) => {
    expect(revisionAfter(taken)).toBe(letter);
  });
});

describe('what changed since', () => {
  it('is told by code: what came, what went, what is another size', () => {
    const earlier = new Map([
      ['B1.1', '14'],
      ['B1.1-SL', '31'],
      ['B2.1', '20'],
    ]);
    const now = new Map([
      ['B3.1', '9'],
      ['B1.1-SL', '32'],
      ['B1.1', '14'],
    ]);
    expect(changesSince('A', earlier, now)).toEqual({
      since: 'A',
      added: ['B3.1'],
      removed: ['B2.1'],
      changed: ['B1.1-SL'],
    });
  });
});
