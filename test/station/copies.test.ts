import { describe, expect, it } from 'vitest';
import { backUp, NoCopy, restore } from '../../src/station/ledger/backup.ts';
import { exportCsv } from '../../src/station/ledger/export-csv.ts';
import type { Ledger } from '../../src/station/ledger/ledger.ts';
import { openSqlite } from '../../src/station/ledger/sqlite.ts';
import { anEvent, everything } from './ledger.contract.ts';

const aLedger = () => openSqlite(':memory:', 'test');

async function filled(): Promise<Ledger> {
  const ledger = await aLedger();
  await ledger.append([
    anEvent('a', { station: 'Säge 🪚' }),
    anEvent('b', { what: { kind: 'spoiled', pieces: [{ code: 'B1.A.1L-SL', remake: 0 }], reason: '=1+1' } }),
    anEvent('c', { what: { kind: 'undone', of: 'b', pieces: [{ code: 'B1.A.1L-SL', remake: 0 }] } }),
  ]);
  return ledger;
}

async function text(pieces: AsyncIterable<string>): Promise<string> {
  let all = '';
  for await (const piece of pieces) all += piece;
  return all;
}

const lines = (copy: string) =>
  async function* () {
    yield* copy.trimEnd().split('\n');
  };

describe('a copy of a ledger', () => {
  it('fills an empty ledger with the same events in the same order', async () => {
    const ledger = await filled();
    const copy = await text(backUp(ledger));
    const other = await aLedger();
    expect(await restore(other, lines(copy))).toBe(3);
    expect(await everything(other)).toEqual(await everything(ledger));
  });

  it('adds only what is missing, however often it is brought in', async () => {
    const copy = await text(backUp(await filled()));
    const other = await aLedger();
    await other.append([anEvent('b'), anEvent('z')]);
    expect(await restore(other, lines(copy))).toBe(2);
    expect(await restore(other, lines(copy))).toBe(0);
    expect((await everything(other)).map(event => event.key)).toEqual(['b', 'z', 'a', 'c']);
  });

  it.each([
    ['is empty', () => ''],
    ['is another file', () => '{"hello":1}\n'],
    ['lost its end', (copy: string) => copy.split('\n').slice(0, -2).join('\n')],
    ['lost its last letter', (copy: string) => copy.trimEnd().slice(0, -1)],
    ['lost a line in the middle', (copy: string) => copy.split('\n').toSpliced(2, 1).join('\n')],
    [
      'has a line twice',
      (copy: string) =>
        copy
          .split('\n')
          .toSpliced(2, 0, copy.split('\n')[2] ?? '')
          .join('\n'),
    ],
    ['has a letter wrong in an event', (copy: string) => copy.replace('"kind":"spoiled"', '"kind":"spoilt"')],
    ['goes on behind its end', (copy: string) => `${copy}${copy.split('\n')[1]}\n`],
  ])('that %s is refused, and nothing of it is brought in', async (_, spoil) => {
    const copy = await text(backUp(await filled()));
    const other = await aLedger();
    await expect(restore(other, lines(spoil(copy)))).rejects.toThrow(NoCopy);
    expect(await everything(other)).toEqual([]);
  });
});

describe('the ledger as a table', () => {
  it('has a line for each event, quoted so that any program reads it', async () => {
    const table = (await text(exportCsv(await filled()))).split('\r\n');
    expect(table).toHaveLength(5);
    expect(table[0]).toBe(
      '\uFEFF"seq","server time","device time","job","revision","station","device","what","operation","pieces","vouched for","reason","key"',
    );
    expect(table[1]).toBe(
      '"1","2026-03-04T10:00:01.000Z","2026-03-04T10:00:00.000Z","J1","A","Säge 🪚","d1","done","groove","B1.A.1L-SL","","","a"',
    );
  });

  // The signs that spreadsheet programs take for the start of a formula: OWASP, "CSV Injection".
  it.each(['=', '+', '-', '@', '\t', '\r'])(
    'never starts a cell with %o, whatever was scanned or typed',
    async sign => {
      const ledger = await aLedger();
      const hostile = `${sign}cmd|' /C calc'!A0","${sign}2`;
      await ledger.append([
        anEvent(`${sign}key`, {
          job: hostile,
          revision: hostile,
          station: hostile,
          device: hostile,
          deviceTime: hostile,
          what: {
            kind: 'done',
            operation: hostile,
            pieces: [{ code: hostile, remake: 1 }],
            skipped: [{ piece: { code: hostile, remake: 0 }, operation: hostile }],
            reason: hostile,
            setup: null,
          },
        }),
      ]);
      for (const cell of cellsOf(await text(exportCsv(ledger)))) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
    },
  );
});

/** Cells as RFC 4180 has them: quoted, a quote inside doubled. */
const cellsOf = (table: string): readonly string[] =>
  [...table.matchAll(/"((?:[^"]|"")*)"/g)].map(([, cell = '']) => cell.replaceAll('""', '"'));
