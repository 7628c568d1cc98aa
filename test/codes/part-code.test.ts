import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DoorName, doorCode, partCode, placeMark } from '../../src/codes/part-code.ts';
import { law } from '../support/runs.ts';

const door: DoorName = { cabinet: 'B7', label: '', copy: 1, leaf: 'single' };

describe('the code of a door', () => {
  it.each<[DoorName, string, string]>([
    [door, 'B7.1', 'one opening, one leaf'],
    [{ ...door, leaf: 'left' }, 'B7.1L', 'left leaf of a pair'],
    [{ ...door, leaf: 'right', label: 'A', copy: 12 }, 'B7.A.12R', 'labelled opening, twelfth copy'],
    [{ ...door, cabinet: 'Sink base' }, 'Sink_base.1', 'a space is a line'],
    [{ ...door, cabinet: 'Sink_base' }, 'Sink~5F~base.1', 'so a line is spelt out'],
    [{ ...door, cabinet: 'B-7' }, 'B-7.1', 'a hyphen stays: only the last one parts the role'],
    [{ ...door, cabinet: 'B7.A' }, 'B7~2E~A.1', 'a dot would look like a label'],
    [{ ...door, cabinet: 'Armário é' }, 'Armário_é.1', 'letters of any language'],
    [{ ...door, cabinet: 'e\u0301' }, 'e~301~.1', 'the same sight written with two characters is another name'],
    [{ ...door, cabinet: '~' }, '~7E~.1', 'the sign of spelling out is spelt out'],
    [{ ...door, cabinet: '' }, '~.1', 'no name at all'],
    [{ ...door, cabinet: '👍' }, '~1F44D~.1', 'a sign beyond the first plane is one character'],
    [{ ...door, cabinet: '<b>' }, '~3C~b~3E~.1', 'markup'],
  ])('%j is %s: %s', (name, code) => {
    expect(doorCode(name)).toBe(code);
  });
});

it('a part adds its mark', () => {
  expect(partCode(doorCode(door), 'SL')).toBe('B7.1-SL');
});

it.each([
  [1, 1, '1A'],
  [2, 3, '2C'],
  [12, 26, '12Z'],
  [1, 27, '1AA'],
  [1, 52, '1AZ'],
  [1, 53, '1BA'],
  [1, 702, '1ZZ'],
  [1, 703, '1AAA'],
])('row %i, column %i is %s, as on a spreadsheet', (row, column, mark) => {
  expect(placeMark(row, column)).toBe(mark);
});

/** Names as nobody should write them: separators, escapes, figures that look like copies, unicode, lone surrogates. */
const aName = fc.oneof(
  fc.string({ unit: fc.constantFrom('A', 'a', '1', '.', '-', '_', '~', ' ', 'L', 'R', '7E', '\u0301', 'é', 'e') }),
  fc.string({ unit: 'binary' }),
);
const aDoorName = fc.record({
  cabinet: aName,
  label: aName,
  copy: fc.integer({ min: 1, max: 120 }),
  leaf: fc.constantFrom('single' as const, 'left', 'right' as const),
});

describe('two different doors', () => {
  it('never share a code', () => {
    law([aDoorName, aDoorName], (one, other) => {
      const same = JSON.stringify(one) === JSON.stringify(other);
      expect(doorCode(one) === doorCode(other)).toBe(same);
    });
  });

  it('never share one when only a separator has moved', () => {
    const codes = new Set<string>();
    const names = ['', 'A', '.', 'A.', '.A', 'A.A', '1', 'A.1', '1L', '-SL', '_', ' ', '~', '~7E~', 'a'];
    for (const cabinet of names)
      for (const label of names)
        for (const copy of [1, 11])
          for (const leaf of ['single', 'left', 'right'] as const) codes.add(doorCode({ cabinet, label, copy, leaf }));
    expect(codes.size).toBe(names.length * names.length * 2 * 3);
  });

  it('have codes of nothing but letters, figures and five signs', () => {
    law([aDoorName], name => {
      expect(doorCode(name)).toMatch(/^[\p{L}\p{N}._~+-]+$/u);
    });
  });
});
