import { randomUUID } from 'node:crypto';
import { lstat, mkdir, open, readdir, readFile, rename, rm } from 'node:fs/promises';
import { extname, join, parse } from 'node:path';
import { digestOf } from './filed.ts';
import type { Stamp } from './step.ts';

/** A workbook that lies in the folder. */
export type Dropped = { readonly name: string; readonly stamp: Stamp };
/** Something else that does, and why it is not read. */
export type PassedOver = { readonly name: string; readonly reason: string };

const READ = new Set(['.xlsx', '.csv']);
const SPREADSHEETS = new Set(['.xls', '.xlsm', '.xlsb', '.ods', '.numbers', '.tsv']);

/** Larger files are no workbooks; they are read so far, and refused for it. */
const BYTES_MAX = 64_000_000;

/** Lists what was dropped, what was saved first first. Links are not followed: they may lead anywhere. */
export async function listDropped(
  folder: string,
): Promise<{ readonly dropped: readonly Dropped[]; readonly passedOver: readonly PassedOver[] }> {
  const dropped: Dropped[] = [];
  const passedOver: PassedOver[] = [];
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    const { name } = entry;
    const ending = extname(name).toLowerCase();
    if (isOfAnEditor(name) || entry.isDirectory()) continue;
    if (SPREADSHEETS.has(ending)) passedOver.push({ name, reason: 'save it as .xlsx' });
    if (!READ.has(ending)) continue;
    if (!entry.isFile()) passedOver.push({ name, reason: 'a link or device is not read; drop the file itself' });
    else {
      const stamp = await stampOf(join(folder, name));
      if (stamp !== undefined) dropped.push({ name, stamp });
    }
  }
  dropped.sort((a, b) => savedAt(a) - savedAt(b) || (a.name < b.name ? -1 : 1));
  return { dropped, passedOver };
}

const savedAt = ({ stamp }: Dropped): number => Number(stamp.split(' ')[1]);

/** Names that spreadsheet programs and copying programs give to what is not a finished file. */
const isOfAnEditor = (name: string): boolean => /^(\.|~\$)|[~#]$|\.(tmp|part|crdownload|download)$/i.test(name);

export async function stampOf(path: string): Promise<Stamp | undefined> {
  const found = await lstat(path).catch(() => undefined);
  return found?.isFile() ? `${found.size} ${found.mtimeMs} ${found.ino}` : undefined;
}

/** The file's bytes; undefined where it is another file than the stamp says, before or after it was read. */
export async function readDropped(path: string, stamp: Stamp): Promise<Uint8Array | undefined> {
  if ((await stampOf(path)) !== stamp) return undefined;
  const file = await open(path, 'r');
  try {
    const { size } = await file.stat();
    const bytes = new Uint8Array(Math.min(size, BYTES_MAX));
    const { bytesRead } = await file.read(bytes, 0, bytes.length, 0);
    return bytesRead === bytes.length && (await stampOf(path)) === stamp ? bytes : undefined;
  } finally {
    await file.close();
  }
}

const takenIn = (folder: string): string => join(folder, '.stilebook', 'taken');

/**
 * Takes a file out of the folder once it is filed. It is moved first and looked at then: what was saved under its name
 * in the meantime is put back.
 */
export async function takeAway(folder: string, name: string, inputHash: string): Promise<void> {
  const taken = join(takenIn(folder), randomUUID() + extname(name));
  await mkdir(takenIn(folder), { recursive: true });
  await rename(join(folder, name), taken);
  if (digestOf(await readFile(taken)) === inputHash) await rm(taken);
  else await putBack(folder, taken, name);
}

/** What a crash left between the folder and its place: filed ones go, others come back. */
export async function settleTaken(folder: string, isFiled: (inputHash: string) => boolean): Promise<void> {
  for (const name of await readdir(takenIn(folder)).catch(() => [])) {
    const taken = join(takenIn(folder), name);
    if (isFiled(digestOf(await readFile(taken)))) await rm(taken);
    else await putBack(folder, taken, `found again${extname(name)}`);
  }
}

/** Under a name that is free, so that nothing is written over. */
async function putBack(folder: string, taken: string, name: string): Promise<void> {
  const { name: stem, ext } = parse(name);
  for (let count = 1; ; count++) {
    const free = join(folder, count === 1 ? name : `${stem.slice(0, 60)} ${count}${ext}`);
    if ((await lstat(free).catch(() => undefined)) === undefined) return rename(taken, free);
  }
}
