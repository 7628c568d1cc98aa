import { type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import type { Figure } from './figure.ts';
import type { Awaited } from './flow/context.ts';
import type { BegunPage } from './flow/pages.ts';
import type { Paper } from './flow/paper.ts';
import { sectionSheets } from './flow/section.ts';
import type { Fonts } from './fonts.ts';
import type { Element, Section } from './markup.ts';
import type { Page } from './page.ts';
import type { Symbols } from './symbols.ts';

export type FlowOptions = {
  readonly paper: Paper;
  readonly fonts: Fonts;
  readonly symbols: Symbols;
  readonly complain: (found: Diagnostic) => void;
};

/** Lays out one document, section after section. */
export type Flow = {
  /** Each page as soon as it is full. The last is not finished before the next section is laid out. */
  readonly pagesOf: (section: Section, figures: ReadonlyMap<string, Figure>) => Iterable<Page>;
  /** Once all is laid out: a bookmark that is nowhere is a problem of who asked for it. */
  readonly end: () => void;
};

/**
 * Each section starts a new page, or goes on the last one before it: that page is finished when the next section is laid
 * out. Nothing is scaled, clipped or dropped: lines are broken to their place, rows and kept
 * blocks go to the next page whole, and what no page can hold is split. What cannot be laid out (a column without room, a
 * drawing or a symbol wider than its place) is a problem at its template's line.
 */
export function openFlow({ paper, fonts, symbols, complain }: FlowOptions): Flow {
  const awaited = new Map<string, Awaited>();
  const bookmarks: string[] = [];
  const found = new Set<string>();
  const note = ({ targets }: Page) => {
    for (const { bookmark } of targets) found.add(bookmark);
  };
  let last: BegunPage | undefined;
  return {
    *pagesOf({ element, origin }, figures) {
      const told = (by: Element, reason: string) =>
        complain(problem('sheet-has-no-room', origin(by.at), { reason: `<${by.name}>: ${reason}` }));
      const shared = { fonts, figures, symbols, awaited, bookmarks, complain: told };
      const before = last;
      const sheets = sectionSheets(element, paper, before, shared);
      let next = sheets.next();
      for (; next.done !== true; next = sheets.next()) {
        note(next.value);
        yield next.value;
      }
      last = next.value;
      if (before !== undefined) note(before.sheet);
    },
    end: () => {
      for (const [bookmark, asked] of awaited) {
        if (!found.has(bookmark)) asked.complain(`there is no bookmark "${bookmark}"`);
      }
    },
  };
}
