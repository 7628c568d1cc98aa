import { type Diagnosed, type Diagnostic, isError } from '../diagnostics/diagnostic.ts';
import type { Draft, View } from './draft.ts';
import type { Figure } from './figure.ts';
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
  const figures = new Map<string, Figure>();
  const sections: Section[] = [];
  for (const [name, view] of views) {
    const filled = fill(name, { ...view.data, job: heading(drafted) });
    const read = filled.diagnostics.some(isError) ? undefined : readMarkup(filled.value);
    diagnostics.push(...filled.diagnostics, ...(read?.diagnostics ?? []));
    sections.push(...(read?.value ?? []));
    for (const [figure, drawing] of view.figures) figures.set(figure, drawing);
  }
  const flowed = flow(sections, figures, { paper: drafted.job.paper, fonts, symbols });
  return { value: flowed.value, diagnostics: [...diagnostics, ...flowed.diagnostics] };
}

/** What stands at the head of every page. */
const heading = ({ job, revision, program }: Draft) => ({
  number: job.number,
  name: job.name,
  customer: job.customer,
  revision: revision.letter,
  program,
});
