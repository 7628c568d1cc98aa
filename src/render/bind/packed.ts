import { deflateSync } from 'node:zlib';
import { type PDFContext, PDFName, PDFRawStream } from 'pdf-lib';

type Entries = { readonly [name: string]: string | number };

/** Bytes as a stream object with the entries given: compressed, unless there are so few that they would only grow. */
export const packed = (bytes: Uint8Array, entries: Entries, context: PDFContext): PDFRawStream =>
  bytes.length < FEW
    ? PDFRawStream.of(context.obj({ ...entries }), bytes)
    : deflated(deflateSync(bytes), context, entries);

const FEW = 150;

/** Bytes that are compressed already. */
export function deflated(bytes: Uint8Array, context: PDFContext, entries: Entries = {}): PDFRawStream {
  const stream = PDFRawStream.of(context.obj({ ...entries }), bytes);
  stream.dict.set(PDFName.of('Filter'), PDFName.of('FlateDecode'));
  return stream;
}
