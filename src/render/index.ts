import type { Diagnosed, Diagnostic } from '../diagnostics/diagnostic.ts';
import { bind } from './bind.ts';
import { type Draft, draft, type RenderInput } from './draft.ts';
import { openDraw } from './draw.ts';
import { type PacketWords, prepare, type Template } from './fill.ts';
import { openFonts } from './fonts.ts';
import { makeManifest } from './manifest.ts';
import type { Manifest, Packet } from './packet.ts';
import type { Page } from './page.ts';
import { csvOf, partsTable, type Table } from './parts-list.ts';
import { type Press, type Printing, print } from './print.ts';
import { remnantsTable } from './remnants.ts';
import { SHEET_NAMES, type SheetName } from './sheet-names.ts';
import { openSymbols } from './symbols.ts';

/** What the packet is printed with: files that ship with the program, or that a shop puts in their place. */
export type RenderAssets = {
  /** One for each sheet, and the partials that they share. */
  readonly templates: readonly Template[];
  /** Of the job's language. */
  readonly words: PacketWords;
  readonly fonts: { readonly regular: Uint8Array; readonly bold: Uint8Array };
  /** Writes a table as a workbook. Begins at once and may go on beside the printing. */
  readonly writeTable: (table: Table) => Promise<Uint8Array>;
};

export type RenderOptions = {
  /** Only these sheets; all of them where it is undefined. */
  readonly only?: readonly SheetName[] | undefined;
  /** Only the tags of these codes, where some are printed again. */
  readonly tagsOf?: readonly string[] | undefined;
};

/**
 * Turns the job, laid out, into its papers: the packet and the tags as PDF, the parts list, the manifest. The same input
 * and assets give the same bytes. What a template has wrong is a diagnostic at its line; then the papers are incomplete
 * and must not be used.
 */
export async function render(
  input: RenderInput,
  assets: RenderAssets,
  options: RenderOptions = {},
): Promise<Diagnosed<Packet>> {
  const fonts = openFonts(assets.fonts.regular, assets.fonts.bold);
  const drafted = draft(input, assets.words, fonts.measure);
  const fill = prepare(assets.templates, assets.words);
  const diagnostics: Diagnostic[] = [];
  const complain = (found: Diagnostic) => void diagnostics.push(found);
  const press = { drafted, fill, fonts, symbols: openSymbols(), complain };
  const manifest = makeManifest(drafted);
  const parts = partsTable(drafted);
  const [partsXlsx, { packet, tags }] = await Promise.all([assets.writeTable(parts), papers(press, options, manifest)]);
  return {
    value: {
      packetPdf: packet.pdf,
      tagsPdf: tags.pdf,
      partsXlsx,
      partsCsv: csvOf(parts),
      remnantsCsv: csvOf(remnantsTable(drafted)),
      manifest,
      pages: { packet: packet.pages, tags: tags.pages },
    },
    diagnostics,
  };
}

/** The packet, and the pages of its tags once more by themselves. */
async function papers(press: Press, { only = SHEET_NAMES, tagsOf }: RenderOptions, manifest: Manifest) {
  const { drafted, fonts } = press;
  // Single labels go into a printer of their own: no page of theirs is bound into the packet.
  const isSingle = drafted.job.shop.labels.page === 'single';
  const sheets = SHEET_NAMES.filter(name => only.includes(name) && !(isSingle && name === 'tags'));
  const codes = tagsOf === undefined ? undefined : new Set(tagsOf);
  const tagPages: Page[] = [];
  function* keepingTags({ inner }: Printing): Generator<Page> {
    for (const { sheet, page } of inner) {
      if (sheet === 'tags') tagPages.push(page);
      yield page;
    }
  }
  const draw = openDraw(fonts);
  const about = aboutOf(drafted);
  const attachment = {
    name: 'manifest.json',
    mime: 'application/json',
    description: drafted.say('parts.title'),
    bytes: Buffer.from(JSON.stringify(manifest)),
  };
  const all = print({ sheets, tagsOf: codes }, press);
  const packet = await bind(keepingTags(all), draw, { ...about, attachments: [attachment] }, all.front);
  const title = `${about.title}: ${drafted.say('section.tags')}`;
  const again = sheets.includes('tags') ? tagPages : keepingTags(print({ sheets: ['tags'], tagsOf: codes }, press));
  const tags = await bind(again, draw, { ...about, title, attachments: [] });
  return { packet, tags };
}

const aboutOf = ({ job, revision, program, say }: Draft) => ({
  title: `${job.number} ${job.name}`.trim(),
  subject: say('head.revision', { letter: revision.letter }),
  author: '',
  program: `stilebook ${program}`,
  language: job.language,
  date: job.dueDate,
});
