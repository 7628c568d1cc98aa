import { link, mkdir, mkdtemp, readdir, readFile, rename, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Host } from '../../src/host.ts';
import { type Inbox, openInbox } from '../../src/inbox/index.ts';
import type { News, Workbooks } from '../../src/inbox/ports.ts';
import { machine } from '../../src/machine.ts';
import { plainWorkbooks } from '../support/plain-workbooks.ts';

let root: string;
let news: string[];
let seconds = 0;
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'inbox-'));
  news = [];
  seconds = 0;
});
afterEach(() => rm(root, { recursive: true, force: true }));

const drop = (name: string, written: string): Promise<void> => writeFile(join(root, name), written);

/** A clock that goes a second at each look, so that what is filed later is later. */
const ticking = (host: Host = machine): Host => ({
  ...host,
  now: () => new Date(Date.UTC(2026, 0, 5) + 1000 * seconds++),
});

const start = (host: Host = ticking(), workbooks: Workbooks = plainWorkbooks()): Promise<Inbox> =>
  openInbox(root, host, workbooks, told => news.push(printed(told)));

function printed(told: News): string {
  switch (told.kind) {
    case 'packet':
      return `${told.name} is ${told.folder}`;
    case 'to-mend':
      return `${told.name} is to mend`;
    case 'known':
      return `${told.name} is known in ${told.folder}`;
    case 'failed':
      return `${told.name} failed: ${told.reason}`;
    case 'passed-over':
      return `${told.name} is passed over`;
    case 'folder-there':
      return 'the folder is there';
    case 'folder-gone':
      return 'the folder is gone';
  }
}

/** Looks at the folder as often as it takes, and ends. */
async function work(inbox: Inbox, polls = 6): Promise<void> {
  for (let count = 0; count < polls; count++) {
    await inbox.poll();
    await inbox.settled();
  }
}

async function day(workbooks?: Workbooks): Promise<void> {
  const inbox = await start(ticking(), workbooks);
  await work(inbox);
  await inbox.close();
}

const all = async (): Promise<readonly string[]> =>
  (await readdir(root, { recursive: true, withFileTypes: true }))
    .filter(entry => entry.isFile())
    .map(entry => join(entry.parentPath, entry.name).slice(root.length + 1))
    .filter(path => !path.startsWith('.stilebook/'))
    .sort();

const textOf = async (path: string): Promise<string> => await readFile(join(root, path), 'utf8');

describe('a workbook that is dropped', () => {
  it('is filed with its packet, whole, and gone from the folder', async () => {
    await drop('kitchen.xlsx', 'J1 kitchen');
    await day();
    expect(await all()).toEqual([
      'inbox.html',
      ...['filed.json', 'kitchen.xlsx', 'manifest.json', 'packet.pdf', 'tags.pdf'].map(name => `packets/J1/A/${name}`),
    ]);
    expect(await textOf('packets/J1/A/kitchen.xlsx')).toBe('J1 kitchen');
    expect(news).toEqual(['kitchen.xlsx is packets/J1/A']);
  });

  it('is the next revision of its job when it has changed, and the one before is kept', async () => {
    await drop('a.xlsx', 'J1 first');
    await day();
    await drop('a.xlsx', 'J1 second');
    await day();
    expect(await textOf('packets/J1/B/packet.pdf')).toBe('packet.pdf: packet of J1 second, revision B, since A');
    expect(await textOf('packets/J1/A/packet.pdf')).toContain('J1 first');
  });

  it('is built once, however often and under whatever names it is dropped', async () => {
    await drop('a.xlsx', 'J1 first');
    await drop('b.xlsx', 'J1 first');
    await day();
    await drop('c.xlsx', 'J1 first');
    await day();
    expect(news).toEqual([
      'a.xlsx is packets/J1/A',
      'b.xlsx is known in packets/J1/A',
      'c.xlsx is known in packets/J1/A',
    ]);
    expect((await all()).filter(path => !path.includes('/'))).toEqual(['inbox.html']);
  });

  it('comes back under to-mend with a marked copy where it has something to mend', async () => {
    await drop('a.xlsx', 'J1 bad');
    await day();
    const [folder] = await readdir(join(root, 'to-mend'));
    expect(await textOf(`to-mend/${folder}/a.xlsx`)).toBe('J1 bad');
    expect(await textOf(`to-mend/${folder}/marked.xlsx`)).toBe('marked J1 bad');
    expect(await textOf('inbox.html')).toContain('&lt;J1 bad&gt;');
  });

  it('is told of each time, under one name, too', async () => {
    const inbox = await start();
    for (const written of ['J1 first', 'J1 second', 'J1 first']) {
      await drop('a.xlsx', written);
      await work(inbox);
    }
    await inbox.close();
    expect(news).toEqual(['a.xlsx is packets/J1/A', 'a.xlsx is packets/J1/B', 'a.xlsx is known in packets/J1/A']);
  });

  it('once mended, is no longer listed as to be mended', async () => {
    await drop('a.xlsx', 'J1 bad');
    await day();
    await drop('a to mend.xlsx', 'J1 mended');
    await day();
    expect(await textOf('inbox.html')).not.toContain('J1 bad');
  });

  it('of one job with another is taken in turn, and neither is lost', async () => {
    await drop('a.xlsx', 'J1 one');
    await drop('b.xlsx', 'J1 two');
    await drop('c.xlsx', 'j1 three');
    await day();
    expect(news).toEqual(['a.xlsx is packets/J1/A', 'b.xlsx is packets/J1/B', 'c.xlsx is packets/J1/C']);
  });

  it('that is no workbook comes back at once; one that may not be whole does so when its time is up', async () => {
    await drop('a.xlsx', 'noise');
    await drop('b.xlsx', 'J1 half');
    const inbox = await start();
    await work(inbox, 4);
    expect(news).toEqual(['a.xlsx is to mend']);
    await work(inbox, 70);
    expect(news).toEqual(['a.xlsx is to mend', 'b.xlsx is to mend']);
    await inbox.close();
  });

  it('is read when its slow copy has ended, and never before', async () => {
    await drop('a.xlsx', 'J1 half');
    const inbox = await start();
    await work(inbox, 6);
    await drop('a.xlsx', 'J1 whole');
    await work(inbox, 4);
    await inbox.close();
    expect(await textOf('packets/J1/A/a.xlsx')).toBe('J1 whole');
  });

  it('that is saved anew while it is built is kept, and built anew', async () => {
    await drop('a.xlsx', 'J1 old');
    const slow: Workbooks = {
      ...plainWorkbooks(),
      build: async order => {
        if (order.revision === 'A') await drop('a.xlsx', 'J1 new');
        return plainWorkbooks().build(order);
      },
    };
    const inbox = await start(ticking(), slow);
    await work(inbox, 8);
    await inbox.close();
    expect(await textOf('packets/J1/A/a.xlsx')).toBe('J1 old');
    expect(await textOf('packets/J1/B/a.xlsx')).toBe('J1 new');
  });
});

