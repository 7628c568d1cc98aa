import { describe, expect, it } from 'vitest';
import { tryMutations } from './mutated-workbooks.ts';

describe('two hundred mutated workbooks', () => {
  it('come to a diagnosis or a job, each within its time', async () => {
    const outcome = await tryMutations(200, 1);
    expect(outcome.lost).toEqual([]);
    // Mutations that change nothing, or break everything, would try nothing.
    expect(Math.min(outcome.refused, outcome.toMend, outcome.sound)).toBeGreaterThan(10);
  });
});
