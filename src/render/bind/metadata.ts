import { PDFHexString, PDFString } from 'pdf-lib';
import type { About } from '../bind.ts';

/** What the document says of itself, in both ways that readers look for: the info dictionary and XMP (ISO 16684-1). */
export function metadata(about: About, id: string) {
  const { title, subject, author, program, date } = about;
  const dates = date === undefined ? {} : { CreationDate: PDFString.of(pdfDate(date)) };
  const info = {
    Title: PDFHexString.fromText(title),
    Subject: PDFHexString.fromText(subject),
    Author: PDFHexString.fromText(author),
    Creator: PDFHexString.fromText(program),
    Producer: PDFHexString.fromText(program),
    ...dates,
  };
  return { info, xmp: Buffer.from(xmpOf(about, id), 'utf8') };
}

/** Midnight, in no zone: a job has a day and no hour. */
export const pdfDate = (date: string): string => `D:${date.replaceAll('-', '')}000000Z`;

function xmpOf({ title, subject, author, program, language, date }: About, id: string): string {
  const dated = date === undefined ? '' : `\n   <xmp:CreateDate>${date}T00:00:00Z</xmp:CreateDate>`;
  return `<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
 <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
  <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
    xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/">
   <dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escaped(title)}</rdf:li></rdf:Alt></dc:title>
   <dc:description><rdf:Alt><rdf:li xml:lang="x-default">${escaped(subject)}</rdf:li></rdf:Alt></dc:description>
   <dc:creator><rdf:Seq><rdf:li>${escaped(author)}</rdf:li></rdf:Seq></dc:creator>
   <dc:language><rdf:Bag><rdf:li>${language}</rdf:li></rdf:Bag></dc:language>
   <dc:format>application/pdf</dc:format>
   <pdf:Producer>${escaped(program)}</pdf:Producer>
   <xmp:CreatorTool>${escaped(program)}</xmp:CreatorTool>${dated}
   <xmpMM:DocumentID>uuid:${uuid(id)}</xmpMM:DocumentID>
  </rdf:Description>
 </rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>`;
}

const escaped = (text: string): string =>
  text
    .replace(/(?![\t\n\r])[\p{Cc}\p{Cs}\ufffe\uffff]/gu, '\ufffd')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');

const uuid = (id: string): string => id.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
