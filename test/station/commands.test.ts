import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PROGRAM } from '../support/built-program.ts';
import { aScan } from '../support/day.ts';
import { aManifest } from '../support/manifest.ts';
import { aStation, type TestStation } from '../support/station.ts';

const project = new URL('../..', import.meta.url).pathname;

type Ran = { readonly status: number; readonly out: string; readonly told: string };

/** Not waited for in one go: the station that it asks runs in this very process. */
const stilebook = (...words: readonly string[]): Promise<Ran> =>
  new Promise(ran => {
    const child = execFile(process.execPath, [PROGRAM, ...words], { cwd: project }, (_, out, told) =>
      ran({ status: child.exitCode ?? -1, out, told }),
    );
  });

let station: TestStation;
let other: string;
beforeAll(async () => {
  station = await aStation([aManifest()]);
  other = await mkdtemp(join(tmpdir(), 'other-'));
  const body = JSON.stringify(aScan('one', { code: 'B1.A.1L-SL' }));
  await fetch(`${station.address()}/scans`, { method: 'POST', body, headers: { 'content-type': 'application/json' } });
});
afterAll(async () => {
  await station.remove();
  await rm(other, { recursive: true, force: true });
});

const here = () => ['--data', join(station.folder, 'data'), '--shop', 'test'];

describe('the commands about scans', () => {
  it('tell a job’s progress, asked of the station that runs, in words and as data', async () => {
    const [words, data, none] = await Promise.all([
      stilebook('progress', 'K7', ...here()),
      stilebook('progress', 'K7', '--json', ...here()),
      stilebook('progress', 'NONE', ...here()),
    ]);
    expect(words.out).toMatch(/^K7 Harbour Street kitchen, revision A\ndoors 0\/4 {3}steps 1\/112/);
    expect(JSON.parse(data.out)).toMatchObject({ job: 'K7', steps: { done: 1, total: 112 } });
    expect(none).toMatchObject({ status: 2, out: '' });
    expect(none.told).toContain('no packet of job NONE');
  });

  it('copy the ledger of a station that runs, and fill another from it, once', async () => {
    const copy = join(other, 'copy.jsonl');
    expect(await stilebook('ledger', 'backup', copy, ...here())).toMatchObject({ status: 0 });
    expect(await readFile(copy, 'utf8')).toMatch(/"events":1\}\n$/);
    const there = ['--data', join(other, 'data')];
    expect((await stilebook('ledger', 'restore', copy, ...there)).out).toContain(': 1.');
    expect((await stilebook('ledger', 'restore', copy, ...there)).out).toContain(': 0.');
    const table = join(other, 'scans.csv');
    await stilebook('ledger', 'export', table, ...there);
    expect(await readFile(table, 'utf8')).toContain('"crosscut-rough","B1.A.1L-SL"');
  });

  it('refuse to bring scans in under a station that runs, and a copy that is none, in a sentence', async () => {
    const none = join(other, 'none.jsonl');
    await writeFile(none, 'hello\n');
    const [held, bad, missing] = await Promise.all([
      stilebook('ledger', 'restore', none, ...here()),
      stilebook('ledger', 'restore', none, '--data', join(other, 'fresh')),
      stilebook('ledger', 'restore', join(other, 'nowhere.jsonl'), '--data', join(other, 'fresh2')),
    ]);
    expect(held).toMatchObject({ status: 3, out: '' });
    expect(held.told).toContain('in use by a station that is running');
    expect(bad).toMatchObject({ status: 1, out: '' });
    expect(bad.told).toContain('no copy of a ledger. Nothing was brought in.');
    expect(missing.status).toBe(2);
    for (const { told } of [held, bad, missing]) expect(told).not.toMatch(/\n\s+at /);
  });

  it('do not start a second station on one ledger, nor on a port that is none', async () => {
    const [second, port] = await Promise.all([
      stilebook('station', '--port', '0', ...here()),
      stilebook('station', '--port', '70000', ...here()),
    ]);
    expect(second).toMatchObject({ status: 3, out: '' });
    expect(port.status).toBe(2);
  });
});
