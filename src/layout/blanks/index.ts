import type { Part } from '../../calculate/door-set.ts';
import type { BlankCode } from '../../codes/codes.ts';
import type { Blank } from '../shop-plan.ts';
import { type BlankPlan, stockOf, type Work } from '../work.ts';
import { boardBlanks, stopBlanks, strips } from './boards.ts';
import { spares } from './spares.ts';
import { testBlanks, trialKey, trials } from './trials.ts';

/**
 * Every rough piece that has to come from a board or a sheet: for the parts, for the strips of solid panels, to try each
 * bit and rabbet on, and to spare. Rough blanks are longer and wider than what they become; what comes off a sheet is
 * of final size.
 */
export function planBlanks(work: Work): BlankPlan {
  const standsFor = new Map<BlankCode, Part>();
  const testPieces = new Map<string, readonly BlankCode[]>();
  const blanks = [...sheetBlanks(work), ...boardBlanks(work), ...stopBlanks(work), ...strips(work)];
  for (const { blank, part } of spares(work)) {
    blanks.push(blank);
    standsFor.set(blank.code, part);
  }
  for (const trial of trials(work)) {
    const pieces = testBlanks(trial, work);
    testPieces.set(
      trialKey(trial.operation, trial.key),
      pieces.map(blank => blank.code),
    );
    for (const blank of pieces) standsFor.set(blank.code, trial.longest);
    blanks.push(...pieces);
  }
  return { blanks, standsFor, testPieces };
}

/** What comes off a sheet is of final size: the saw's fence and stop are set to it. */
const sheetBlanks = (work: Work): readonly Blank[] =>
  work.doorSet.parts
    .filter(part => stockOf(part, work)?.kind === 'sheet')
    .map(part => ({
      code: part.code as string as BlankCode,
      purpose: 'part',
      parts: [part.code],
      operation: undefined,
      stock: part.stock ?? '',
      length: part.length.value,
      width: part.width.value,
    }));
