import { describe, expect, it } from 'vitest';
import { barcodeFor } from '../../src/codes/barcode.ts';
import type { Manifest } from '../../src/render/packet.ts';
import { remakeCode } from '../../src/station/floor/shelf.ts';
import type { Ledger } from '../../src/station/ledger/ledger.ts';
import { day as dayOn, type TestDesk } from '../support/day.ts';
import { aManifest } from '../support/manifest.ts';

const small = aManifest({ cabinets: ['B1'] });
const tag = (code: string, job = 'K7') => barcodeFor(job, code);

/** Each day is a story of the floor, on an empty ledger; the answers are those that the person at the machine gets. */
export function daysOnTheFloor(name: string, open: () => Promise<Ledger>): void {
  const day = async (
    manifests: readonly Manifest[],
    lines: string,
    later: { readonly [name: string]: Manifest } = {},
  ): Promise<TestDesk> => dayOn(manifests, lines, later, await open());

  describe(`a day on the floor, kept in ${name}`, () => {
    it('takes a stile through its route, a scan at each machine', () =>
      day(
        [small],
        `
      08:00 saw     scans B1.A.1L-SL → done Crosscut to rough length 1/4, next Rip to rough width at Table saw
      08:01 saw     scans B1.A.1L-SL → done Rip to rough width 1/4, next Joint one edge at Jointer
      08:02 jointer scans B1.A.1L-SL order → done Joint one edge 1/4, next Cut to length at Table saw
      08:03 saw     scans B1.A.1L-SL → done Cut to length 1/4, next Groove the inside edge at Router table
      08:04 router  scans B1.A.1L-SL → done Groove the inside edge 1/4, part complete
      08:05 router  scans B1.A.1L-SL → twice Groove the inside edge
    `,
      ));

    it('knows a symbol, a code in small letters, and blanks around either', () =>
      day(
        [small],
        `
      08:00 saw scans ${tag('B1.A.1L-SL')} → done Crosscut to rough length 1/4, next Rip to rough width at Table saw
      08:01 saw scans ${tag('B1.A.1L-SR').toLowerCase()} → done Crosscut to rough length 2/4, next Rip to rough width at Table saw
      08:02 saw scans b1.a.1l-rt → done Crosscut to rough length 3/4, next Rip to rough width at Table saw
    `,
      ));

    it('takes a trigger that bounced for one scan, and a later one for the next step', () =>
      day(
        [small],
        `
      08:00:00 saw scans B1.A.1L-SL → done Crosscut to rough length 1/4, next Rip to rough width at Table saw
      08:00:01 saw scans B1.A.1L-SL → twice Crosscut to rough length
      08:00:09 saw scans B1.A.1L-SL → done Rip to rough width 1/4, next Joint one edge at Jointer
      08:00:20 saw scans B1.A.1L-SR → done Crosscut to rough length 2/4, next Rip to rough width at Table saw
      08:00:21 saw scans B1.A.1L-SR by=d2 → done Rip to rough width 2/4, next Joint one edge at Jointer
    `,
      ));

    it('keeps to the operation that is run, where the station names it', () =>
      day(
        [small],
        `
      08:00 saw scans B1.A.1L-SL @crosscut-rough → done Crosscut to rough length 1/4, next Rip to rough width at Table saw
      09:00 saw scans B1.A.1L-SL @crosscut-rough → twice Crosscut to rough length
      09:01 saw scans B1.A.1L-P1 @crosscut-rough → elsewhere, next Cut panels to size
    `,
      ));

    it('asks about steps that nobody scanned, and counts them once somebody vouches for them', () =>
      day(
        [small],
        `
      08:00 router scans B1.A.1L-RT → ask order B1.A.1L-RT: Crosscut to rough length, Rip to rough width, Joint one edge, Cut to length
      08:01 router scans B1.A.1L-RT order → done Groove the inside edge 1/4, next Cope the rail ends at Router table
      08:02 saw    scans B1.A.1L-RT → twice Cut to length
      08:03 router scans B1.A.1L-RT → done Cope the rail ends 1/2, part complete
    `,
      ));

    it('sends a piece that has nothing to do here to where it is due', () =>
      day(
        [small],
        `
      08:00 sander scans B1.A.1L-SL → elsewhere, next Crosscut to rough length
      08:01 bench  scans B1.A.1L-P1 → elsewhere, next Cut panels to size
    `,
      ));

    it('lets strips rest and glue cure, by the clock of the server', () =>
      day(
        [small],
        `
      08:00 saw     scans B1.A.1L-SL order @rip-rough → done Rip to rough width 1/4, next Joint one edge at Jointer
      09:00 jointer scans B1.A.1L-SL → ask order early by 2820 min of Rest
      09:01 jointer scans B1.A.1L-SL order → done Joint one edge 1/4, next Cut to length at Table saw
      10:00 clamps  scans B1.A.1L order → done Glue up 1/1, next Flush sand at Sander
      11:00 sander  scans B1.A.1L → ask order early by 60 min of Cure
      12:00 sander  scans B1.A.1L → done Flush sand 1/1, next Hang at On site
    `,
      ));

    it('will not fit a door together before its parts are there, and says which are not', () =>
      day(
        [small],
        `
      08:00 router scans B1.A.1L-SL order → done Groove the inside edge 1/4, part complete
      08:01 router scans B1.A.1L-SR order → done Groove the inside edge 2/4, part complete
      08:02 router scans B1.A.1L-RT order @cope → done Cope the rail ends 1/2, part complete
      08:03 router scans B1.A.1L-RB order @cope → done Cope the rail ends 2/2, part complete
      08:04 bench  scans B1.A.1L → ask order B1.A.1L-P1: Cut panels to size, Rabbet the back
      08:05 router scans B1.A.1L-P1 order → done Rabbet the back 1/1, door-parts complete
      08:06 bench  scans B1.A.1L → done Dry fit 1/1, next Glue up at Clamps
      08:07 site   scans B1.A.1L order → done Hang 1/1, door complete
    `,
      ));

    it('takes the last scan back, once, with all that was vouched for in it', () =>
      day(
        [small],
        `
      08:00 router scans  B1.A.1L-RT order → done Groove the inside edge 1/4, next Cope the rail ends at Router table
      08:01 router undoes #1 → undone Groove the inside edge B1.A.1L-RT
      08:02 router undoes #1 → nothing-to-undo
      08:03 router undoes #2 → nothing-to-undo
      08:04 router scans  B1.A.1L-RT → ask order B1.A.1L-RT: Crosscut to rough length, Rip to rough width, Joint one edge, Cut to length
    `,
      ));

    it('makes a spoiled part anew: another code, from the start, and the old tag is told so', () =>
      day(
        [small],
        `
      08:00 router scans  B1.A.1L-P1 order → done Rabbet the back 1/1, part complete
      08:01 router spoils B1.A.1L-P1 → ask spoil B1.A.1L-P1
      08:02 router spoils B1.A.1L-P1 spoil → spoiled, make B1.A.1L-P1+1 from OFF-2, OFF-1, Maple plywood
      08:03 router scans  ${tag('B1.A.1L-P1')} → old tag, now B1.A.1L-P1+1
      08:04 saw    scans  ${tag(remakeCode('B1.A.1L-P1', 1))} → done Cut panels to size 1/1, next Rabbet the back at Router table
      08:05 router spoils B1.A.1L-P1 → old tag, now B1.A.1L-P1+1
      08:06 router undoes #3 → remade since: B1.A.1L-P1+1
      08:07 router spoils B1.A.1L-P1+1 spoil → spoiled, make B1.A.1L-P1+2 from OFF-2, OFF-1, Maple plywood
      08:08 router undoes #3 → remade since: B1.A.1L-P1+1
      08:08 router undoes #8 → undone  B1.A.1L-P1
      08:09 router scans  B1.A.1L-P1+1 → done Rabbet the back 1/1, part complete
      08:10 router scans  B1.A.1L-P1+3 → unknown
    `,
      ));

    it('takes spoiled pieces back from the last one on', () =>
      day(
        [small],
        `
      08:00 saw spoils B1.A.1L-P1 spoil → spoiled, make B1.A.1L-P1+1 from OFF-2, OFF-1, Maple plywood
      08:01 saw spoils B1.A.1L-P1+1 spoil → spoiled, make B1.A.1L-P1+2 from OFF-2, OFF-1, Maple plywood
      08:02 saw undoes #1 → remade since: B1.A.1L-P1+1
      08:03 saw undoes #2 → undone  B1.A.1L-P1
      08:04 saw undoes #1 → undone  B1.A.1L-P1
      08:05 saw scans  B1.A.1L-P1 → done Cut panels to size 1/1, next Rabbet the back at Router table
    `,
      ));

    it('makes every part of a spoiled door anew', () =>
      day(
        [small],
        `
      08:00 clamps scans  B1.A.1L order → done Glue up 1/1, next Flush sand at Sander
      08:01 clamps spoils B1.A.1L spoil → spoiled, make B1.A.1L+1 B1.A.1L-SL+1 B1.A.1L-SR+1 B1.A.1L-RT+1 B1.A.1L-RB+1 B1.A.1L-P1+1 from Maple 4/4, Maple plywood
      08:02 saw    scans  B1.A.1L-SL+1 → done Crosscut to rough length 1/4, next Rip to rough width at Table saw
      08:03 bench  scans  B1.A.1L → old tag, now B1.A.1L+1
    `,
      ));

    it('takes a set-up card for its pieces, leaving out what is not ready', () =>
      day(
        [small],
        `
      08:00 saw    scans ${tag('crosscut-rough-1')} → ask batch Crosscut to rough length: 4 ready, 0 before, 0 not
      08:01 saw    scans B1.A.1L-SL → done Crosscut to rough length 1/4, next Rip to rough width at Table saw
      08:02 saw    scans ${tag('crosscut-rough-1')} batch → batch done Crosscut to rough length: 3, 4/4
      08:03 saw    scans ${tag('crosscut-rough-1')} → batch twice: 4 done, 0 not ready
      08:04 router scans ${tag('crosscut-rough-1')} → set-up of Table saw
      08:05 router scans ${tag('groove-1')} batch → batch twice: 0 done, 4 not ready
      08:06 saw    undoes #3 → undone Crosscut to rough length B1.A.1L-SR B1.A.1L-RT B1.A.1L-RB
      08:07 saw    scans ${tag('crosscut-rough-1')} → ask batch Crosscut to rough length: 3 ready, 1 before, 0 not
      08:08 saw     scans B1.A.1L-SL → done Rip to rough width 1/4, next Joint one edge at Jointer
      08:09 jointer scans ${tag('joint-edge-1')} → batch twice: 0 done, 4 not ready
    `,
      ));

    it('tells tags of other jobs, of no job, mistyped ones, and an offcut', () =>
      day(
        [small, aManifest({ number: 'K8', cabinets: ['B1', 'B9'] })],
        `
      08:00 saw scans ${tag('B1.A.1L-SL', 'K8')} job=K7 → wrong job K8, not K7
      08:01 saw scans ${tag('B1.A.1L-SL', 'K8')} → done Crosscut to rough length 1/8, next Rip to rough width at Table saw
      08:02 saw scans B1.A.1L-SL → which job: K7, K8
      08:03 saw scans B1.A.1L-SL job=K8 → done Rip to rough width 1/8, next Joint one edge at Jointer
      08:04 saw scans B9.A.1L-SL → done Crosscut to rough length 2/8, next Rip to rough width at Table saw
      08:05 saw scans ${tag('B1.A.1L-SL', 'ELSEWHERE')} → unknown-job
      08:06 saw scans ${tag('B77.A.1L-SL')} → unknown
      08:07 saw scans ${mistyped(tag('B1.A.1L-SL'))} → mistyped
      08:08 saw scans ${tag('B1.A.1L-SL').slice(0, 10)} → mistyped
      08:09 saw scans B7.Z.1L-SL → unknown
      08:10 saw scans ${tag('OFF-1')} → offcut OFF-1 of Maple plywood
    `,
      ));

    it('asks once about each piece that a later revision changed, and drops what it has no more', () =>
      day(
        [small],
        `
      08:00 saw scans B1.A.1L-SL → done Crosscut to rough length 1/4, next Rip to rough width at Table saw
      + B
      08:01 saw scans B1.A.1L-SL → ask changed 30 x 2 x 3/4 in A now 31 1/2 x 2 x 3/4 in B, 1 done
      08:02 saw scans B1.A.1L-SL changed → done Rip to rough width 1/4, next Joint one edge at Jointer
      08:03 saw scans B1.A.1L-SR → ask changed 30 x 2 x 3/4 in A now 31 1/2 x 2 x 3/4 in B, 0 done
      08:04 saw scans B1.A.1L-RT → done Crosscut to rough length 2/4, next Rip to rough width at Table saw
      08:05 saw scans ${tag('crosscut-rough-1')} → ask batch Crosscut to rough length: 1 ready, 2 before, 1 not
      08:06 saw spoils B1.A.1L-SL spoil → spoiled, make B1.A.1L-SL+1 from Maple 4/4
      08:07 saw scans B1.A.1L-SL+1 → done Crosscut to rough length 2/4, next Rip to rough width at Table saw
      + C
      08:08 saw scans B1.A.1L-SR → gone from C
    `,
        {
          B: aManifest({ cabinets: ['B1'], revision: 'B', height: '31 1/2' }),
          C: aManifest({ cabinets: ['B2'], revision: 'C' }),
        },
      ));

    it('answers a scan that comes again as it did the first time, and keeps it once', async () => {
      const test = await day(
        [small],
        '08:00 saw scans B1.A.1L-SL → done Crosscut to rough length 1/4, next Rip to rough width at Table saw',
      );
      const [event] = await test.ledger.after(0, 10);
      const scan = {
        key: event?.key ?? '',
        act: 'done',
        code: 'B1.A.1L-SL',
        station: 'saw',
        operation: null,
        job: null,
        device: 'd1',
        at: '2026-03-04T08:00:00.000Z',
        agreed: [],
        reason: '',
      } as const;
      const again = await Promise.all(Array.from({ length: 5 }, () => test.desk.scan(scan)));
      for (const answer of again)
        expect(answer).toMatchObject({
          kind: 'done',
          step: { operation: 'Crosscut to rough length' },
          run: { done: 1, total: 4 },
        });
      expect(await test.ledger.after(0, 10)).toHaveLength(1);
    });
  });
}

/** Another character in the middle: what a worn tag or a hurried hand makes. */
const mistyped = (code: string): string => `${code.slice(0, 5)}${code[5] === 'A' ? 'B' : 'A'}${code.slice(6)}`;
