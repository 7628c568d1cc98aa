import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { PROGRAM } from '../support/built-program.ts';
import { stilebook } from '../support/stilebook.ts';

const folder = mkdtempSync(join(tmpdir(), 'stilebook-check-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const put = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};

describe('stilebook check', () => {
  it('finds nothing to mend in the demo kitchen', () => {
    const { status, out, told } = stilebook('check', 'fixtures/demo/kitchen.xlsx');
    expect(status, told).toBe(0);
    expect(out).toBe('fixtures/demo/kitchen.xlsx is ready to build.\n');
  });

  it('tells every problem of a list of openings, at its cell, with how to mend it', () => {
    const list = put(
      'list.csv',
      'Cabinet,Opening width,Opening height,Hinge side\nB1,14 x,30,left\nB2,14,0,left\nB3,14,30,\n',
    );
    const { status, out, told } = stilebook('check', list);
    expect(status).toBe(1);
    expect(out).toBe(`${list}: 3 problems to mend.\n`);
    expect(told).toMatch(/B2.*14 x/);
    expect(told).toMatch(/C3/);
    expect(told).toMatch(/D4/);
  });

  it('tells it as data', () => {
    const list = put('list.csv', 'Cabinet,Opening width,Opening height,Hinge side\nB1,14 x,30,left\n');
    const { status, out } = stilebook('check', list, '--json');
    expect(status).toBe(1);
    const { sound, diagnostics } = JSON.parse(out);
    expect(sound).toBe(false);
    expect(diagnostics[0]).toMatchObject({
      severity: 'error',
      code: 'length-unreadable',
      at: expect.stringMatching(/!B2$/),
    });
  });
});

describe('exit codes', () => {
  it.each([
    [['check', 'no-such-file.xlsx'], 2, 'there is no'],
    [['check', 'src'], 3, 'is a folder'],
    [['chek', 'x'], 2, 'unknown command'],
    [['check'], 2, 'missing required argument'],
    [['--version'], 0, ''],
    [['--help'], 0, ''],
  ] as const)('%j ends with %d', (words, status, told) => {
    const ran = stilebook(...words);
    expect(ran.status).toBe(status);
    expect(ran.told).toContain(told);
    expect(ran.told).not.toMatch(/\n\s+at /); // never a stack trace
  });

  it('are not changed by a reader who goes away', async () => {
    const list = put('sound.csv', 'Cabinet,Opening width,Opening height,Hinge side\nB1,14,30,left\n');
    const child = spawn(process.execPath, [PROGRAM, 'check', list], { stdio: ['ignore', 'pipe', 'pipe'] });
    child.stdout.destroy();
    let told = '';
    child.stderr.on('data', (text: Buffer) => {
      told += text.toString();
    });
    const [status] = (await once(child, 'close')) as [number | null];
    expect({ status, trace: /\n\s+at /.test(told) }).toEqual({ status: 0, trace: false });
  });
});
