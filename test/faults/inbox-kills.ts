import { type ChildProcess, fork } from 'node:child_process';
import { mkdtemp, open, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type Chance, chanceOf } from './mutations.ts';

export type KillOutcome = { readonly tried: number; readonly lost: readonly string[]; readonly more: string };

/**
 * Drops twenty workbooks while the inbox is killed again and again at random instants, and lets it finish once. Every
 * workbook must then be filed exactly once, whole, as in a run that nobody disturbed.
 */
export async function killInbox(kills: number, seed: number): Promise<KillOutcome> {
  const [calm, wild] = [await mkdtemp(join(tmpdir(), 'calm-')), await mkdtemp(join(tmpdir(), 'wild-'))];
  try {
    for (const [name, written] of WORKBOOKS) await writeFile(join(calm, name), written);
    await runOnce(calm);
    await disturb(wild, kills, chanceOf(seed));
    await runOnce(wild);
    const [expected, found] = [await filedIn(calm), await filedIn(wild)];
    const lost = [
      ...expected.filter(each => !found.includes(each)).map(each => `lost: ${each}`),
      ...found.filter(each => !expected.includes(each)).map(each => `too much: ${each}`),
    ];
    return { tried: kills, lost, more: `${WORKBOOKS.length} workbooks, ${found.length} files in the end` };
  } finally {
    for (const folder of [calm, wild]) await rm(folder, { recursive: true, force: true });
  }
}

/** Packets, workbooks to mend, no workbooks at all, and two that are dropped under a second name as well. */
const WORKBOOKS: readonly (readonly [name: string, written: string])[] = [
  ...Array.from(
    { length: 14 },
    (_, index) => [`w${index}.csv`, `J${index} workbook ${'x'.repeat(index * 500)}`] as const,
  ),
  ...Array.from({ length: 4 }, (_, index) => [`m${index}.xlsx`, `M${index} bad`] as const),
  ['noise.xlsx', 'noise'],
  ['same.csv', 'J3 workbook '.padEnd(12 + 1500, 'x')],
];

async function disturb(folder: string, kills: number, chance: Chance): Promise<void> {
  const waiting = [...WORKBOOKS];
  for (let kill = 0; kill < kills; kill++) {
    const child = await startInbox(folder);
    // The more kills are still to come, the fewer workbooks are dropped before each.
    const now = waiting.splice(0, Math.ceil(waiting.length / Math.max(kills - kill, 1)) + (chance(3) === 0 ? 1 : 0));
    for (const [name, written] of now) await (chance(3) === 0 ? copySlowly : writeFile)(join(folder, name), written);
    await sleep(chance(60));
    await ended(child, 'SIGKILL');
  }
  for (const [name, written] of waiting) await writeFile(join(folder, name), written);
}

/** In two halves with a rest between them, the first of which may be killed over. */
async function copySlowly(path: string, written: string): Promise<void> {
  const file = await open(path, 'w');
  await file.write(written.slice(0, Math.floor(written.length / 2)));
  await sleep(3);
  await file.write(written.slice(Math.floor(written.length / 2)));
  await file.close();
}

const CHILD = fileURLToPath(new URL('./inbox-child.ts', import.meta.url));
const TYPESCRIPT = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;

async function startInbox(folder: string, mode = ''): Promise<ChildProcess> {
  const child = fork(CHILD, [folder, mode], {
    execArgv: ['--import', TYPESCRIPT],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  await new Promise((resolve, reject) => {
    child.once('message', resolve);
    child.once('exit', code => reject(new Error(`the inbox did not open: ${code}`)));
  });
  return child;
}

async function runOnce(folder: string): Promise<void> {
  await ended(await startInbox(folder, 'once'));
}

const ended = (child: ChildProcess, signal?: NodeJS.Signals): Promise<void> =>
  new Promise(resolve => {
    if (child.exitCode !== null || child.signalCode !== null) return resolve();
    child.once('exit', () => resolve());
    if (signal !== undefined) child.kill(signal);
  });

/**
 * What is filed, a line for each file: where, and what is in it. Times are left out, and so is which of two names a
 * workbook that was dropped twice was filed under.
 */
async function filedIn(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter(entry => entry.isFile() && entry.name !== 'inbox.html');
  const lines = await Promise.all(
    files.map(async ({ parentPath, name }) => {
      const place = parentPath.slice(folder.length).replace(/^.(to-mend).*/, '$1');
      const written = await readFile(join(parentPath, name), 'utf8');
      if (name === 'filed.json') return `${place} ${JSON.stringify({ ...JSON.parse(written), filedAt: '', name: '' })}`;
      return `${place} ${isWorkbook(name) ? 'workbook' : name} ${written}`;
    }),
  );
  return lines.sort();
}

const isWorkbook = (name: string): boolean => WORKBOOKS.some(([each]) => each === name);
