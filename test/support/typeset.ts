import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { type About, bind } from '../../src/render/bind.ts';
import { openDraw } from '../../src/render/draw.ts';
import type { Figure } from '../../src/render/figure.ts';
import { prepare } from '../../src/render/fill.ts';
import type { Paper } from '../../src/render/flow/paper.ts';
import { openFlow } from '../../src/render/flow.ts';
import { openFonts } from '../../src/render/fonts.ts';
import { readMarkup } from '../../src/render/markup.ts';
import type { Page } from '../../src/render/page.ts';
import { openSymbols } from '../../src/render/symbols.ts';
import { fontFile } from './font-file.ts';

export const FONTS = openFonts(fontFile('400Regular'), fontFile('600SemiBold'));

/** A template, its data and drawings as pages, with everything that was wrong on the way. */
export function pagesOf(
  template: string,
  data: object = {},
  figures: ReadonlyMap<string, Figure> = new Map(),
  paper: Paper = 'letter',
): { readonly pages: readonly Page[]; readonly diagnostics: readonly Diagnostic[] } {
  const filled = prepare([{ file: 'templates/sheet.hbs', text: template }], {})('sheet', data);
  const sections = readMarkup(filled.value);
  const found: Diagnostic[] = [];
  const complain = (diagnostic: Diagnostic) => void found.push(diagnostic);
  const flow = openFlow({ paper, fonts: FONTS, symbols: openSymbols(), complain });
  const pages = sections.value.flatMap(section => [...flow.pagesOf(section, figures)]);
  flow.end();
  return {
    pages,
    diagnostics: [...filled.diagnostics, ...sections.diagnostics, ...found],
  };
}

/** What was wrong, as `line: reason`. */
export const complaints = (diagnostics: readonly Diagnostic[]): readonly string[] =>
  diagnostics.map(({ at, facts }) => {
    const line = at.kind === 'template' ? at.line : '?';
    return `${line}: ${'reason' in facts ? facts.reason : ''}`;
  });

export const ABOUT: About = {
  title: 'Packet J-1',
  subject: 'Doors of a kitchen',
  author: 'Ash Lane',
  program: 'stilebook',
  language: 'en',
  date: '2025-03-14',
  attachments: [],
};

export const pdfOf = async (pages: readonly Page[], about: Partial<About> = {}): Promise<Uint8Array> =>
  (await bind(pages, openDraw(FONTS), { ...ABOUT, ...about })).pdf;
