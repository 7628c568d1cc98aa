import { mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { machine } from '../../src/machine.ts';
import { pairingKey } from '../../src/station/pairing-key.ts';

describe('the key that paired devices are signed with', () => {
  let folder = '';
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'key-'));
  });
  afterAll(() => rm(folder, { recursive: true }));

  it('is made once, for this user’s eyes only, and stays', async () => {
    const data = join(folder, 'made', 'on', 'the', 'way');
    const key = await pairingKey(data, machine);
    expect(key).toHaveLength(32);
    expect(await pairingKey(data, machine)).toEqual(key);
    if (process.platform !== 'win32') expect((await stat(join(data, 'pairing.key'))).mode & 0o777).toBe(0o600);
  });

  it.each([0, 31])(
    'is made anew where a crash has left %i bytes of it: devices are let in by no short key',
    async length => {
      await writeFile(join(folder, 'pairing.key'), new Uint8Array(length));
      const key = await pairingKey(folder, machine);
      expect(key).toHaveLength(32);
      expect(new Uint8Array(await readFile(join(folder, 'pairing.key')))).toEqual(new Uint8Array(key));
    },
  );
});
