import { type PDFContext, PDFHexString, PDFName, PDFString } from 'pdf-lib';
import { pdfDate } from './metadata.ts';
import { packed } from './packed.ts';

/** A file that rides in the document. */
export type Attachment = {
  readonly name: string;
  readonly mime: string;
  readonly description: string;
  readonly bytes: Uint8Array;
};

/** Attachments as entries of the catalog (ISO 32000-1, 7.11.4), in the order of their names. */
export function attach(attachments: readonly Attachment[], date: string | undefined, context: PDFContext) {
  if (attachments.length === 0) return {};
  const sorted = [...attachments].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  const names = sorted.flatMap(attachment => {
    const { name, mime, description, bytes } = attachment;
    const changed = date === undefined ? {} : { ModDate: PDFString.of(pdfDate(date)) };
    const file = packed(bytes, { Type: 'EmbeddedFile', Subtype: mime }, context);
    file.dict.set(PDFName.of('Params'), context.obj({ Size: bytes.length, ...changed }));
    const spec = {
      Type: 'Filespec',
      F: PDFString.of(name),
      UF: PDFHexString.fromText(name),
      Desc: PDFHexString.fromText(description),
      AFRelationship: 'Data',
      EF: { F: context.register(file) },
    };
    return [PDFString.of(name), context.register(context.obj(spec))];
  });
  const specs = names.filter((_, index) => index % 2 === 1);
  return { Names: { EmbeddedFiles: { Names: names } }, AF: specs };
}
