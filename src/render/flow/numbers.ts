import { type Fonts, widthOf } from '../fonts.ts';
import type { Item, Page } from '../page.ts';
import { ALL_PAGES, NUMBER_TO_COME, PAGE_OF, THIS_PAGE } from '../typeset.ts';
import type { Awaited } from './context.ts';
import { putRuns, startOf } from './paragraph.ts';
import type { LateText, Run, Sheet } from './strip.ts';

/** Writes the numbers of pages in, now that they are known. A bookmark that is nowhere is a problem of who asked for it. */
export function numbered(
  sheets: readonly Sheet[],
  awaited: ReadonlyMap<string, Awaited>,
  fonts: Fonts,
): readonly Page[] {
  const pageOf = new Map<string, number>();
  for (const [index, sheet] of sheets.entries()) {
    for (const { bookmark } of sheet.targets) if (!pageOf.has(bookmark)) pageOf.set(bookmark, index + 1);
  }
  const bookmarks = [...awaited.keys()];
  for (const [bookmark, { complain }] of awaited) {
    if (!pageOf.has(bookmark)) complain(`there is no bookmark "${bookmark}"`);
  }
  return sheets.map((sheet, index) => {
    const numberFor = (code: number): string => {
      if (code === THIS_PAGE) return String(index + 1);
      if (code === ALL_PAGES) return String(sheets.length);
      return String(pageOf.get(bookmarks[code - PAGE_OF] ?? '') ?? '–');
    };
    const items: Item[] = [];
    for (const item of sheet.items) {
      if (item.kind === 'late') items.push(...written(item, numberFor, fonts));
      else items.push(item);
    }
    return { ...sheet, items };
  });
}

function written(late: LateText, numberFor: (code: number) => string, fonts: Fonts): readonly Item[] {
  const runs = late.runs.map(({ set, bold }): Run => {
    const known = set.replace(new RegExp(NUMBER_TO_COME, 'g'), sign => numberFor(sign.charCodeAt(0)));
    return { set: known, bold, width: widthOf(known, late.size, bold ? fonts.bold : fonts.regular) };
  });
  const width = runs.reduce((total, run) => total + run.width, 0);
  const items: Item[] = [];
  putRuns(runs, startOf(late.x, late.room, late.align, width), late.y, late.size, { items });
  return items;
}
