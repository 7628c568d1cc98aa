import type { Draft } from '../draft.ts';
import { roomOn } from './label-grid.ts';
import type { TagWords } from './tag-words.ts';

/** Three lines and a symbol: what goes on no line is left out whole, last things first. */
export type SmallTag = {
  readonly code: string;
  readonly barcode: string;
  /** What it is (role, door, offcut), and of which cabinet and room, or of which stock. */
  readonly what: string;
  /** Its finished size beside its code, where both have room on one line; else it stands before `what`. */
  readonly size: string;
  /** How the tag sits on the piece, on its back face and which way up; and what is done to the piece next. */
  readonly lies: string;
};

export function smallTag({ code, barcode, size, what, lies, next }: TagWords, { job, pen }: Draft): SmallTag {
  const { width } = roomOn(job.shop.labels);
  const isBeside = pen.measure(code, LARGE, true) + APART + pen.measure(size, LARGE, true) <= width;
  const fits = (bold: boolean) => (said: string) => pen.measure(said, SMALL, bold) <= width;
  return {
    code,
    barcode,
    size: isBeside ? size : '',
    what: firstOf(shorter(isBeside ? what : [size, ...what], SPACED), fits(true)),
    lies: firstOf(
      [...shorter(next.slice(0, 3), ' → ').map(steps => [...lies, steps].join(SPACED)), ...shorter(lies, SPACED)],
      fits(false),
    ),
  };
}

/** All of it, all but the last, and so on to the first alone. */
const shorter = (said: readonly string[], between: string): readonly string[] =>
  said.map((_, left) => said.slice(0, said.length - left).join(between));

/** The first that fits; the last where none does, and the label ends it in dots. */
const firstOf = (ways: readonly string[], fits: (said: string) => boolean): string =>
  ways.find(fits) ?? ways.at(-1) ?? '';

const SPACED = ' · ';

/** Sizes of type as tags.hbs has them, and what is free between code and size, in points. */
const LARGE = 12.5;
const SMALL = 9;
const APART = 8;
