import { lengthOf } from '../units/read-length.ts';

/** What a machine takes and leaves where the workbook has no setting for it. Common practice, all of it. */

/** One pass over the jointer. */
export const JOINTER_PASS = lengthOf('1/32');

/** Left on the strips of a solid panel, to come off when the glued-up blank is flattened. */
export const FLATTENING_ALLOWANCE = lengthOf('1/32');

/** A piece to try the panel's rabbet on: wide enough to hold behind a push block. */
export const RABBET_TEST_WIDTH = lengthOf('4');

/** What a blank for glass stops keeps to hold when the last one is ripped off, and how many come off one blank. */
export const STOP_BLANK_HOLD = lengthOf('2');
export const STOPS_FROM_BLANK = 4;

/** Under the first, a push block or stick; under the second, a block that spans the blade's path and holds down. */
export const PUSH_BLOCK_FROM = lengthOf('6');
export const PUSH_BLOCK_NARROW_FROM = lengthOf('3');

/** One person lifts no more: the load constant of the NIOSH lifting equation (1994), 23 kg. */
export const LIFT_MAX_KG = 23;
