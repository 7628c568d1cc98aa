import type { PDFContext, PDFRef } from 'pdf-lib';
import type { Bare } from '../page.ts';

/** The link annotations of each page, leading to the page and height of their targets. */
export function linksOf(pages: readonly Bare[], refs: readonly PDFRef[], context: PDFContext) {
  const places = new Map<string, readonly (PDFRef | string | number | null)[]>();
  for (const [index, { targets, height }] of pages.entries()) {
    for (const { bookmark, y } of targets) {
      const ref = refs[index];
      if (ref !== undefined && !places.has(bookmark)) places.set(bookmark, [ref, 'XYZ', null, height - y, null]);
    }
  }
  return (page: Bare): { readonly Annots?: PDFRef[] } => {
    const annotations = page.links.flatMap(link => {
      const place = places.get(link.to);
      if (place === undefined) return [];
      const [bottom, top] = [page.height - link.y - link.height, page.height - link.y];
      const annotation = {
        Type: 'Annot',
        Subtype: 'Link',
        Rect: [link.x, bottom, link.x + link.width, top],
        Border: [0, 0, 0],
        // Print: it has nothing to print, and validity checkers want it said.
        F: 4,
        Dest: [...place],
      };
      return [context.register(context.obj(annotation))];
    });
    return annotations.length === 0 ? {} : { Annots: annotations };
  };
}
