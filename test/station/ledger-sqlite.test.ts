import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'libsql';
import { describe, expect, it } from 'vitest';
import type { Ledger } from '../../src/station/ledger/ledger.ts';
import { LedgerIsHeld, openSqlite } from '../../src/station/ledger/sqlite.ts';
import { anEvent, everything, ledgerContract } from './ledger.contract.ts';

const files = new Map<Ledger, string>();

async function open() {
  const file = join(await mkdtemp(join(tmpdir(), 'ledger-')), 'ledger.db');
  const again = async () => {
    const ledger = await openSqlite(file, 'shop');
    files.set(ledger, file);
    return ledger;
  };
  return { ledger: await again(), again, file };
}

ledgerContract('a file', {
  open,
  meddle: async (ledger, statement) => {
    // The file is its owner's alone, so meddling waits until the owner has gone.
    await ledger.close();
    const file = files.get(ledger) ?? '';
    const meddler = new Database(file);
    try {
      meddler.exec(statement);
    } finally {
      meddler.close();
      Object.assign(ledger, await openSqlite(file, 'shop'));
    }
  },
});

describe('a ledger in a file', () => {
  it('belongs to one program: a second is told so at once', async () => {
    const { ledger, again } = await open();
    await ledger.append([anEvent('a')]);
    await expect(again()).rejects.toThrow(LedgerIsHeld);
    await ledger.append([anEvent('b')]);
    expect(await everything(ledger)).toHaveLength(2);
    await ledger.close();
  });

  it('refuses a file that is no ledger and leaves it as it is', async () => {
    const { ledger, file } = await open();
    await ledger.close();
    await expect(openSqlite(join(file, '..'), 'shop')).rejects.toThrow();
  });
});
