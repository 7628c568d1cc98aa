import fc from 'fast-check';
import { problemOf } from '../../../src/layout/cutting/in-units.ts';
import type { CuttingProblem } from '../../../src/layout/cutting/problem.ts';
import { mm } from '../../../src/units/length.ts';
import { aBlank, aShop, aSize, aStock } from './a-job.ts';

export type Size = readonly [length: number, width: number];

/** Different sizes out of one sheet, in whole millimetres; the blade takes nothing, and nothing is trimmed. */
export function problemFor(sheet: Size, sizes: readonly Size[], stages: 2 | 3 | 'free'): CuttingProblem {
  const blanks = sizes.map(([length, width], at) => aBlank('ply', `P${at + 1}`, mm(length), mm(width)));
  const size = { ...aSize('96 x 48'), length: mm(sheet[0]), width: mm(sheet[1]) };
  const none = mm(0);
  return problemOf(blanks, aStock([size]), aShop({ kerf: none, sheetTrim: none, stages }));
}

/** Every cut at every whole millimetre, and every way to share the pieces between the two sides. */
export function byEveryCut(sizes: readonly Size[], length: number, width: number): boolean {
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

/** Cuts parts of a sheet in two, one after the other; nothing is lost. */
export function cutUp(sheet: Size, cuts: readonly (readonly [boolean, number, number])[]): readonly Size[] {
  return cuts.reduce<readonly Size[]>(
    (parts, [crosscut, share, which]) => {
      const at = which % parts.length;
      const [length, width] = parts[at] ?? sheet;
      const cut = Math.round(((crosscut ? length : width) * share) / 100);
      if (cut === 0 || cut === (crosscut ? length : width)) return parts;
      const halves: readonly Size[] = crosscut
        ? [
            [cut, width],
            [length - cut, width],
          ]
        : [
            [length, cut],
            [length, width - cut],
          ];
      return [...parts.slice(0, at), ...halves, ...parts.slice(at + 1)];
    },
    [sheet],
  );
}

/** For `cutUp`: which way, at which share of a part in hundredths, and which part. */
export const someCuts = (least: number, most: number): fc.Arbitrary<readonly (readonly [boolean, number, number])[]> =>
  fc.array(fc.tuple(fc.boolean(), fc.integer({ min: 20, max: 80 }), fc.nat({ max: 9 })), {
    minLength: least,
    maxLength: most,
  });
