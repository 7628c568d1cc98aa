import { SaxesParser } from 'saxes';
import type { Diagnosed, Diagnostic } from '../diagnostics/diagnostic.ts';
import { problem } from '../diagnostics/diagnostic.ts';
import type { Place } from '../diagnostics/place.ts';
import { type ElementName, isElementName, SHAPES } from './elements.ts';

/** An element of the markup with its children in order; `at` is where it starts in the filled template. */
export type Element = {
  readonly name: ElementName;
  readonly attributes: { readonly [name: string]: string };
  readonly children: readonly Node[];
  readonly at: number;
};

export type Node = Element | string;

export const isElement = (node: Node): node is Element => typeof node !== 'string';

/** A template with its data in it. `origin` finds the template's file and line for a place in `text`. */
export type Filled = { readonly text: string; readonly origin: (at: number) => Place };

/** One section of the packet, and where its elements came from. */
export type Section = { readonly element: Element; readonly origin: Filled['origin'] };

/**
 * Reads filled templates into their sections. What is not well-formed, an element in a place where it does not belong
 * and an attribute that it does not have are problems at the template's line; such a template gives no sections.
 */
export function readMarkup(filled: Filled): Diagnosed<readonly Section[]> {
  const root = open('packet', {}, 0);
  const stack = [root];
  const diagnostics: Diagnostic[] = [];
  const parser = new SaxesParser({ fragment: true, position: true });
  let start = 0;
  const complain = (at: number, reason: string) =>
    diagnostics.push(problem('template-unreadable', filled.origin(at), { reason }));

  parser.on('error', error => complain(parser.position, plainReason(error.message)));
  parser.on('opentagstart', ({ name }) => {
    // The parser has read `<`, the name, and one character more.
    start = parser.position - name.length - 2;
  });
  parser.on('opentag', tag => {
    const parent = stack.at(-1) ?? root;
    const element = open(tag.name, tag.attributes as Element['attributes'], start);
    const reason = misfit(element, parent);
    if (reason !== undefined) complain(start, reason);
    parent.children.push(element as Element);
    stack.push(element);
  });
  parser.on('closetag', () => {
    stack.pop();
  });
  parser.on('text', text => {
    const parent = stack.at(-1) ?? root;
    if (isElementName(parent.name) && SHAPES[parent.name].holds.includes('text')) parent.children.push(text);
    else if (text.trim() !== '') complain(parser.position, `<${parent.name}> cannot hold words of its own`);
  });
  parser.write(filled.text).close();
  const sections = root.children.filter(child => typeof child !== 'string');
  return {
    value: diagnostics.length === 0 ? sections.map(element => ({ element, origin: filled.origin })) : [],
    diagnostics,
  };
}

type Opened = Omit<Element, 'children' | 'name'> & { readonly name: string; readonly children: Node[] };

const open = (name: string, attributes: Element['attributes'], at: number): Opened => ({
  name,
  attributes,
  children: [],
  at,
});

/** Why an element cannot stand where it stands. */
function misfit(element: Opened, parent: Opened): string | undefined {
  const { name, attributes } = element;
  if (!isElementName(name)) return `<${name}> is no element of the markup`;
  if (isElementName(parent.name) && !SHAPES[parent.name].holds.includes(name))
    return `<${name}> cannot stand in <${parent.name}>`;
  const { takes } = SHAPES[name];
  for (const attribute in attributes) {
    const form = Object.hasOwn(takes, attribute) ? takes[attribute] : undefined;
    if (form === undefined) return `<${name}> has no attribute ${attribute}`;
    const value = attributes[attribute] ?? '';
    if (!form.test(value)) return `${attribute}="${value}" is not what <${name}> takes`;
  }
  return undefined;
}

/** The parser's own words start with the line and column of what it saw, which is not the template's. */
const plainReason = (message: string): string => message.replace(/^\d+:\d+: /, '').replace(/\.$/, '');
