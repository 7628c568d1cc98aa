import { type Fonts, widthOf } from '../fonts.ts';
import type { Item, LateText, Run } from '../page.ts';
import { ALL_PAGES, NUMBERS_TO_COME, PAGE_OF, THIS_PAGE } from '../typeset.ts';
import { putRuns, startOf } from './paragraph.ts';

/** What is known when all is laid out: a page's own number, that of each bookmark that it names, and how many there are. */
export type PageNumbers = {
  readonly own: number;
  readonly of: (bookmark: number) => number | undefined;
  readonly all: number;
};

/** A late text with its numbers in it, now that they are known. */
export function written(late: LateText, numbers: PageNumbers, fonts: Fonts): readonly Item[] {
  const numberFor = (code: number): string => {
    if (code === THIS_PAGE) return String(numbers.own);
    if (code === ALL_PAGES) return String(numbers.all);
    return String(numbers.of(code - PAGE_OF) ?? '–');
  };
  const runs = late.runs.map(({ set, bold }): Run => {
    const known = set.replace(NUMBERS_TO_COME, sign => numberFor(sign.charCodeAt(0)));
    return { set: known, bold, width: widthOf(known, late.size, bold ? fonts.bold : fonts.regular) };
  });
  const width = runs.reduce((total, run) => total + run.width, 0);
  const items: Item[] = [];
  putRuns(runs, startOf(late.x, late.room, late.align, width), late.y, late.size, { items });
  return items;
}
