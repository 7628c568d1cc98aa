import { isElement, type Node } from '../markup.ts';
import { ALL_PAGES, THIS_PAGE, typeset } from '../typeset.ts';
import { type Context, signFor } from './context.ts';
import type { Span } from './paragraph.ts';

/** The words among an element's children as a paragraph's spans, with any run of white space as one blank. */
export function spansOf(children: readonly Node[], context: Context): readonly Span[] {
  const only = children[0];
  if (children.length === 1 && typeof only === 'string') {
    const plain = /[\t\r\n]| {2}|^ | $/.test(only) ? only.replace(/[ \t\r\n]+/g, ' ').trim() : only;
    return [{ set: typeset(plain), bold: context.bold }];
  }
  return tidied(spansIn(children, context.bold, context));
}

type Raw = { readonly text: string; readonly bold: boolean; readonly sign?: boolean } | 'break';

function spansIn(children: readonly Node[], bold: boolean, context: Context): readonly Raw[] {
  return children.flatMap((child): readonly Raw[] => {
    if (typeof child === 'string') return [{ text: child, bold }];
    const sign = (text: string): readonly Raw[] => [{ text, bold, sign: true }];
    switch (child.name) {
      case 'b':
        return spansIn(child.children, true, context);
      case 'br':
        return ['break'];
      case 'page':
        return sign(String.fromCharCode(THIS_PAGE));
      case 'pages':
        return sign(String.fromCharCode(ALL_PAGES));
      case 'at':
        return sign(signFor(child, child.attributes['to'] ?? '', context));
      default:
        return [];
    }
  });
}

/** Blanks at the ends of lines, and second blanks, go. */
function tidied(raw: readonly Raw[]): readonly Span[] {
  const spans: Span[] = [];
  let isAfterBlank = true;
  for (const each of raw) {
    if (each === 'break') {
      trimLast(spans);
      spans.push('break');
      isAfterBlank = true;
      continue;
    }
    const text = each.text.replace(/[ \t\r\n]+/g, ' ');
    const plain: string = isAfterBlank ? text.trimStart() : text;
    if (plain === '') continue;
    isAfterBlank = plain.endsWith(' ');
    spans.push({ set: each.sign === true ? plain : typeset(plain), bold: each.bold });
  }
  trimLast(spans);
  return spans;
}

function trimLast(spans: Span[]): void {
  const last = spans.at(-1);
  if (last !== undefined && last !== 'break') spans[spans.length - 1] = { ...last, set: last.set.trimEnd() };
}

const INLINE: ReadonlySet<string> = new Set(['b', 'br', 'page', 'pages', 'at']);

/** Whether a node is words of a paragraph, and not a block. */
export const isInline = (node: Node): boolean => !isElement(node) || INLINE.has(node.name);
