import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calculate/index.ts';
import { checks } from '../../src/codes/check-character.ts';
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

  it('most of what is drawn can be made: the law above is not empty', () => {
    const jobs = fc.sample(aDrawing, 200).map(drawnJob);
    const leaves = jobs.flatMap(job =>
      job.openings.map(({ hanging, quantity }) => quantity * (hanging.kind === 'pair' ? 2 : 1)),
    );
    const doors = jobs.flatMap(job => calculate(job).value.doors);
    expect(doors.length).toBeGreaterThan(0.5 * leaves.reduce((sum, each) => sum + each, 0));
    for (const front of ['door', 'drawer-front', 'false-front', 'end-panel'])
      expect(doors.map(door => door.front)).toContain(front);
    for (const kind of ['plywood', 'solid', 'glass', undefined])
      expect(doors.map(door => door.joint?.infillKind)).toContain(kind);
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
