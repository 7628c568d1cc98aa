import { chmod, copyFile, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { inbox } from '../../src/commands/inbox.ts';
import { openBuilders } from '../../src/commands/inbox-builders.ts';
import { openInbox } from '../../src/inbox/index.ts';
import { machine } from '../../src/machine.ts';
import { manifestSchema } from '../../src/render/packet.ts';
import { PACKET_FILES } from '../support/packet-folder.ts';

let root: string;
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'inbox-'));
});
afterAll(() => rm(root, { recursive: true, force: true }));

const demo = new URL('../../fixtures/demo/small.xlsx', import.meta.url).pathname;

/** Looks at the folder until nothing is left in it. */
async function fileAll(): Promise<void> {
  const inbox = await openInbox(root, machine, openBuilders(1, undefined), () => undefined);
  do {
    await inbox.poll();
    await inbox.settled();
  } while (inbox.waiting().length > 0);
  await inbox.close();
}

async function openingMade(from: string, to: string, cell: string, text: string): Promise<void> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.readFile(from);
  const sheet = book.getWorksheet('Cabinets');
  if (sheet !== undefined) sheet.getCell(cell).value = text;
  await book.xlsx.writeFile(to);
}

const manifest = async (folder: string) =>
  manifestSchema.parse(JSON.parse(await readFile(join(root, 'packets', 'D-001', folder, 'manifest.json'), 'utf8')));

it('a real workbook is built, comes back marked, and is built anew as the next revision once it is mended', async () => {
  await copyFile(demo, join(root, 'cupboard.xlsx'));
  await fileAll();
  expect((await readdir(join(root, 'packets', 'D-001', 'A'))).sort()).toEqual([
    'cupboard.xlsx',
    'filed.json',
    ...PACKET_FILES,
  ]);

  await openingMade(demo, join(root, 'cupboard.xlsx'), 'C2', 'wide');
  await writeFile(join(root, 'list.csv'), 'Cabinet,W,H,Hinge\nB1,14 3/8,x,left\n');
  await fileAll();
  const [cupboard = '', list = ''] = (await readdir(join(root, 'to-mend'))).sort();
  expect((await readdir(join(root, 'to-mend', list))).sort()).toEqual(['filed.json', 'list to mend.xlsx', 'list.csv']);

  // The very copy that came back, with the marked cell mended, is dropped again.
  await openingMade(join(root, 'to-mend', cupboard, 'cupboard to mend.xlsx'), join(root, 'mended.xlsx'), 'C2', '15');
  await fileAll();
  const [before, after] = [await manifest('A'), await manifest('B')];
  expect([before.job.revision, after.job.revision]).toEqual(['A', 'B']);
  const widths = (of: typeof before) =>
    of.doors.filter(({ cabinet, label }) => `${cabinet}${label}` === 'L1A').map(({ width }) => width.text);
  expect([widths(before), widths(after)]).toEqual([['15 3/8'], ['16']]);
  expect(await readFile(join(root, 'inbox.html'), 'utf8')).toContain('packets/D-001/B/packet.pdf');
}, 180_000);

it('the command files what is there, runs the shop’s program after it, and ends; a second one is refused', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'inbox-'));
  try {
    const notify = join(folder, 'notify');
    await writeFile(notify, `#!/bin/sh\nprintf '%s %s' "$1" "$2" > "${join(folder, 'notified')}"\n`);
    await chmod(notify, 0o755);
    await writeFile(join(folder, 'list.csv'), 'Cabinet,W,H,Hinge\nB1,14 3/8,x,left\n');
    expect(await inbox(folder, { once: true, poll: 0.05, json: true, notify })).toBe(0);
    await vi.waitFor(
      async () => expect(await readFile(join(folder, 'notified'), 'utf8')).toMatch(/^to-mend .*to-mend.list-/),
      20_000,
    );

    const holder = await openInbox(folder, machine, openBuilders(1, undefined), () => undefined);
    expect(await inbox(folder, { once: true, poll: 0.05 })).toBe(2);
    await holder.close();
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}, 180_000);
