import { deflateSync } from 'node:zlib';
import { type PDFContext, PDFName, PDFRawStream } from 'pdf-lib';

/** Bytes as a compressed stream object with the entries given. */
export function packed(
  bytes: Uint8Array,
  entries: { [name: string]: string | number },
  context: PDFContext,
): PDFRawStream {
  const stream = PDFRawStream.of(context.obj(entries), deflateSync(bytes));
  stream.dict.set(PDFName.of('Filter'), PDFName.of('FlateDecode'));
  return stream;
}
