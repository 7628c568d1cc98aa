import fc from 'fast-check';
import { expect, it } from 'vitest';
import { calculate } from '../../src/calculate/index.ts';
import { aDrawing, drawnJob } from './drawn-jobs.ts';

it('most of what is drawn can be made: the laws are not empty', () => {
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
