import { type PDFContext, PDFHexString, type PDFRef } from 'pdf-lib';
import type { Bare } from '../page.ts';

/** A line of the outline and those under it. */
type Entry = { readonly title: string; readonly page: PDFRef; readonly top: number; readonly under: Entry[] };

/** The outline as entries of the catalog: sections, and what is marked in them, closed until it is opened. */
export function outline(pages: readonly Bare[], refs: readonly PDFRef[], context: PDFContext) {
  const entries = entriesOf(pages, refs);
  if (entries.length === 0) return {};
  const root = context.nextRef();
  const { first, last } = chain(entries, root, context);
  context.assign(root, context.obj({ Type: 'Outlines', First: first, Last: last, Count: entries.length }));
  return { Outlines: root, PageMode: 'UseOutlines' };
}

function entriesOf(pages: readonly Bare[], refs: readonly PDFRef[]): readonly Entry[] {
  const entries: Entry[] = [];
  for (const [index, { targets, height }] of pages.entries()) {
    for (const { title, level, y } of targets) {
      const page = refs[index];
      if (title === '' || page === undefined) continue;
      const parent = level === 1 ? undefined : entries.at(-1);
      (parent?.under ?? entries).push({ title, page, top: height - y, under: [] });
    }
  }
  return entries;
}

function chain(entries: readonly Entry[], parent: PDFRef, context: PDFContext) {
  const refs = entries.map(() => context.nextRef());
  for (const [index, { title, page, top, under }] of entries.entries()) {
    const ref = refs[index] ?? parent;
    const below = under.length === 0 ? undefined : chain(under, ref, context);
    const item = {
      Title: PDFHexString.fromText(title),
      Parent: parent,
      Dest: [page, 'XYZ', null, top, null],
      ...(index > 0 ? { Prev: refs[index - 1] } : {}),
      ...(index < refs.length - 1 ? { Next: refs[index + 1] } : {}),
      ...(below === undefined ? {} : { First: below.first, Last: below.last, Count: -under.length }),
    };
    context.assign(ref, context.obj(item));
  }
  return { first: refs[0] ?? parent, last: refs.at(-1) ?? parent };
}
