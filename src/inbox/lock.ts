import { randomUUID } from 'node:crypto';
import { link, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';

/** The right to work on a folder. Nobody else has it until it is released, or its holder is gone. */
export type Lock = {
  /** Tells others on the network that the holder is still there. */
  readonly renew: (now: Date) => Promise<void>;
  readonly release: () => Promise<void>;
};

type Holder = { readonly id: string; readonly pid: number; readonly host: string; readonly started: string };

/** Another machine's lock that was not renewed for so long is nobody's. */
const STALE_MS = 60_000;

export class FolderIsTaken extends Error {
  constructor(folder: string, holder: string) {
    super(`${folder} is watched already, by process ${holder}. One is enough.`);
  }
}

/** Takes the folder's lock, over one that a crash left behind. Throws `FolderIsTaken` where its holder lives. */
export async function takeLock(folder: string, file: string, now: Date): Promise<Lock> {
  const mine: Holder = { id: randomUUID(), pid: process.pid, host: hostname(), started: await startedAt(process.pid) };
  for (let tries = 0; tries < 5; tries++) {
    if (await tryLink(file, mine)) return lockOf(file, mine);
    const holder = await readHolder(file);
    if (holder !== undefined && (await isAlive(holder, file, now)))
      throw new FolderIsTaken(folder, `${holder.pid} on ${holder.host}`);
    await setAside(file, holder?.id);
  }
  throw new FolderIsTaken(folder, 'unknown');
}

/** The lock appears whole or not at all: it is written aside, and given its name only if nobody has it. */
async function tryLink(file: string, holder: Holder): Promise<boolean> {
  const aside = `${file}.${holder.id}`;
  await writeFile(aside, JSON.stringify(holder));
  try {
    await link(aside, file);
    return true;
  } catch (refused) {
    if (refused instanceof Error && 'code' in refused && refused.code === 'EEXIST') return false;
    throw refused;
  } finally {
    await rm(aside, { force: true });
  }
}

async function readHolder(file: string): Promise<Holder | undefined> {
  try {
    return JSON.parse(await readFile(file, 'utf8')) as Holder;
  } catch {
    return undefined;
  }
}

/** On this machine, a process of that number that was started then; on another, one that renewed its lock lately. */
async function isAlive(holder: Holder, file: string, now: Date): Promise<boolean> {
  if (holder.host !== hostname()) {
    const renewed = await stat(file).catch(() => undefined);
    return renewed !== undefined && now.getTime() - renewed.mtimeMs < STALE_MS;
  }
  try {
    process.kill(holder.pid, 0);
  } catch (refused) {
    if (!(refused instanceof Error && 'code' in refused && refused.code === 'EPERM')) return false;
  }
  const started = await startedAt(holder.pid);
  return started === '' || holder.started === '' || started === holder.started;
}

/** When a process was started, where the system says so: numbers of processes come round again. */
async function startedAt(pid: number): Promise<string> {
  try {
    const [fields, boot] = [
      await readFile(`/proc/${pid}/stat`, 'utf8'),
      await readFile('/proc/sys/kernel/random/boot_id', 'utf8'),
    ];
    // The program's name, in brackets, may have spaces; the start is the 20th field behind it: proc(5).
    return `${fields.slice(fields.lastIndexOf(')') + 2).split(' ')[19] ?? ''} ${boot.trim()}`;
  } catch {
    return '';
  }
}

/** Two who find the same dead lock set it aside one after the other; the second must not take the first one's new lock. */
async function setAside(file: string, id: string | undefined): Promise<void> {
  const aside = `${file}.${randomUUID()}`;
  try {
    await rename(file, aside);
  } catch {
    return;
  }
  const taken = await readHolder(aside);
  if (taken !== undefined && taken.id !== id) await rename(aside, file);
  else await rm(aside, { force: true });
}

const lockOf = (file: string, mine: Holder): Lock => ({
  renew: async now => {
    await utimes(file, now, now).catch(() => undefined);
  },
  release: async () => {
    if ((await readHolder(file))?.id === mine.id) await rm(file, { force: true });
  },
});

export const lockFile = (folder: string): string => join(folder, '.stilebook', 'lock');
