import { type FSWatcher, watch } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';

/** Rings when something changes in a folder, where the system tells of it. Nothing hangs on it: each look finds all. */
export type Bell = {
  /** Sleeps so many seconds, or until it rings or the signal is given. */
  readonly sleepUntilRung: (seconds: number, signal: AbortSignal) => Promise<void>;
  readonly close: () => void;
};

export function openBell(folder: string): Bell {
  let ring: () => void = () => undefined;
  const watcher = watched(folder, () => ring());
  return {
    sleepUntilRung: async (seconds, signal) => {
      const rung = new AbortController();
      ring = () => rung.abort();
      await sleep(seconds * 1000, undefined, { signal: AbortSignal.any([signal, rung.signal]) }).catch(() => undefined);
    },
    close: () => watcher?.close(),
  };
}

/** Undefined where the system has no more watches to give, or the folder is on a share that tells nothing. */
function watched(folder: string, changed: () => void): FSWatcher | undefined {
  try {
    const watcher = watch(folder, { persistent: false }, changed);
    return watcher.on('error', () => watcher.close());
  } catch {
    return undefined;
  }
}