describe('names and files of all sorts', () => {
  it.each([
    'with spaces.xlsx',
    '-rf.xlsx',
    '🪚 Küche.xlsx',
    `${'x'.repeat(250)}.xlsx`,
    `${'木'.repeat(83)}.xlsx`,
    '...dots.csv',
    'packet.pdf.xlsx',
    'UPPER.XLSX',
    "quote's & <tags>.csv",
  ])('%s', async name => {
    // Hidden names are an editor's own.
    const isHidden = name.startsWith('.');
    await drop(name, 'J1 first');
    await drop(`b${name.slice(1)}`, 'J2 bad');
    await day();
    const filed = await all();
    expect(filed.includes(`packets/J1/A/${name}`)).toBe(!isHidden);
    expect(filed.filter(path => path.startsWith('to-mend/'))).toHaveLength(3);
  });

  it('a workbook with the name of a packet’s file is filed beside it', async () => {
    await drop('manifest.json.xlsx', 'J1 first');
    await drop('parts.csv', 'J2 first');
    await day({
      ...plainWorkbooks(),
      build: async order => {
        const result = await plainWorkbooks().build(order);
        return result.kind === 'packet'
          ? { ...result, files: [...result.files, { name: 'parts.csv', bytes: new Uint8Array() }] }
          : result;
      },
    });
    expect(await textOf('packets/J2/A/workbook parts.csv')).toBe('J2 first');
  });

  it('passes over links, folders, editors’ files, and spreadsheets of other kinds', async () => {
    const elsewhere = await mkdtemp(join(tmpdir(), 'elsewhere-'));
    await writeFile(join(elsewhere, 'secret.xlsx'), 'J9 secret');
    await symlink(join(elsewhere, 'secret.xlsx'), join(root, 'link.xlsx'));
    await symlink('/dev/zero', join(root, 'endless.csv'));
    await mkdir(join(root, 'folder.xlsx'));
    for (const name of ['~$a.xlsx', '.~lock.a.xlsx#', '._a.xlsx', 'a.xlsx.tmp', 'a.xlsx.part', 'photo.jpg'])
      await drop(name, 'J9 x');
    await drop('old.xls', 'x');
    await day();
    await rm(elsewhere, { recursive: true });
    expect(news.sort()).toEqual(['endless.csv is passed over', 'link.xlsx is passed over', 'old.xls is passed over']);
    expect((await all()).filter(path => path.startsWith('packets'))).toEqual([]);
  });

  it('takes a hundred at once', async () => {
    const names = Array.from({ length: 120 }, (_, index) => `f${index}.csv`);
    await Promise.all(names.map((name, index) => drop(name, `J${index} x`)));
    await day();
    expect(news).toHaveLength(120);
    expect(await readdir(join(root, 'packets'))).toHaveLength(120);
  });

  it('a job’s folder is found however its number is written', async () => {
    await drop('a.csv', 'Job-É x');
    await day();
    await drop('b.csv', `${'job-É'.normalize('NFD')} y`);
    await day();
    expect(await readdir(join(root, 'packets'))).toEqual(['Job-É']);
    expect(news[1]).toBe('b.csv is packets/Job-É/B');
  });
});

