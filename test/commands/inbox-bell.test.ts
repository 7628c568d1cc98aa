import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openBell } from '../../src/commands/inbox-bell.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bell-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Longer than any test may take: what ends was rung, or told to. */
const FOR_EVER = 3600;
const NEVER = new AbortController().signal;

it('wakes whoever sleeps once a file is put in the folder, each time', async () => {
  const bell = openBell(folder);
  for (const name of ['first', 'second']) {
    const slept = bell.sleepUntilRung(FOR_EVER, NEVER);
    await writeFile(join(folder, name), 'x');
    await slept;
  }
  bell.close();
});

it('ends with the signal, and with its time, also where the folder cannot be watched', async () => {
  const bell = openBell(join(folder, 'away'));
  const stop = new AbortController();
  const slept = bell.sleepUntilRung(FOR_EVER, stop.signal);
  stop.abort();
  await slept;
  await bell.sleepUntilRung(0, NEVER);
  bell.close();
  expect(stop.signal.aborted).toBe(true);
});
