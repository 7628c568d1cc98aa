import { type Diagnostic, isError } from '../diagnostics/diagnostic.ts';
import type { Draft, View } from './draft.ts';
import type { Fill } from './fill.ts';
import { openFlow } from './flow.ts';
import type { Fonts } from './fonts.ts';
import { readMarkup, type Section } from './markup.ts';
import type { Page } from './page.ts';
import type { SheetName } from './sheet-names.ts';
import type { Symbols } from './symbols.ts';

/** What sheets are printed with. */
export type Press = {
  readonly drafted: Draft;
  readonly fill: Fill;
  readonly fonts: Fonts;
  readonly symbols: Symbols;
  readonly complain: (found: Diagnostic) => void;
};

export type Printed = { readonly sheet: SheetName; readonly page: Page };

/**
 * Fills the templates of some sheets and lays them out as one document, so that they can refer to each other's pages.
 * Page after page, so that a large job is never in memory whole.
 */
export function* print(views: ReadonlyMap<SheetName, View<object>>, press: Press): Generator<Printed> {
  const { drafted, fonts, symbols, complain } = press;
  const figures = new Map([...views.values()].flatMap(view => [...view.figures]));
  const flow = openFlow({ paper: drafted.job.paper, fonts, symbols, complain });
  for (const [sheet, view] of views) {
    for (const section of sections(sheet, view, press)) {
      for (const page of flow.pagesOf(section, figures)) yield { sheet, page };
    }
  }
  flow.end();
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
