import { isHighHalf } from '../fonts.ts';
import type { Page } from '../page.ts';
import { meaningOf, typeset } from '../typeset.ts';

/** The codes that pages use of each face, with what each means to a reader, in the order of their codes. */
export type UsedCodes = ReadonlyMap<number, string>;

export function usedCodes(pages: readonly Page[]): { readonly regular: UsedCodes; readonly bold: UsedCodes } {
  const seen = { regular: new Map<number, string>(), bold: new Map<number, string>() };
  for (const { items } of pages) {
    for (const item of items) {
      if (item.kind === 'text') note(item.set, item.bold ? seen.bold : seen.regular);
      if (item.kind !== 'figure') continue;
      for (const mark of item.figure.marks) {
        if (mark.kind === 'text') note(typeset(mark.text), mark.bold === true ? seen.bold : seen.regular);
      }
    }
  }
  return { regular: inOrder(seen.regular), bold: inOrder(seen.bold) };
}

function note(set: string, seen: Map<number, string>): void {
  for (let at = 0; at < set.length; at += 1) {
    const code = set.charCodeAt(at);
    if (seen.has(code)) continue;
    if (isHighHalf(code)) continue;
    // The second half of a pair stands for both.
    const isPair = at > 0 && isHighHalf(set.charCodeAt(at - 1));
    seen.set(code, isPair ? set.slice(at - 1, at + 1) : meaningOf(code));
  }
}

const inOrder = (seen: ReadonlyMap<number, string>): UsedCodes => new Map([...seen].sort(([a], [b]) => a - b));
