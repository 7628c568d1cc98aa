import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FolderHoldsOtherFiles, machine } from '../src/machine.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'stilebook-machine-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const packet = (text: string) =>
  ['packet.pdf', 'manifest.json'].map(name => ({ name, bytes: bytes(`${name} ${text}`) }));

describe('what is written', () => {
  it('appears whole, with nothing beside it', async () => {
    await machine.writeFolder(join(folder, 'out'), packet('one'));
    expect(readdirSync(folder)).toEqual(['out']);
    expect(readFileSync(join(folder, 'out', 'packet.pdf'), 'utf8')).toBe('packet.pdf one');
  });

  it('takes the place of what it made before', async () => {
    await machine.writeFolder(join(folder, 'out'), packet('one'));
    await machine.writeFolder(join(folder, 'out'), packet('two'));
    expect(readdirSync(folder)).toEqual(['out']);
    expect(readFileSync(join(folder, 'out', 'manifest.json'), 'utf8')).toBe('manifest.json two');
  });

  it('never replaces a folder that holds somebody’s other files', async () => {
    mkdirSync(join(folder, 'out'));
    writeFileSync(join(folder, 'out', 'holiday.jpg'), 'x');
    await expect(machine.writeFolder(join(folder, 'out'), packet('one'))).rejects.toBeInstanceOf(FolderHoldsOtherFiles);
    expect(readdirSync(join(folder, 'out'))).toEqual(['holiday.jpg']);
    expect(readdirSync(folder)).toEqual(['out']);
  });

  it('leaves nothing behind when one of its files cannot be written', async () => {
    const files = [...packet('one'), { name: 'no/such/folder', bytes: bytes('x') }];
    await expect(machine.writeFolder(join(folder, 'out'), files)).rejects.toThrow();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('leaves the old file when the new one cannot take its place', async () => {
    mkdirSync(join(folder, 'taken'));
    await expect(machine.writeFile(join(folder, 'taken'), bytes('x'))).rejects.toThrow();
    expect(readdirSync(folder)).toEqual(['taken']);
    await machine.writeFile(join(folder, 'note.txt'), bytes('one'));
    await machine.writeFile(join(folder, 'note.txt'), bytes('two'));
    expect(readFileSync(join(folder, 'note.txt'), 'utf8')).toBe('two');
  });

  it('says so when the folder may not be written', async () => {
    if (process.getuid?.() === 0) {
      // The superuser may write anywhere, so a folder that is no folder stands in for one without permission.
      writeFileSync(join(folder, 'file'), '');
      await expect(machine.writeFolder(join(folder, 'file', 'out'), packet('one'))).rejects.toThrow(/ENOTDIR/);
    } else {
      chmodSync(folder, 0o500);
      await expect(machine.writeFolder(join(folder, 'out'), packet('one'))).rejects.toThrow(/EACCES/);
      chmodSync(folder, 0o700);
    }
    expect(existsSync(join(folder, 'out'))).toBe(false);
  });
});
