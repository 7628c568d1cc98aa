import { INCH, type Length, MILLIMETRE } from '../units/length.ts';
import { printLength } from '../units/print-length.ts';
import { lengthOf, type Units } from '../units/read-length.ts';

const SIXTY_FOURTH = lengthOf('1/64');
const THOUSANDTH = lengthOf('0.001');
const TENTH = lengthOf('0.1 mm');

/**
 * A length as a workbook of these units has it, to be read back as the very same: `14 3/8`, `35 mm` and `0.004` in a
 * workbook of inches, `365.125` in one of millimetres.
 */
export function writtenLength(length: Length, units: Units): string {
  if (units === 'mm') return millimetres(length);
  if (length % SIXTY_FOURTH === 0) return printLength(length, { units: 'inch', increment: SIXTY_FOURTH });
  const isThousandths = length % THOUSANDTH === 0 && length % TENTH !== 0;
  return isThousandths ? trimmed((length / INCH).toFixed(3)) : `${millimetres(length)} mm`;
}

/** A nanometre is the sixth digit behind the point. */
const millimetres = (length: Length): string => trimmed((length / MILLIMETRE).toFixed(6));

const trimmed = (decimal: string): string => decimal.replace(/\.?0+$/, '');
