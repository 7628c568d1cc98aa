import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { manifestSchema } from '../../src/render/packet.ts';
import { PACKET_FILES } from '../support/packet-folder.ts';
import { stilebook } from '../support/stilebook.ts';

const folder = mkdtempSync(join(tmpdir(), 'stilebook-packet-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const small = 'fixtures/demo/small.xlsx';

describe('stilebook packet', () => {
  it('writes the same folder from the same workbook, byte for byte', () => {
    const [one, two] = ['one', 'two'].map(name => join(folder, name));
    const first = stilebook('packet', small, '--out', one as string);
    const second = stilebook('packet', small, '--out', two as string);
    expect([first.status, second.status], first.told + second.told).toEqual([0, 0]);
    expect(readdirSync(one as string).sort()).toEqual(PACKET_FILES);
    for (const file of PACKET_FILES)
      expect(readFileSync(join(one as string, file)).equals(readFileSync(join(two as string, file))), file).toBe(true);
    expect(readdirSync(folder).sort()).toEqual(['one', 'two']);
  });

  it('says what it made and where', () => {
    const out = join(folder, 'said');
    const ran = stilebook('packet', small, '--out', out, '--json');
    const said = JSON.parse(ran.out);
    const manifest = manifestSchema.parse(JSON.parse(readFileSync(join(out, 'manifest.json'), 'utf8')));
    expect(said).toMatchObject({
      built: true,
      folder: out,
      doors: manifest.doors.length,
      parts: manifest.parts.length,
    });
    expect(said.pages.packet).toBeGreaterThan(0);
    expect(said.boards + said.sheets).toBe(manifest.cutPlans.reduce((sum, plan) => sum + plan.bins, 0));
  });

  it('prints a part of the packet when asked', () => {
    const out = join(folder, 'part');
    const { status, out: said } = stilebook('packet', small, '--out', out, '--only', 'cover', 'shopping', '--json');
    expect(status).toBe(0);
    expect(JSON.parse(said).pages.packet).toBeLessThan(8);
  });

  it('refuses a sheet that there is none of, and names those that there are', () => {
    const { status, told } = stilebook('packet', small, '--only', 'covers');
    expect(status).toBe(2);
    expect(told).toContain('cover');
  });

  it('builds nothing from a workbook that needs mending', () => {
    const list = join(folder, 'list.csv');
    writeFileSync(list, 'Cabinet,Opening width,Opening height,Hinge side\nB1,3,30,left\n');
    const out = join(folder, 'nothing');
    const { status, told } = stilebook('packet', list, '--out', out);
    expect(status).toBe(1);
    expect(told).toContain('too narrow');
    expect(existsSync(out)).toBe(false);
  });

  it('never writes into a folder that holds other files', () => {
    const out = join(folder, 'taken');
    stilebook('packet', small, '--out', out);
    writeFileSync(join(out, 'notes.txt'), 'mine');
    const { status, told } = stilebook('packet', small, '--out', out);
    expect(status).toBe(2);
    expect(told).toContain('notes.txt');
    expect(readdirSync(out).sort()).toEqual([...PACKET_FILES, 'notes.txt'].sort());
  });
});
