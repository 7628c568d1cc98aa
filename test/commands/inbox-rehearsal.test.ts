import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { type Rehearsal, rehearse } from '../../src/commands/inbox-rehearsal.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A rehearsal as lines: what it asked for, in order. `act` is what a builder does with its so-manieth kitchen. */
function rehearsed(act: (kitchen: number, rehearsal: Rehearsal) => void = () => undefined) {
  const lines: string[] = [];
  let kitchens = 0;
  const rehearsal = rehearse({
    read: async (bytes, name) => void lines.push(`read ${name}, ${bytes.length > 10_000 ? 'a kitchen' : 'nothing'}`),
    build: async ({ revision, earlier }) => {
      kitchens += 1;
      lines.push(`build ${revision} after ${earlier === undefined ? 'none' : 'another'}`);
      act(kitchens, rehearsal);
    },
    ready: () => void lines.push('ready'),
    broken: () => void lines.push('broken'),
  });
  return { lines, rehearsal };
}

const QUIET_MS = 2000;
const ALL = ['read rehearsal.xlsx, a kitchen', 'build A after none', 'build A after none', 'ready'];

it('reads and builds the demo kitchen twice once nothing was asked for a while', async () => {
  const { lines } = rehearsed();
  await vi.advanceTimersByTimeAsync(QUIET_MS - 1);
  expect(lines).toEqual([]);
  await vi.advanceTimersByTimeAsync(1);
  expect(lines).toEqual(ALL);
});

it('does not begin where something was asked before', async () => {
  const { lines, rehearsal } = rehearsed();
  rehearsal.giveUp();
  await vi.advanceTimersByTimeAsync(QUIET_MS);
  expect(lines).toEqual(['broken']);
});

it('is given up where something is asked meanwhile, and once only', async () => {
  const { lines } = rehearsed((_, rehearsal) => {
    rehearsal.giveUp();
    rehearsal.giveUp();
  });
  await vi.advanceTimersByTimeAsync(QUIET_MS);
  expect(lines).toEqual([...ALL.slice(0, 2), 'broken']);
});

it('leaves alone what is ready', async () => {
  const { lines, rehearsal } = rehearsed();
  await vi.advanceTimersByTimeAsync(QUIET_MS);
  rehearsal.giveUp();
  expect(lines).toEqual(ALL);
});

it('gives itself up where it goes wrong', async () => {
  const { lines } = rehearsed(() => {
    throw new Error('the builder ended before its packet was done');
  });
  await vi.advanceTimersByTimeAsync(QUIET_MS);
  expect(lines).toEqual([...ALL.slice(0, 2), 'broken']);
});