describe('when the machine refuses', () => {
  const full = (times: number): Host => {
    let left = times;
    return ticking({
      ...machine,
      writeFolder: async (path, files) => {
        left -= 1;
        if (left >= 0) throw Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });
        await machine.writeFolder(path, files);
      },
    });
  };

  it('a full disk loses nothing, shows nothing half, and is tried again', async () => {
    await drop('a.xlsx', 'J1 first');
    const inbox = await start(full(2));
    await work(inbox, 4);
    expect(await all()).toEqual(['a.xlsx', 'inbox.html']);
    expect(await textOf('inbox.html')).toContain('it will be tried again');
    await work(inbox, 60);
    await inbox.close();
    expect(news).toEqual(['a.xlsx failed: no space left on device', 'a.xlsx is packets/J1/A']);
  });

  it('a folder that goes away for a while is told once', async () => {
    const inbox = await start();
    await rename(root, `${root}-away`);
    await work(inbox, 5);
    await rename(`${root}-away`, root);
    await drop('a.xlsx', 'J1 first');
    await work(inbox, 5);
    await inbox.close();
    expect(news).toEqual(['the folder is gone', 'the folder is there', 'a.xlsx is packets/J1/A']);
  });

  it('what a crash left between the folder and its place comes back or goes', async () => {
    await drop('a.xlsx', 'J1 first');
    await day();
    await mkdir(join(root, '.stilebook', 'taken'), { recursive: true });
    await writeFile(join(root, '.stilebook', 'taken', 'x.xlsx'), 'J1 first');
    await writeFile(join(root, '.stilebook', 'taken', 'y.xlsx'), 'J2 never filed');
    await mkdir(join(root, 'packets', 'J1', '.B.1-2.part'));
    await day();
    expect(await textOf('packets/J2/A/found again.xlsx')).toBe('J2 never filed');
    expect(await readdir(join(root, '.stilebook', 'taken'))).toEqual([]);
    expect(await readdir(join(root, 'packets', 'J1'))).toEqual(['A']);
  });
});

describe('one inbox to a folder', () => {
  it('a second one is refused while the first lives, and not after it', async () => {
    const first = await start();
    await expect(start()).rejects.toThrow('watched already');
    await first.close();
    await (await start()).close();
  });

  it.each([
    ['of a process that is gone', { id: 'x', pid: 2 ** 22 + 1, started: '', host: 'this' }],
    [
      'of another process with the number of one that is gone',
      { id: 'x', pid: process.pid, started: '1 another-boot', host: 'this' },
    ],
    ['of another machine that was not renewed', { id: 'x', pid: 1, started: '', host: 'elsewhere' }],
  ])('a lock %s is taken over', async (_, holder) => {
    const { hostname } = await import('node:os');
    await mkdir(join(root, '.stilebook'), { recursive: true });
    const text = JSON.stringify({ ...holder, host: holder.host === 'this' ? hostname() : holder.host });
    await writeFile(join(root, '.stilebook', 'lock'), text);
    const inbox = await start({ ...machine, now: () => new Date(Date.now() + 3_600_000) });
    await inbox.close();
  });

  it('a lock of another machine that was renewed lately stands; so does one by a name of ours', async () => {
    await mkdir(join(root, '.stilebook'), { recursive: true });
    await writeFile(
      join(root, '.stilebook', 'lock'),
      JSON.stringify({ id: 'x', pid: 1, started: '', host: 'elsewhere' }),
    );
    await expect(start({ ...machine })).rejects.toThrow('watched already');
    await rm(join(root, '.stilebook', 'lock'));
    await link(process.execPath, join(root, '.stilebook', 'lock')).catch(() =>
      writeFile(join(root, '.stilebook', 'lock'), 'x'),
    );
    await (await start()).close();
  });

  it('of ten that start at once over a dead lock, one has it', async () => {
    await mkdir(join(root, '.stilebook'), { recursive: true });
    await writeFile(
      join(root, '.stilebook', 'lock'),
      JSON.stringify({ id: 'dead', pid: 2 ** 22 + 1, started: '', host: (await import('node:os')).hostname() }),
    );
    const tries = await Promise.allSettled(Array.from({ length: 10 }, () => start()));
    const open = tries.flatMap(each => (each.status === 'fulfilled' ? [each.value] : []));
    expect(open).toHaveLength(1);
    await open[0]?.close();
  });
});
