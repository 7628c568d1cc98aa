import { execFileSync } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openInbox } from '../../src/inbox/index.ts';
import { machine } from '../../src/machine.ts';
import { plainWorkbooks } from '../support/plain-workbooks.ts';
import type { KillOutcome } from './inbox-kills.ts';

/** A disk of 1 MB that fills up while workbooks are filed on it, and is emptied again. Needs the right to mount one. */
export async function fillDisk(): Promise<KillOutcome> {
  const root = await mkdtemp(join(tmpdir(), 'small-disk-'));
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', root], { stdio: 'ignore' });
  } catch {
    await rm(root, { recursive: true });
    return { tried: 0, lost: [], more: 'no right to mount a small disk: not tried' };
  }
  try {
    return await fillAndEmpty(root);
  } finally {
    execFileSync('umount', [root]);
    await rm(root, { recursive: true });
  }
}

const WORKBOOK = `J1 ${'x'.repeat(60_000)}`;

/** From a disk with room for nothing to one with room for almost all of it, 20 KB more each time. */
async function fillAndEmpty(root: string): Promise<KillOutcome> {
  const lost: string[] = [];
  let tried = 0;
  for (let room = 0; room < 200_000; room += 20_000) {
    await writeFile(join(root, 'a.csv'), WORKBOOK);
    await writeFile(join(root, '.filler'), new Uint8Array((await freeOn(root)) - room));
    await lookFor(root, 4);
    const filed = await packetIn(root);
    const waits = await stat(join(root, 'a.csv')).then(
      () => true,
      () => false,
    );
    if (filed === waits) lost.push(`room ${room}: ${filed ? 'filed and left' : 'neither filed nor left'}`);
    await rm(join(root, '.filler'));
    await lookFor(root, 24);
    if (!(await packetIn(root))) lost.push(`room ${room}: not filed once there was room`);
    for (const name of await readdir(root)) await rm(join(root, name), { recursive: true });
    tried += 1;
  }
  return { tried, lost, more: 'a full disk at ten fillings, emptied again' };
}

async function lookFor(root: string, polls: number): Promise<void> {
  const inbox = await openInbox(root, machine, plainWorkbooks(), () => undefined).catch(() => undefined);
  for (let poll = 0; poll < polls; poll++) {
    await inbox?.poll();
    await inbox?.settled();
  }
  await inbox?.close();
}

/** Whole, or not there at all. */
async function packetIn(root: string): Promise<boolean> {
  const folder = join(root, 'packets', 'J1', 'A');
  const names = await readdir(folder).catch(() => []);
  if (names.length === 0) return false;
  const whole = names.length === 5 && (await readFile(join(folder, 'a.csv'), 'utf8')) === WORKBOOK;
  if (!whole) throw new Error(`a packet of ${names.join(', ')}`);
  return true;
}

const freeOn = async (root: string): Promise<number> => {
  const blocks = execFileSync('df', ['--output=avail', '-B1', root], { encoding: 'utf8' });
  return Number(blocks.trim().split('\n').at(-1));
};
