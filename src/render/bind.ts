import { createHash } from 'node:crypto';
import { PDFContext, PDFHexString, PDFRawStream, type PDFRef, PDFWriter } from 'pdf-lib';
import { type Attachment, attach } from './bind/attach.ts';
import { embedFace } from './bind/embed.ts';
import { linksOf } from './bind/links.ts';
import { metadata } from './bind/metadata.ts';
import { outline } from './bind/outline.ts';
import { packed } from './bind/packed.ts';
import { usedCodes } from './bind/used-codes.ts';
import { FACE_NAMES } from './draw/pen.ts';
import { openDraw } from './draw.ts';
import type { Fonts } from './fonts.ts';
import type { Page } from './page.ts';

/** What a document says of itself. Its date is the job's, so that the same job gives the same bytes. */
export type About = {
  readonly title: string;
  readonly subject: string;
  readonly author: string;
  readonly program: string;
  readonly language: 'en' | 'es';
  /** `2025-03-14`, or none. */
  readonly date: string | undefined;
  readonly attachments: readonly Attachment[];
};

/** Binds pages into one PDF file (ISO 32000-1): fonts with only the letters used, outline, links, attachments. */
export async function bind(pages: readonly Page[], fonts: Fonts, about: About): Promise<Uint8Array> {
  const context = PDFContext.create();
  const digest = createHash('sha256').update(JSON.stringify({ ...about, attachments: [] }));
  const tree = context.nextRef();
  const used = usedCodes(pages);
  const resources = context.register(
    context.obj({
      Font: {
        [FACE_NAMES.regular]: embedFace(fonts.regular, used.regular, context),
        [FACE_NAMES.bold]: embedFace(fonts.bold, used.bold, context),
      },
    }),
  );
  const draw = openDraw(fonts);
  const refs: readonly PDFRef[] = pages.map(() => context.nextRef());
  const links = linksOf(pages, refs, context);
  for (const [index, page] of pages.entries()) {
    const content = Buffer.from(draw(page), 'latin1');
    digest.update(content);
    const leaf = {
      Type: 'Page',
      Parent: tree,
      MediaBox: [0, 0, page.width, page.height],
      Resources: resources,
      Contents: context.register(packed(content, {}, context)),
      ...links(page),
    };
    const ref = refs[index];
    if (ref !== undefined) context.assign(ref, context.obj(leaf));
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
      ...outline(pages, refs, context),
      ...attach(about.attachments, about.date, context),
    }),
  );
  context.trailerInfo.Info = context.register(context.obj(info));
  context.trailerInfo.ID = context.obj([PDFHexString.of(id), PDFHexString.of(id)]);
  return PDFWriter.forContext(context, Number.POSITIVE_INFINITY).serializeToBuffer();
}
