import { describe, expect, it } from 'vitest';
import type { FloorEvent } from '../../src/station/floor/event.ts';
import { allEvents, type Ledger } from '../../src/station/ledger/ledger.ts';

/** What every ledger keeps, whichever engine it runs on. `open` gives an empty one; `again` opens the same one anew. */
export type LedgerUnderTest = {
  readonly open: () => Promise<{ readonly ledger: Ledger; readonly again: () => Promise<Ledger> }>;
  /** Another shop's ledger on the same server; undefined where a ledger has one shop. */
  readonly otherShop?: () => Promise<Ledger>;
  /** Runs a statement against the tables, past the port. */
  readonly meddle: (ledger: Ledger, statement: string) => Promise<void>;
};

export function ledgerContract(name: string, { open, meddle }: LedgerUnderTest): void {
  describe(`a ledger in ${name}`, () => {
    it('keeps events in the order in which they came, whatever the devices’ clocks say', async () => {
      const { ledger } = await open();
      await ledger.append([anEvent('b', { deviceTime: '2031-01-01T00:00:00.000Z' })]);
      await ledger.append([anEvent('a', { deviceTime: '1999-01-01T00:00:00.000Z' }), anEvent('c')]);
      expect((await everything(ledger)).map(event => event.key)).toEqual(['b', 'a', 'c']);
      await ledger.close();
    });

    it('gives back what was put in, to the letter', async () => {
      const { ledger } = await open();
      const event = anEvent('x', {
        station: 'Säge “1”',
        what: { kind: 'spoiled', pieces: [{ code: '=1+1', remake: 2 }], reason: "🪵 '; DROP TABLE floor_event; --" },
      });
      const [kept] = await ledger.append([event]);
      expect(await everything(ledger)).toEqual([{ ...event, seq: kept?.seq }]);
      await ledger.close();
    });

    it('keeps a key once, however often and however crowded it comes', async () => {
      const { ledger } = await open();
      expect(await ledger.append([anEvent('a'), anEvent('a'), anEvent('b')])).toHaveLength(2);
      expect(await ledger.append([anEvent('b'), anEvent('c')])).toMatchObject([{ key: 'c' }]);
      const together = await Promise.all(Array.from({ length: 8 }, () => ledger.append([anEvent('d')])));
      expect(together.flat()).toHaveLength(1);
      expect((await everything(ledger)).map(event => event.key)).toEqual(['a', 'b', 'c', 'd']);
      await ledger.close();
    });

    it('finds events by their keys', async () => {
      const { ledger } = await open();
      await ledger.append([anEvent('a'), anEvent('b'), anEvent('c')]);
      expect((await ledger.find(['c', 'nowhere', 'a'])).map(event => event.key)).toEqual(['a', 'c']);
      expect(await ledger.find([])).toEqual([]);
      await ledger.close();
    });

    it('reads on from a place, in pages, and of one job only', async () => {
      const { ledger } = await open();
      await ledger.append(
        Array.from({ length: 25 }, (_, at) => anEvent(`k${at}`, { job: at % 5 === 0 ? 'J2' : 'J1' })),
      );
      const first = await ledger.after(0, 10);
      const rest = await ledger.after(first.at(-1)?.seq ?? 0, 100);
      expect([...first, ...rest].map(event => event.key)).toEqual(Array.from({ length: 25 }, (_, at) => `k${at}`));
      expect((await ledger.after(0, 100, 'J2')).map(event => event.key)).toEqual(['k0', 'k5', 'k10', 'k15', 'k20']);
      await ledger.close();
    });

    it('has it all when it is opened again, and goes on behind it', async () => {
      const { ledger, again } = await open();
      await ledger.append([anEvent('a'), anEvent('b')]);
      await ledger.close();
      const reopened = await again();
      await reopened.append([anEvent('a'), anEvent('c')]);
      expect((await everything(reopened)).map(event => event.key)).toEqual(['a', 'b', 'c']);
      await reopened.close();
    });

    it('is not changed and not emptied, not even past the port', async () => {
      const { ledger } = await open();
      await ledger.append([anEvent('a')]);
      await expect(meddle(ledger, "UPDATE floor_event SET job = 'other'")).rejects.toThrow('only added to');
      await expect(meddle(ledger, 'DELETE FROM floor_event')).rejects.toThrow('only added to');
      expect(await everything(ledger)).toMatchObject([{ key: 'a', job: 'J1' }]);
      await ledger.close();
    });

    it('loses nothing where many append at once, and a reader that follows sees every event once', async () => {
      const { ledger } = await open();
      const seen: string[] = [];
      let seq = 0;
      const follow = async () => {
        const page = await ledger.after(seq, 50);
        seq = page.at(-1)?.seq ?? seq;
        seen.push(...page.map(event => event.key));
      };
      const writers = Array.from({ length: 6 }, async (_, writer) => {
        for (let at = 0; at < 20; at += 1) await ledger.append([anEvent(`w${writer}-${at}`)]);
      });
      const following = (async () => {
        while (seen.length < 120) await follow();
      })();
      await Promise.all([...writers, following]);
      expect(new Set(seen).size).toBe(120);
      expect(seen).toHaveLength(120);
      await ledger.close();
    });
  });
}

export async function everything(ledger: Ledger) {
  const events = [];
  for await (const page of allEvents(ledger)) events.push(...page);
  return events;
}

export const anEvent = (key: string, but: Partial<FloorEvent> = {}): FloorEvent => ({
  key,
  job: 'J1',
  revision: 'A',
  station: 'saw',
  device: 'd1',
  deviceTime: '2026-03-04T10:00:00.000Z',
  serverTime: '2026-03-04T10:00:01.000Z',
  what: {
    kind: 'done',
    operation: 'groove',
    pieces: [{ code: 'B1.A.1L-SL', remake: 0 }],
    skipped: [],
    reason: '',
    setup: null,
  },
  ...but,
});
