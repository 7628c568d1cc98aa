import { describe, expect, it } from 'vitest';
import type { KeptEvent } from '../../src/station/floor/event.ts';
import { pieceState, remakeOf, replay } from '../../src/station/floor/job-state.ts';
import { openSqlite } from '../../src/station/ledger/sqlite.ts';
import { aDesk, aScan, summary } from '../support/day.ts';
import { aManifest } from '../support/manifest.ts';
import { anEvent } from './ledger.contract.ts';

const numbered = (events: readonly Omit<KeptEvent, 'seq'>[]): readonly KeptEvent[] =>
  events.map((event, at) => ({ ...event, seq: at + 1 }));

const pieces = [{ code: 'B1.A.1L-SL', remake: 0 }];

describe('what the events of a job lead to', () => {
  it('is one remake where two stations find the same piece spoiled', () => {
    const spoiled = { kind: 'spoiled' as const, pieces, reason: '' };
    const state = replay(numbered([anEvent('a', { what: spoiled }), anEvent('b', { what: spoiled })]));
    expect(remakeOf(pieceState(state, 'B1.A.1L-SL'))).toBe(1);
  });

  it('names among the last events none that was taken back, and not its taking back', () => {
    const undone = { kind: 'undone' as const, of: 'a', pieces };
    const state = replay(numbered([anEvent('a'), anEvent('b'), anEvent('c', { what: undone })]));
    expect(state.recent.map(event => event.key)).toEqual(['b']);
  });
});

describe('the desk', () => {
  const open = async (manifest = aManifest({ cabinets: ['B1'] })) =>
    aDesk([manifest], await openSqlite(':memory:', 'test'));

  it('counts out of order for a reason only: yes alone is asked again', async () => {
    const { desk, ledger } = await open();
    const yes = { code: 'B1.A.1L-SL', station: 'router', agreed: ['order' as const] };
    expect(summary(await desk.scan(aScan('a', { ...yes, reason: '' })))).toMatch(/^ask order/);
    expect(await ledger.after(0, 10)).toEqual([]);
    expect(summary(await desk.scan(aScan('b', { ...yes, reason: 'a scan was forgotten' })))).toMatch(/^done/);
  });

  it('answers a scan that was not kept the same way when it comes again, whatever happened meanwhile', async () => {
    const { desk, ledger } = await open();
    const stile = { code: 'B1.A.1L-SL', operation: 'crosscut-rough' };
    expect(summary(await desk.scan(aScan('a', stile)))).toMatch(/^done/);
    expect(summary(await desk.scan(aScan('b', stile)))).toMatch(/^twice/);
    expect(summary(await desk.scan(aScan('c', { act: 'undo', code: aScan('a', stile).key })))).toMatch(/^undone/);
    expect(summary(await desk.scan(aScan('b', stile)))).toMatch(/^twice/);
    expect(await ledger.after(0, 10)).toHaveLength(2);
    const [first, again] = await Promise.all([desk.scan(aScan('d', stile)), desk.scan(aScan('d', stile))]);
    expect([first, again].map(summary)).toEqual([summary(first), summary(first)]);
    expect(await ledger.after(0, 10)).toHaveLength(3);
  });

  it('does not wait with a door for what its parts get after it: a pane goes in when the finish is dry', async () => {
    const manifest = aManifest({ cabinets: ['B1'] });
    const parts = manifest.parts.map(part =>
      part.role === 'panel' ? { ...part, route: ['hang'] } : { ...part, route: [] },
    );
    const { desk } = await open({ ...manifest, parts });
    expect(summary(await desk.scan(aScan('a', { code: 'B1.A.1L', station: 'bench' })))).toMatch(/^done Dry fit/);
    const hung = { code: 'B1.A.1L', station: 'sander', agreed: ['order' as const], reason: 'x' };
    expect(summary(await desk.scan(aScan('b', hung)))).toMatch(/^done Flush sand/);
  });
});
