import { describe, expect, it } from 'vitest';
import type { Door, Part } from '../../src/calculate/door-set.ts';
import { calculate } from '../../src/calculate/index.ts';
import { checks } from '../../src/codes/check-character.ts';
import { type Length, nm } from '../../src/units/length.ts';
import { printedValue } from '../../src/units/print-length.ts';
import { aGrid } from '../support/a-job.ts';
import { law, RUNS } from '../support/runs.ts';
import { aDrawing, drawnJob } from './drawn-jobs.ts';
import { judgeDoors } from './judge-doors.ts';

describe('whatever the job', () => {
  it('parts make their door, the door closes its opening, and every number follows from its working', () => {
    law([aDrawing], drawing => {
      const job = drawnJob(drawing);
      expect(judgeDoors(job, calculate(job).value)).toEqual([]);
    });
  });

  it('the order of the rows changes nothing but the order of the doors', () => {
    law(
      [aDrawing],
      drawing => {
        const job = drawnJob(drawing);
        const turned = calculate({ ...job, openings: [...job.openings].reverse() }).value;
        const { doors, parts } = calculate(job).value;
        const byCode = <T extends { readonly code: string }>(all: readonly T[]) =>
          [...all].sort((a, b) => (a.code < b.code ? -1 : 1));
        expect(byCode(turned.doors)).toEqual(byCode(doors));
        expect(byCode(turned.parts)).toEqual(byCode(parts));
      },
      Math.ceil(RUNS / 4),
    );
  });

  it('what is left out of the doors was said', () => {
    law([aDrawing], drawing => {
      const job = drawnJob(drawing);
      const { value, diagnostics } = calculate(job);
      const missing = job.openings.filter(opening => !value.doors.some(door => door.cabinet === opening.cabinet));
      const errors = diagnostics.filter(found => found.severity === 'error');
      expect(missing.length === 0).toBe(errors.length === 0);
    });
  });

  it('two leaves of a pair are mirror images', () => {
    law(
      [aDrawing],
      drawing => {
        const job = drawnJob(drawing);
        const { doors } = calculate(job).value;
        for (const left of doors.filter(door => door.leaf === 'left')) {
          const right = doors.find(door => door.code === left.code.replace(/L$/, 'R'));
          expect([right?.width, right?.height, right?.hinges, right?.sights.length]).toEqual([
            left.width,
            left.height,
            left.hinges,
            left.sights.length,
          ]);
          expect([left.hingeSide, right?.hingeSide]).toEqual(['left', 'right']);
          const across = (hole: { fromLeft: number }) => hole.fromLeft;
          expect(left.pull?.holes.map(across)).toEqual(right?.pull?.holes.map(hole => left.width.value - across(hole)));
        }
      },
      Math.ceil(RUNS / 4),
    );
  });

  it('printed sizes of a door add up: to the last mark where its members lie on the marks, else to the increment', () => {
    law([aDrawing], drawing => {
      const drawn = drawnJob(drawing);
      const lengths = { units: 'inch', increment: drawn.shop.doors.increment } as const;
      const { value, diagnostics } = calculate({ ...drawn, shop: { ...drawn.shop, printing: { lengths } } });
      const onMarks = !diagnostics.some(found => found.code === 'member-between-marks');
      for (const door of value.doors.filter(({ build }) => build === 'frame')) {
        const { grid } = drawn.openings.find(({ cabinet }) => cabinet === door.cabinet) ?? { grid: aGrid(1, 1) };
        const misfit = printedMisfit(door, value.parts, length => printedValue(length, lengths));
        // A plain frame has three printed sizes to a side, each off by half a mark at most: one mark together, since
        // the sum lies on the marks. Each further panel brings two more.
        const panels = Math.max(grid.panelsHigh, grid.panelsWide);
        const exact = onMarks && grid.middleRailHeights.length === 0;
        expect(misfit, door.code).toBeLessThanOrEqual(exact ? 0 : panels * lengths.increment);
      }
    });
  });

  it('every symbol checks', () => {
    law(
      [aDrawing],
      drawing => {
        const job = drawnJob(drawing);
        const { doors, parts } = calculate(job).value;
        expect([...doors, ...parts].every(({ barcode }) => barcode.length === 11 && checks(barcode))).toBe(true);
      },
      Math.ceil(RUNS / 10),
    );
  });
});

/** How far the printed members and sights of any row or column are from the printed door. */
function printedMisfit(door: Door, parts: readonly Part[], printed: (length: Length) => number): number {
  const own = parts.filter(part => part.door === door.code);
  const width = (role: Part['role']) => printed(own.find(part => part.role === role)?.width.value ?? nm(0));
  const total = (sizes: readonly Length[]) => sizes.reduce((sum, size) => sum + printed(size), 0);
  const rows = door.sights.filter(sight => sight.column === 1).map(sight => sight.height);
  const columns = door.sights.filter(sight => sight.row === 1).map(sight => sight.width);
  const up = width('rail-top') + width('rail-bottom') + (rows.length - 1) * width('rail-middle') + total(rows);
  const across = 2 * width('stile-left') + (columns.length - 1) * width('stile-middle') + total(columns);
  return Math.max(Math.abs(up - printed(door.height.value)), Math.abs(across - printed(door.width.value)));
}
