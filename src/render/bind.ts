import { createHash } from 'node:crypto';
import { PDFContext, PDFHexString, PDFRawStream, type PDFRef, PDFWriter } from 'pdf-lib';
import type { Language } from '../diagnostics/languages.ts';
import { type Attachment, attach } from './bind/attach.ts';
import { embedFace } from './bind/embed.ts';
import { linksOf } from './bind/links.ts';
import { metadata } from './bind/metadata.ts';
import { outline } from './bind/outline.ts';
import { deflated, packed } from './bind/packed.ts';
import { FACE_NAMES } from './draw/pen.ts';
import type { Draw, Drawn } from './draw.ts';
import type { Bare, Page } from './page.ts';

/** What a document says of itself. Its date is the job's, so that the same job gives the same bytes. */
export type About = {
  readonly title: string;
  readonly subject: string;
  readonly author: string;
  readonly program: string;
  readonly language: Language;
  /** `2025-03-14`, or none. */
  readonly date: string | undefined;
  readonly attachments: readonly Attachment[];
};

export type Bound = { readonly pdf: Uint8Array; readonly pages: number };

/**
 * Binds pages into one PDF file (ISO 32000-1): fonts with only the letters used, outline, links, attachments. Those of
 * `front` stand first, and are asked for last.
 */
export async function bind(
  pages: Iterable<Page>,
  draw: Draw,
  about: About,
  front: Iterable<Page> = [],
): Promise<Bound> {
  const inner = drawn(pages, draw);
  const leaves = [...drawn(front, draw), ...inner];
  const context = PDFContext.create();
  const digest = createHash('sha256').update(JSON.stringify({ ...about, attachments: [] }));
  const tree = context.nextRef();
  const face = (name: 'regular' | 'bold') => embedFace(draw.fonts[name], draw.used.of(name), context);
  const numberOf = pageNumbers(leaves);
  const contents: PDFRef[][] = [];
  for (const [index, { bookmarks, head, rest }] of leaves.entries()) {
    const of = (bookmark: number) => numberOf.get(bookmarks[bookmark] ?? '');
    const end = Buffer.from(rest({ own: index + 1, of, all: leaves.length }), 'latin1');
    digest.update(head).update(end);
    const streams = [deflated(head, context), ...(end.length === 0 ? [] : [packed(end, {}, context)])];
    contents.push(streams.map(stream => context.register(stream)));
  }
  const resources = context.register(
    context.obj({ Font: { [FACE_NAMES.regular]: face('regular'), [FACE_NAMES.bold]: face('bold') } }),
  );
  const refs: readonly PDFRef[] = leaves.map(() => context.nextRef());
  const links = linksOf(leaves, refs, context);
  for (const [index, leaf] of leaves.entries()) {
    const entries = {
      Type: 'Page',
      Parent: tree,
      MediaBox: [0, 0, leaf.width, leaf.height],
      Resources: resources,
      Contents: contents[index] ?? [],
      ...links(leaf),
    };
    context.assign(refs[index] ?? tree, context.obj(entries));
  }
  context.assign(tree, context.obj({ Type: 'Pages', Kids: [...refs], Count: refs.length }));

  for (const { bytes } of about.attachments) digest.update(bytes);
  const id = digest.digest().subarray(0, 16).toString('hex');
  const { info, xmp } = metadata(about, id);
  context.trailerInfo.Root = context.register(
    context.obj({
      Type: 'Catalog',
      Pages: tree,
      Lang: PDFHexString.fromText(about.language),
      Metadata: context.register(PDFRawStream.of(context.obj({ Type: 'Metadata', Subtype: 'XML' }), xmp)),
      ViewerPreferences: { DisplayDocTitle: true, PrintScaling: 'None' },
      PageLabels: { Nums: [0, { S: 'D' }] },
      ...outline(leaves, refs, context),
      ...attach(about.attachments, about.date, context),
    }),
  );
  context.trailerInfo.Info = context.register(context.obj(info));
  context.trailerInfo.ID = context.obj([PDFHexString.of(id), PDFHexString.of(id)]);
  const pdf = await PDFWriter.forContext(context, Number.POSITIVE_INFINITY).serializeToBuffer();
  return { pdf, pages: leaves.length };
}

/** A page once it is drawn: what was on it is gone. */
type Leaf = Bare & Drawn;

/** Draws each page as soon as it is laid out. */
function drawn(pages: Iterable<Page>, draw: Draw): readonly Leaf[] {
  const leaves: Leaf[] = [];
  for (const page of pages) {
    const { width, height, links, targets, bookmarks } = page;
    leaves.push({ width, height, links, targets, bookmarks, ...draw.page(page) });
  }
  return leaves;
}

function pageNumbers(leaves: readonly Leaf[]): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  for (const [index, { targets }] of leaves.entries()) {
    for (const { bookmark } of targets) if (!numbers.has(bookmark)) numbers.set(bookmark, index + 1);
  }
  return numbers;
}
