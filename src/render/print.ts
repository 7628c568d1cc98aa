import { type Diagnostic, isError } from '../diagnostics/diagnostic.ts';
import type { Draft, View } from './draft.ts';
import type { Fill } from './fill.ts';
import { openFlow } from './flow.ts';
import type { Fonts } from './fonts.ts';
import { readMarkup, type Section } from './markup.ts';
import type { Page } from './page.ts';
import type { SheetName } from './sheet-names.ts';
import { type Asked, type Inner, viewOf } from './sheets.ts';
import type { Symbols } from './symbols.ts';
import { cover } from './views/cover.ts';

/** What sheets are printed with. */
export type Press = {
  readonly drafted: Draft;
  readonly fill: Fill;
  readonly fonts: Fonts;
  readonly symbols: Symbols;
  readonly complain: (found: Diagnostic) => void;
};

/** Pages as they are laid out: a sheet's when they are asked for, so that a large job is never in memory whole. */
export type Printing = {
  readonly inner: Iterable<Printed>;
  /** The cover, which stands first and is laid out last: it says what there is. */
  readonly front: Iterable<Page>;
};

type Printed = { readonly sheet: Inner; readonly page: Page };

/** Fills the templates of some sheets and lays them out as one document, so that they can refer to each other's pages. */
export function print(asked: Asked, press: Press): Printing {
  const { drafted, fonts, symbols, complain } = press;
  const flow = openFlow({ paper: drafted.job.paper, fonts, symbols, complain });
  const printed: SheetName[] = [];
  function* pagesOf(sheet: SheetName, view: View<object>): Generator<Page> {
    for (const section of sections(sheet, view, press)) yield* flow.pagesOf(section, view.figures);
  }
  function* inner(): Generator<Printed> {
    // The next sheet may go on the last page of the one before it.
    let begun: Printed | undefined;
    for (const sheet of asked.sheets) {
      if (sheet === 'cover') continue;
      const view = viewOf(sheet, drafted, asked);
      if (view === undefined) continue;
      printed.push(sheet);
      for (const page of pagesOf(sheet, view)) {
        if (begun !== undefined) yield begun;
        begun = { sheet, page };
      }
    }
    if (begun !== undefined) yield begun;
  }
  function* front(): Generator<Page> {
    if (asked.sheets.includes('cover')) yield* pagesOf('cover', cover(drafted, printed));
    flow.end();
  }
  return { inner: inner(), front: front() };
}

function sections(sheet: SheetName, { data }: View<object>, { drafted, fill, complain }: Press): readonly Section[] {
  const filled = fill(sheet, { ...data, job: heading(drafted) });
  filled.diagnostics.forEach(complain);
  if (filled.diagnostics.some(isError)) return [];
  const read = readMarkup(filled.value);
  read.diagnostics.forEach(complain);
  return read.value;
}

/** What stands at the head of every page. */
const heading = ({ job, revision, program }: Draft) => ({
  number: job.number,
  name: job.name,
  customer: job.customer,
  revision: revision.letter,
  program,
});
