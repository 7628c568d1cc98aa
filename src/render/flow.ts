import { type Diagnosed, type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import type { Figure } from './figure.ts';
import type { Awaited } from './flow/context.ts';
import { numbered } from './flow/numbers.ts';
import type { Paper } from './flow/paper.ts';
import { sectionSheets } from './flow/section.ts';
import type { Sheet } from './flow/strip.ts';
import type { Fonts } from './fonts.ts';
import type { Element, Section } from './markup.ts';
import type { Page } from './page.ts';
import { openSymbols, type Symbols } from './symbols.ts';

export type FlowOptions = {
  readonly paper: Paper;
  readonly fonts: Fonts;
  /** Those of another document of the job, so that what both show is worked out once. */
  readonly symbols?: Symbols;
};

/**
 * Lays a document out: sections in their order, each from a new page. Nothing is scaled, clipped or dropped: lines are
 * broken to their place, rows and kept blocks go to the next page whole, and what no page can hold is split. What cannot
 * be laid out (a column without room, a drawing or a symbol wider than its place) is a problem at its template's line.
 */
export function flow(
  sections: Iterable<Section>,
  figures: ReadonlyMap<string, Figure>,
  { paper, fonts, symbols = openSymbols() }: FlowOptions,
): Diagnosed<readonly Page[]> {
  const diagnostics: Diagnostic[] = [];
  const awaited = new Map<string, Awaited>();
  const shared = { fonts, figures, symbols, awaited };
  const sheets: Sheet[] = [];
  for (const { element, origin } of sections) {
    const complain = (by: Element, reason: string) =>
      diagnostics.push(problem('sheet-has-no-room', origin(by.at), { reason: `<${by.name}>: ${reason}` }));
    for (const sheet of sectionSheets(element, paper, { ...shared, complain })) sheets.push(sheet);
  }
  return { value: numbered(sheets, awaited, fonts), diagnostics };
}
