import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { Host } from '../host.ts';
import { type Manifest, manifestSchema } from '../render/packet.ts';
import { type Shelf, shelve } from './floor/shelf.ts';

/** The packets that are there now. `look` takes in what came or went since. */
export type PacketFolders = {
  readonly shelf: () => Shelf;
  readonly problems: () => readonly PacketProblem[];
  readonly look: () => Promise<void>;
};

export type PacketProblem = { readonly file: string; readonly what: string };

/** A manifest of 10,000 doors has some 60 MB. */
const MANIFEST_BYTES_MAX = 200_000_000;

type Read = { readonly stamp: string; readonly manifest: Manifest | undefined; readonly problem: string };

/**
 * Packets of `folders` (one packet each), and of `root` as the inbox files them: `root/<job>/<revision>`. The last good
 * manifest of a file stays until the file is gone.
 */
export function openPacketFolders(
  folders: readonly string[],
  root: string | undefined,
  host: Pick<Host, 'read'>,
): PacketFolders {
  const read = new Map<string, Read>();
  let shelf = shelve([]);
  const look = async (): Promise<void> => {
    const files = [...folders, ...(root === undefined ? [] : await revisionFolders(root))].map(folder =>
      join(folder, 'manifest.json'),
    );
    let changed = false;
    for (const file of files) changed = (await lookAt(file, read, host)) || changed;
    for (const file of [...read.keys()]) if (!files.includes(file)) changed = read.delete(file) || changed;
    if (changed) shelf = shelve([...read.values()].flatMap(each => each.manifest ?? []));
  };
  return {
    shelf: () => shelf,
    problems: () =>
      [...read].filter(([, { problem }]) => problem !== '').map(([file, { problem }]) => ({ file, what: problem })),
    look,
  };
}

async function lookAt(file: string, read: Map<string, Read>, host: Pick<Host, 'read'>): Promise<boolean> {
  const found = await stat(file).catch(() => undefined);
  if (found === undefined) return read.delete(file);
  const stamp = `${found.size} ${found.mtimeMs} ${found.ino}`;
  const before = read.get(file);
  if (before?.stamp === stamp) return false;
  const { manifest, problem } =
    found.size > MANIFEST_BYTES_MAX ? { manifest: undefined, problem: 'too large' } : await readManifest(file, host);
  read.set(file, { stamp, manifest: manifest ?? before?.manifest, problem });
  return true;
}

async function readManifest(
  file: string,
  host: Pick<Host, 'read'>,
): Promise<{ readonly manifest: Manifest | undefined; readonly problem: string }> {
  try {
    const found = manifestSchema.safeParse(JSON.parse(new TextDecoder().decode(await host.read(file))));
    if (found.success) return { manifest: found.data, problem: '' };
    const [issue] = found.error.issues;
    return { manifest: undefined, problem: `${issue?.path.join('.') ?? ''}: ${issue?.message ?? ''}` };
  } catch (refused) {
    return { manifest: undefined, problem: refused instanceof Error ? refused.message : String(refused) };
  }
}

async function revisionFolders(root: string): Promise<readonly string[]> {
  const jobs = await foldersIn(root);
  return (await Promise.all(jobs.map(foldersIn))).flat();
}

async function foldersIn(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  return entries
    .filter(entry => entry.isDirectory() && !entry.name.startsWith('.'))
    .map(entry => join(folder, entry.name))
    .sort();
}
