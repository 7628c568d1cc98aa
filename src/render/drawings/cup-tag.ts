import { INCH, type Length, minus, mm } from '../../units/length.ts';
import type { Figure, Mark } from '../figure.ts';
import { circle, fitting, LETTERING, type Pen, text, WEIGHT } from './pen.ts';

/** A round tag that rides in a hinge cup while the door is finished: to be cut out, in its true size. */
export function cupTag(code: string, job: string, cup: Length, pen: Pen): Figure {
  const across = (minus(cup, PLAY) / INCH) * 72;
  const middle = across / 2;
  const size = SIZES.find(each => pen.measure(code, each, true) <= across * CHORD) ?? LETTERING;
  const lettering = (words: string, type: number, bold: boolean, y: number): Mark =>
    text([middle, y], fitting(words, across * CHORD, type, bold, pen), { size: type, bold });
  return {
    width: across + 1,
    height: across + 1,
    marks: [
      circle([middle, middle], middle - 0.5, WEIGHT.thin),
      lettering(code, size, true, middle + size * 0.2),
      lettering(job, LETTERING, false, middle + size * 0.2 + 16),
    ],
  };
}

const PLAY = mm(2);
/** Lettering near the middle of a circle has this share of its width. */
const CHORD = 0.84;
const SIZES = [19, 15, 12.5];
