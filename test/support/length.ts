import { lengthOf } from '../../src/units/read-length.ts';

/** A length as it is written on the shop's paper: `length('14 3/8')`, `length('390 mm')`. */
export const length = lengthOf;
