import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isAmong } from '../../../src/layout/cutting/bits.ts';
import { weigh } from '../../../src/layout/cutting/bound.ts';
import { comesOut } from '../../../src/layout/cutting/coming-out.ts';
import { companionsOf, nobody, openCompanions } from '../../../src/layout/cutting/companions.ts';
import { extent } from '../../../src/layout/cutting/cut-tree.ts';
import { type FewPieces, openFewPieces } from '../../../src/layout/cutting/few-pieces.ts';
import { treeOfFew } from '../../../src/layout/cutting/few-trees.ts';
import { binOf } from '../../../src/layout/cutting/fill.ts';
import { everyPiece } from '../../../src/layout/cutting/first-plan.ts';
import type { CuttingProblem } from '../../../src/layout/cutting/problem.ts';
import { byEveryCut, cutUp, problemFor, type Size, someCuts } from './cut-up.ts';
import { expectSawable } from './sawable.ts';

const openFor = (problem: CuttingProblem): FewPieces =>
  openFewPieces(
    problem,
    weigh(
      problem,
      problem.pieces.map(piece => piece.blanks.length),
    ).shares(),
  );

function together(problem: CuttingProblem): boolean {
  const few = openFor(problem);
  const lies = everyLie(few);
  few.sets.set(lies);
  return comesOut(few, lies.length);
}

/** Every piece, as it lies with the grain. */
const everyLie = (few: FewPieces): readonly number[] => [...few.lying.keys()];

function someAreApart(few: FewPieces): boolean {
  const companions = openCompanions(few);
  const lies = everyLie(few);
  return lies.some(
    one =>
      lies.some(
        two =>
          two > one &&
          lies.some(three => three > two && !isAmong(companions.bits, companionsOf(companions, one, two), three)),
      ) ||
      lies.some(two => two > one && !isAmong(companions.bits, companionsOf(companions, one, nobody(companions)), two)),
  );
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
        // What is apart does not come out, and neither does it with others.
        if (someAreApart(openFor(problem))) expect(expected).toBe(false);
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
        const tree = treeOfFew(openFor(problem), everyLie(openFor(problem)));
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

  it('that were cut from one sheet are found to come out of it, and take no more than it by any weights', () => {
    const tried = { found: 0, all: 0 };
    fc.assert(
      fc.property(someCuts(3, 8), cuts => {
        const sizes = cutUp([90, 70], cuts);
        const problem = problemFor([90, 70], sizes, 'free');
        const { shares } = weigh(
          problem,
          problem.pieces.map(piece => piece.blanks.length),
        );
        for (const share of shares()) {
          const all = problem.pieces.reduce((sum, piece, kind) => sum + piece.blanks.length * (share[kind] ?? 0), 0);
          expect(all).toBeLessThanOrEqual(1 + 1e-9);
        }
        // Of up to five pieces every way is tried, of more of them the likeliest.
        if (sizes.length < 6) expect(together(problem)).toBe(true);
        if (sizes.length < 6 || sizes.length > 7) return;
        tried.all += 1;
        tried.found += together(problem) ? 1 : 0;
      }),
      { numRuns: 500, seed: 3 },
    );

    expect(tried.found / tried.all).toBeGreaterThan(0.95);
  });

  it('of which three are apart are told by two of them', () => {
    const three = fc.array(fc.tuple(aSide, aSide), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(three, sizes => {
        const problem = problemFor([8, 7], sizes, 'free');
        const few = openFor(problem);
        const companions = openCompanions(few);
        const [one = 0, two = 0, third = 0] = everyLie(few);
        const row = companionsOf(companions, one, two);
        expect(isAmong(companions.bits, row, third)).toBe(byEveryCut(sizes, 8, 7));
      }),
      { numRuns: 300, seed: 4 },
    );
  });
});
