import { createHash } from 'node:crypto';
import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import * as z from 'zod';
import type { Host } from '../host.ts';
import { revisionAfter } from './revisions.ts';

/** What was done with a workbook. It lies beside what was made of it, so that the folders alone tell all that is filed. */
export const RECORD = 'filed.json';

const record = z.object({
  kind: z.enum(['packet', 'to-mend']),
  job: z.string(),
  revision: z.string(),
  /** The workbook's name and digest. */
  name: z.string(),
  inputHash: z.string(),
  filedAt: z.string(),
  doors: z.int(),
  parts: z.int(),
  pages: z.int(),
  warnings: z.int(),
  findings: z.array(z.string()).readonly(),
});

export type FiledRecord = Readonly<z.infer<typeof record>>;
export type Filed = FiledRecord & { readonly folder: string };

/** All that has been filed in an inbox's folders. */
export type Shelf = {
  readonly all: () => readonly Filed[];
  readonly find: (inputHash: string) => Filed | undefined;
  readonly add: (filed: Filed) => void;
  /** The last revision of a job, where there is one. */
  readonly lastOf: (job: string) => { readonly letter: string; readonly folder: string } | undefined;
  /** The folder and letter of a job's next revision. */
  readonly nextOf: (job: string) => Promise<{ readonly letter: string; readonly folder: string }>;
};

export const digestOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Reads what is filed under `packets/<job>/<revision>` and `to-mend/<name>`, and clears away what was never finished. */
export async function openShelf(root: string, host: Pick<Host, 'read'>): Promise<Shelf> {
  await clearAway(root);
  const filed = new Map<string, Filed>();
  const packets = join(root, 'packets');
  const jobFolders = await foldersIn(packets);
  const folders = [
    ...(await Promise.all(jobFolders.map(foldersIn))).flat(),
    ...(await foldersIn(join(root, 'to-mend'))),
  ];
  for (const folder of folders) {
    const found = await readRecord(folder, host);
    if (found !== undefined) filed.set(found.inputHash, { ...found, folder });
  }
  const ofJob = (job: string) => [...filed.values()].filter(each => each.kind === 'packet' && sameJob(each.job, job));
  return {
    all: () => [...filed.values()],
    find: inputHash => filed.get(inputHash),
    add: each => void filed.set(each.inputHash, each),
    lastOf: job => {
      const last = ofJob(job).reduce<Filed | undefined>(
        (best, each) => (best === undefined || isLater(each, best) ? each : best),
        undefined,
      );
      return last === undefined ? undefined : { letter: last.revision, folder: last.folder };
    },
    nextOf: async job => {
      const names = (await foldersIn(packets)).map(folder => nameOf(folder));
      // Two ways of writing one number would be one folder on some machines.
      const folder = join(packets, names.find(name => sameJob(name, job)) ?? job);
      const taken = (await foldersIn(folder)).map(each => nameOf(each));
      const letter = revisionAfter(taken);
      return { letter, folder: join(folder, letter) };
    },
  };
}

const isLater = (one: Filed, other: Filed): boolean =>
  one.revision.length > other.revision.length ||
  (one.revision.length === other.revision.length && one.revision > other.revision);

const sameJob = (one: string, other: string): boolean =>
  one.normalize('NFC').toLowerCase() === other.normalize('NFC').toLowerCase();

const nameOf = (folder: string): string =>
  folder.slice(Math.max(folder.lastIndexOf('/'), folder.lastIndexOf('\\')) + 1);

async function readRecord(folder: string, host: Pick<Host, 'read'>): Promise<FiledRecord | undefined> {
  try {
    return record.parse(JSON.parse(new TextDecoder().decode(await host.read(join(folder, RECORD)))));
  } catch {
    // A folder that somebody put there, or one of an earlier version: it is left alone.
    return undefined;
  }
}

/** Status pages that a crash left half-written. Anybody else's half files are left alone. */
async function clearAway(root: string): Promise<void> {
  for (const name of await readdir(root))
    if (/^\.inbox\.html\.[-0-9a-f]+\.part$/.test(name)) await rm(join(root, name), { force: true });
}

/** Folders under their final names; those that a crash left half-written have names of their own, and go. */
async function foldersIn(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  for (const { name } of entries)
    if (/^\..*\.part$/.test(name)) await rm(join(folder, name), { recursive: true, force: true });
  return entries
    .filter(entry => entry.isDirectory() && !entry.name.startsWith('.'))
    .map(entry => join(folder, entry.name))
    .sort();
}
