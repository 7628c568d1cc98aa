import { randomUUID } from 'node:crypto';
import { type FileHandle, mkdir, open, readdir, readFile, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { Host, WholeFile } from './host.ts';

/** The machine that the program runs on. What it refuses (full disk, no permission) is thrown, and told at the edge. */
export const machine: Host = {
  read: path => readFile(path),
  now: () => new Date(),
  writeFile: async (path, bytes, secret) => {
    const aside = asideOf(path);
    try {
      await writeSynced(aside, bytes, secret && 0o600);
      await rename(aside, path);
    } catch (refused) {
      await rm(aside, { force: true });
      throw refused;
    }
    await syncFolder(dirname(path));
  },
  writeFolder,
};

/** A folder that holds more than what we would put there is somebody's own: it is never replaced. */
export class FolderHoldsOtherFiles extends Error {
  readonly folder: string;
  readonly others: readonly string[];
  constructor(folder: string, others: readonly string[]) {
    super(`${folder} holds other files: ${others.join(', ')}`);
    this.folder = folder;
    this.others = others;
  }
}

async function writeFolder(path: string, files: readonly WholeFile[]): Promise<void> {
  const old = await namesIn(path);
  const names = new Set(files.map(file => file.name));
  const others = (old ?? []).filter(name => !names.has(name));
  if (others.length > 0) throw new FolderHoldsOtherFiles(path, others);
  const aside = asideOf(path);
  await mkdir(aside, { recursive: true });
  try {
    for (const file of files) await writeSynced(join(aside, file.name), file.bytes);
    await syncFolder(aside);
    await replace(path, aside, old !== undefined);
  } catch (refused) {
    await rm(aside, { recursive: true, force: true });
    throw refused;
  }
  await syncFolder(dirname(path));
}

/** A folder cannot be renamed over a full one, so the old one steps aside first and goes once the new one stands. */
async function replace(path: string, fresh: string, stands: boolean): Promise<void> {
  if (!stands) return rename(fresh, path);
  const old = asideOf(path);
  await rename(path, old);
  try {
    await rename(fresh, path);
  } catch (refused) {
    await rename(old, path);
    throw refused;
  }
  await rm(old, { recursive: true, force: true });
}

const asideOf = (path: string): string => join(dirname(path), `.${basename(path).slice(0, 60)}.${randomUUID()}.part`);

async function namesIn(path: string): Promise<readonly string[] | undefined> {
  try {
    return await readdir(path);
  } catch (refused) {
    if (isMissing(refused)) return undefined;
    throw refused;
  }
}

async function writeSynced(path: string, bytes: Uint8Array, mode = 0o666): Promise<void> {
  const file = await open(path, 'wx', mode);
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** A rename is only lasting once its folder is synced. Some systems cannot sync a folder: there it is not needed. */
async function syncFolder(path: string): Promise<void> {
  let folder: FileHandle | undefined;
  try {
    folder = await open(path, 'r');
    await folder.sync();
  } catch (refused) {
    if (!hasCode(refused, ['EISDIR', 'EPERM', 'EINVAL', 'EACCES'])) throw refused;
  } finally {
    await folder?.close();
  }
}

const isMissing = (refused: unknown): boolean => hasCode(refused, ['ENOENT']);

const hasCode = (refused: unknown, codes: readonly string[]): boolean =>
  refused instanceof Error && 'code' in refused && codes.includes(String(refused.code));
