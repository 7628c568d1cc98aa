import { type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import { cellOf } from '../diagnostics/place.ts';
import type { FrameStyle, Opening } from '../import/job.ts';
import { railShoulder } from './frame.ts';
import type { Division } from './grid.ts';
import type { Leaf } from './leaves.ts';
import { openingName } from './opening-name.ts';

/** A leaf must have a width and a height. */
export function leafHasSize(opening: Opening, { width, height }: Leaf): readonly Diagnostic[] {
  if (width.value > 0 && height.value > 0) return [];
  const facts = { door: openingName(opening), width: width.value, height: height.value };
  return [problem('door-has-no-size', cellOf(opening.from, width.value > 0 ? 'height' : 'width'), facts)];
}

/** Between the members something must be left: first the rails, then each panel. */
export function frameHasRoom(
  opening: Opening,
  leaf: Leaf,
  style: FrameStyle,
  division: Division,
): readonly Diagnostic[] {
  const shoulder = railShoulder(leaf, style).value;
  const width = division.columns[0]?.working.value ?? shoulder;
  const cramped = division.rows.find(row => row.size <= 0);
  if (shoulder > 0 && width > 0 && cramped === undefined) return [];
  const door = openingName(opening);
  const heights =
    cramped === undefined
      ? []
      : [
          problem('sight-has-no-height', heightCell(opening), {
            door,
            row: division.rows.indexOf(cramped) + 1,
            height: cramped.size,
          }),
        ];
  if (shoulder <= 0)
    return [problem('rail-has-no-length', cellOf(opening.from, 'width'), { door, shoulder }), ...heights];
  return width > 0
    ? heights
    : [problem('sight-has-no-width', cellOf(opening.from, 'width'), { door, width }), ...heights];
}

const heightCell = (opening: Opening) =>
  cellOf(opening.from, opening.grid.middleRailHeights.length > 0 ? 'middleRailHeights' : 'height');
