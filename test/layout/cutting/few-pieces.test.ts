import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { extent } from '../../../src/layout/cutting/cut-tree.ts';
import { comesOut, isApart, openFewPieces } from '../../../src/layout/cutting/few-pieces.ts';
import { treeOfFew } from '../../../src/layout/cutting/few-trees.ts';
import { binOf } from '../../../src/layout/cutting/fill.ts';
import { everyPiece } from '../../../src/layout/cutting/first-plan.ts';
import { problemOf } from '../../../src/layout/cutting/in-units.ts';
import type { CuttingProblem } from '../../../src/layout/cutting/problem.ts';
import { mm } from '../../../src/units/length.ts';
import { aBlank, aShop, aSize, aStock } from './a-job.ts';
import { expectSawable } from './sawable.ts';

type Size = readonly [length: number, width: number];

/** Different sizes out of one sheet, in whole millimetres; the blade takes nothing, and nothing is trimmed. */
function problemFor(sheet: Size, sizes: readonly Size[], stages: 2 | 3 | 'free'): CuttingProblem {
  const blanks = sizes.map(([length, width], at) => aBlank('ply', `P${at + 1}`, mm(length), mm(width)));
  const size = { ...aSize('96 x 48'), length: mm(sheet[0]), width: mm(sheet[1]) };
  const none = mm(0);
  return problemOf(blanks, aStock([size]), aShop({ kerf: none, sheetTrim: none, stages }));
}

function together(problem: CuttingProblem): boolean {
  const few = openFewPieces(problem);
  const lies = everyPiece(problem);
  few.sets.set(lies);
  return comesOut(few, lies.length);
}

/** Every cut at every whole millimetre, and every way to share the pieces between the two sides. */
function byEveryCut(sizes: readonly Size[], length: number, width: number): boolean {
  const [only] = sizes;
  if (sizes.length === 1 && only !== undefined) return only[0] <= length && only[1] <= width;
  if (sizes.reduce((sum, [one, two]) => sum + one * two, 0) > length * width) return false;
  for (let mask = 1; mask < 2 ** sizes.length - 1; mask += 2) {
    const here = sizes.filter((_, at) => (mask >> at) % 2 === 1);
    const there = sizes.filter((_, at) => (mask >> at) % 2 === 0);
    for (let cut = 1; cut < length; cut += 1)
      if (byEveryCut(here, cut, width) && byEveryCut(there, length - cut, width)) return true;
    for (let cut = 1; cut < width; cut += 1)
      if (byEveryCut(here, length, cut) && byEveryCut(there, length, width - cut)) return true;
  }
  return false;
}

describe('a few pieces', () => {
  // Worked by hand. The wheel of four around one fills its square, and every through cut would part one of them.
  it.each<{ readonly sheet: Size; readonly sizes: readonly Size[]; readonly free: boolean; readonly three: boolean }>([
    { sheet: [10, 10], sizes: [[10, 10]], free: true, three: true },
    {
      sheet: [10, 10],
      sizes: [
        [10, 6],
        [4, 5],
      ],
      free: false,
      three: false,
    },
    {
      sheet: [10, 10],
      sizes: [
        [6, 4],
        [4, 10],
        [6, 6],
      ],
      free: true,
      three: true,
    },
    {
      sheet: [30, 30],
      sizes: [
        [20, 10],
        [10, 20],
        [20, 11],
        [9, 20],
        [10, 10],
      ],
      free: false,
      three: false,
    },
    {
      sheet: [30, 30],
      sizes: [
        [20, 10],
        [10, 20],
        [20, 20],
        [10, 10],
      ],
      free: true,
      three: true,
    },
    // A crosscut, a rip of what is left, a crosscut of that, and a rip once more: four changes of direction.
    {
      sheet: [30, 30],
      sizes: [
        [10, 30],
        [20, 10],
        [10, 20],
        [10, 12],
        [10, 8],
      ],
      free: true,
      three: false,
    },
  ])('$sizes of $sheet', ({ sheet, sizes, free, three }) => {
    expect(together(problemFor(sheet, sizes, 'free'))).toBe(free);
    expect(together(problemFor(sheet, sizes, 3))).toBe(three);
  });

  const aSide = fc.integer({ min: 1, max: 7 });
  const someSizes = fc.uniqueArray(fc.tuple(aSide, aSide), { selector: String, minLength: 2, maxLength: 5 });

  it('come out of a sheet when some way of every cut there is parts them, and else not', () => {
    const found = { out: 0, not: 0 };
    fc.assert(
      fc.property(someSizes, fc.integer({ min: 7, max: 9 }), fc.integer({ min: 7, max: 9 }), (sizes, length, width) => {
        const expected = byEveryCut(sizes, length, width);
        const problem = problemFor([length, width], sizes, 'free');
        expect(together(problem)).toBe(expected);
        found[expected ? 'out' : 'not'] += 1;
        const few = openFewPieces(problem);
        const [first = 0, ...others] = everyPiece(problem);
        // What is apart does not come out, and neither does it with others.
        if (isApart(few, first, Int32Array.from(others), others.length)) expect(expected).toBe(false);
      }),
      { numRuns: 300, seed: 1 },
    );
    expect(found.out).toBeGreaterThan(30);
    expect(found.not).toBeGreaterThan(30);
  });

  it('that come out have a tree within the sheet and the stages', () => {
    let out = 0;
    const more = fc.uniqueArray(fc.tuple(aSide, aSide), { selector: String, minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(more, fc.constantFrom(2 as const, 3 as const, 'free' as const), (sizes, stages) => {
        const problem = problemFor([12, 11], sizes, stages);
        if (!together(problem)) return;
        out += 1;
        const tree = treeOfFew(openFewPieces(problem), everyPiece(problem));
        if (tree === undefined) throw new Error('no tree');
        expect(extent(tree, 'crosscut')).toBeLessThanOrEqual(12);
        expect(extent(tree, 'rip')).toBeLessThanOrEqual(11);
        const bin = binOf(problem, 0, [tree]);
        expectSawable(problem, [bin], everyPiece(problem));
      }),
      { numRuns: 300, seed: 2 },
    );
    expect(out).toBeGreaterThan(100);
  });
});
