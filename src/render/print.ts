import { type Diagnosed, type Diagnostic, isError } from '../diagnostics/diagnostic.ts';
import type { Draft, View } from './draft.ts';
import type { Fill } from './fill.ts';
import { flow } from './flow.ts';
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
};

/** Fills the templates of some sheets and lays them out as one document, so that they can refer to each other's pages. */
export function print(
  views: ReadonlyMap<SheetName, View<object>>,
  { drafted, fill, fonts, symbols }: Press,
): Diagnosed<readonly Page[]> {
  const diagnostics: Diagnostic[] = [];
  const figures = new Map([...views.values()].flatMap(view => [...view.figures]));
  const ready = sections(views, drafted, fill, diagnostics);
  const flowed = flow(ready, figures, { paper: drafted.job.paper, fonts, symbols });
  return { value: flowed.value, diagnostics: [...diagnostics, ...flowed.diagnostics] };
}

/** Filled and read one after the other, so that one sheet's markup is gone before the next is made. */
function* sections(
  views: ReadonlyMap<SheetName, View<object>>,
  drafted: Draft,
  fill: Fill,
  diagnostics: Diagnostic[],
): Generator<Section> {
  for (const [name, { data }] of views) {
    const filled = fill(name, { ...data, job: heading(drafted) });
    diagnostics.push(...filled.diagnostics);
    if (filled.diagnostics.some(isError)) continue;
    const read = readMarkup(filled.value);
    diagnostics.push(...read.diagnostics);
    yield* read.value;
  }
}

/** What stands at the head of every page. */
const heading = ({ job, revision, program }: Draft) => ({
  number: job.number,
  name: job.name,
  customer: job.customer,
  revision: revision.letter,
  program,
});
