import type { Diagnosed } from '../diagnostics/diagnostic.ts';
import { type About, bind } from './bind.ts';
import { type Draft, draft, type RenderInput } from './draft.ts';
import { type PacketWords, prepare, type Template } from './fill.ts';
import { openFonts } from './fonts.ts';
import { makeManifest } from './manifest.ts';
import type { Packet } from './packet.ts';
import { csvOf, partsTable } from './parts-list.ts';
import { type Press, print } from './print.ts';
import { SHEET_NAMES, type SheetName } from './sheet-names.ts';
import { viewsOf } from './sheets.ts';
import { openSymbols } from './symbols.ts';
import type { WriteTable } from './table-workbook.ts';

/** What the packet is printed with: files that ship with the program, or that a shop puts in their place. */
export type RenderAssets = {
  /** One for each sheet, and the partials that they share. */
  readonly templates: readonly Template[];
  /** Of the job's language. */
  readonly words: PacketWords;
  readonly fonts: { readonly regular: Uint8Array; readonly bold: Uint8Array };
  /** Begins at once and may go on beside the printing: its library takes longer to load than a small packet to print. */
  readonly writeTable: WriteTable;
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
  // Single labels go into a printer of their own: no page of theirs is bound into the packet.
  const single = input.job.shop.labels.page === 'single';
  const asked = SHEET_NAMES.filter(
    name => (options.only ?? SHEET_NAMES).includes(name) && !(single && name === 'tags'),
  );
  const codes = options.tagsOf === undefined ? undefined : new Set(options.tagsOf);
  const press = { drafted, fill, fonts, symbols: openSymbols() };
  const manifest = makeManifest(drafted);
  const about = aboutOf(drafted);
  const attachment = {
    name: 'manifest.json',
    mime: 'application/json',
    description: drafted.say('parts.title'),
    bytes: Buffer.from(JSON.stringify(manifest)),
  };
  const tagsTitle = `${about.title}: ${drafted.say('section.tags')}`;
  const parts = partsTable(drafted);
  const papers = async () => {
    // One bound after the other: the pages of a large job fill the memory once, not twice.
    const packet = await bound(viewsOf(asked, drafted, codes), press, { ...about, attachments: [attachment] });
    const tags = await bound(viewsOf(['tags'], drafted, codes), press, { ...about, title: tagsTitle, attachments: [] });
    return { packet, tags };
  };
  const [partsXlsx, { packet, tags }] = await Promise.all([assets.writeTable(parts), papers()]);
  return {
    value: {
      packetPdf: packet.pdf,
      tagsPdf: tags.pdf,
      partsXlsx,
      partsCsv: csvOf(parts),
      manifest,
      pages: { packet: packet.pages, tags: tags.pages },
    },
    diagnostics: [...packet.diagnostics, ...tags.diagnostics],
  };
}

async function bound(views: Parameters<typeof print>[0], press: Press, about: About) {
  const { value: pages, diagnostics } = print(views, press);
  return { pdf: await bind(pages, press.fonts, about), pages: pages.length, diagnostics };
}

const aboutOf = ({ job, revision, program, say }: Draft) => ({
  title: `${job.number} ${job.name}`.trim(),
  subject: say('head.revision', { letter: revision.letter }),
  author: '',
  program: `stilebook ${program}`,
  language: job.language,
  date: job.dueDate,
});
