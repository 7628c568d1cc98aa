import { execFileSync } from 'node:child_process';
import { access, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openBuilders } from '../../src/commands/inbox-builders.ts';
import { openInbox } from '../../src/inbox/index.ts';
import type { Workbooks } from '../../src/inbox/ports.ts';
import { machine } from '../../src/machine.ts';
import { plainWorkbooks } from '../support/plain-workbooks.ts';
import type { KillOutcome } from './inbox-kills.ts';

/**
 * Small disks that fill up while a workbook is filed on them, and are emptied again: with plain workbooks, and with the
 * demo and its real packet. Needs the right to mount one.
 */
export async function fillDisk(): Promise<KillOutcome> {
  const demo = await readFile(new URL('../../fixtures/demo/small.xlsx', import.meta.url));
  const outcomes = [await onDisk(PLAIN), await onDisk({ ...REAL, written: demo })];
  return {
    tried: outcomes.reduce((sum, { tried }) => sum + tried, 0),
    lost: outcomes.flatMap(({ lost }) => lost),
    more: outcomes.some(({ tried }) => tried === 0)
      ? 'no right to mount a small disk: not tried'
      : 'full disks at ever more room, emptied again',
  };
}

/** A disk, what is dropped on it, and what must be filed of it in the end. */
type Disk = {
  readonly kilobytes: number;
  readonly workbooks: () => Workbooks;
  readonly name: string;
  readonly written: Uint8Array;
  /** Where its packet is filed, and how many files that has. */
  readonly packet: string;
  readonly files: number;
  /** From room for nothing to room for almost all of it, so much more each time. */
  readonly step: number;
  readonly steps: number;
};

const PLAIN: Disk = {
  kilobytes: 1024,
  workbooks: plainWorkbooks,
  name: 'a.csv',
  written: new TextEncoder().encode(`J1 ${'x'.repeat(60_000)}`),
  packet: 'packets/J1/A',
  files: 5,
  step: 20_000,
  steps: 10,
};

const REAL: Omit<Disk, 'written'> = {
  kilobytes: 2048,
  workbooks: () => openBuilders(1, undefined),
  name: 'small.xlsx',
  packet: 'packets/D-001/A',
  files: 7,
  step: 60_000,
  steps: 6,
};

async function onDisk(disk: Disk): Promise<Pick<KillOutcome, 'tried' | 'lost'>> {
  const root = await mkdtemp(join(tmpdir(), 'small-disk-'));
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${disk.kilobytes}k`, 'tmpfs', root], { stdio: 'ignore' });
  } catch {
    await rm(root, { recursive: true });
    return { tried: 0, lost: [] };
  }
  try {
    return await fillAndEmpty(root, disk);
  } finally {
    execFileSync('umount', [root]);
    await rm(root, { recursive: true });
  }
}

async function fillAndEmpty(root: string, disk: Disk): Promise<Pick<KillOutcome, 'tried' | 'lost'>> {
  const lost: string[] = [];
  const workbooks = disk.workbooks();
  for (let step = 0; step < disk.steps; step += 1) {
    const room = step * disk.step;
    await writeFile(join(root, disk.name), disk.written);
    await writeFile(join(root, '.filler'), new Uint8Array((await freeOn(root)) - room));
    await lookFor(root, workbooks, 6);
    const filed = await packetIn(root, disk);
    const waits = await access(join(root, disk.name)).then(
      () => true,
      () => false,
    );
    if (filed === waits)
      lost.push(`${disk.name}, room ${room}: ${filed ? 'filed and left' : 'neither filed nor left'}`);
    await rm(join(root, '.filler'));
    await lookFor(root, workbooks, 24);
    if (!(await packetIn(root, disk))) lost.push(`${disk.name}, room ${room}: not filed once there was room`);
    for (const name of await readdir(root)) await rm(join(root, name), { recursive: true });
  }
  await workbooks.close();
  return { tried: disk.steps, lost };
}

/** An inbox that is opened, looks at its folder a few times, and is closed; its builders stay for the next one. */
async function lookFor(root: string, workbooks: Workbooks, polls: number): Promise<void> {
  const lent = { ...workbooks, close: async () => undefined };
  const inbox = await openInbox(root, machine, lent, () => undefined).catch(() => undefined);
  for (let poll = 0; poll < polls; poll++) {
    await inbox?.poll();
    await inbox?.settled();
  }
  await inbox?.close();
}

/** Whole, or not there at all. */
async function packetIn(root: string, { packet, files, name, written }: Disk): Promise<boolean> {
  const folder = join(root, packet);
  const names = await readdir(folder).catch(() => []);
  if (names.length === 0) return false;
  const whole = names.length === files && (await readFile(join(folder, name))).equals(written);
  if (!whole) throw new Error(`a packet of ${names.join(', ')}`);
  return true;
}

const freeOn = async (root: string): Promise<number> => {
  const blocks = execFileSync('df', ['--output=avail', '-B1', root], { encoding: 'utf8' });
  return Number(blocks.trim().split('\n').at(-1));
};
