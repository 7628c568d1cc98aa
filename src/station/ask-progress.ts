import type { Host } from '../host.ts';
import { type Progress, progressOf } from './floor/progress.ts';
import { type LedgerPlace, openLedger } from './open-ledger.ts';
import { openPacketFolders } from './packet-folders.ts';
import { runningStation } from './running.ts';
import { stateIn } from './states.ts';

export type Floor = LedgerPlace & {
  readonly packets: readonly string[];
  readonly packetsRoot: string | undefined;
};

/** A job's progress: asked of the station that runs, else read from the ledger. Undefined where there is no such job. */
export async function askProgress(
  floor: Floor,
  job: string,
  host: Host,
  tell: (trouble: unknown) => void,
): Promise<Progress | undefined> {
  const station = floor.database === undefined ? await runningStation(floor.data) : undefined;
  if (station !== undefined) return fetchProgress(station, job);
  const packets = openPacketFolders(floor.packets, floor.packetsRoot, host);
  await packets.look();
  const shelved = packets.shelf().jobs.get(job);
  if (shelved === undefined) return undefined;
  const ledger = await openLedger(floor, tell);
  try {
    return progressOf(shelved.book, await stateIn(ledger, job), host.now());
  } finally {
    await ledger.close();
  }
}

async function fetchProgress(station: string, job: string): Promise<Progress | undefined> {
  const answer = await fetch(`${station}/api/progress/${encodeURIComponent(job)}`);
  // Both ends are this program, of one version: what one writes the other knows.
  return answer.ok ? ((await answer.json()) as Progress) : undefined;
}
