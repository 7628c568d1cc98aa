import { expect, it } from 'vitest';
import { stilebook } from '../support/stilebook.ts';

const DEMO = 'fixtures/demo/small.xlsx';

it('explains a door of the demo', () => {
  const { status, out, told } = stilebook('explain', DEMO, 'L2.A.1L');
  expect(status, told).toBe(0);
  expect(out).toMatch(/^L2\.A\.1L {2}door, L2\/A, left leaf, copy 1\n/);
  expect(out).toContain('door width = (Wo + OL + OR − g) ÷ 2 =');
});

it('says the same as data', () => {
  const { status, out } = stilebook('explain', DEMO, 'L2.A.1L-RT', '--json');
  expect(status).toBe(0);
  const { code, lines } = JSON.parse(out);
  expect(code).toBe('L2.A.1L-RT');
  expect(lines).toContainEqual(expect.stringMatching(/^rail length = W − 2·S \+ 2·T = /));
});

it('says which codes are near one that is not there', () => {
  const { status, out, told } = stilebook('explain', DEMO, 'L2.A.1');
  expect([status, out]).toEqual([1, '']);
  expect(told).toMatch(/has no door or part L2\.A\.1\. Near it: L2\.A\.1L, L2\.A\.1R/);
});
