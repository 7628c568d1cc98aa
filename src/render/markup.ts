import { SaxesParser } from 'saxes';
import type { Diagnosed, Diagnostic } from '../diagnostics/diagnostic.ts';
import { problem } from '../diagnostics/diagnostic.ts';
import type { Place } from '../diagnostics/place.ts';
import { type ElementName, type Shape, shapeOf } from './elements.ts';

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
  const root = open('packet', {}, 0, shapeOf('packet'));
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
    const opened = open(tag.name, tag.attributes as Element['attributes'], start, shapeOf(tag.name));
    const reason = misfit(opened, parent);
    if (reason !== undefined) complain(start, reason);
    parent.children.push(opened.element as Element);
    stack.push(opened);
  });
  parser.on('closetag', () => {
    stack.pop();
  });
  parser.on('text', text => {
    const parent = stack.at(-1) ?? root;
    if (parent.shape?.holds.has('text') === true) parent.children.push(text);
    else if (text.trim() !== '') complain(parser.position, `<${parent.element.name}> cannot hold words of its own`);
  });
  parser.write(filled.text).close();
  const sections = root.children.filter(child => typeof child !== 'string');
  return {
    value: diagnostics.length === 0 ? sections.map(element => ({ element, origin: filled.origin })) : [],
    diagnostics,
  };
}

/** An element that is being read; one of a name that there is not has no shape. */
type Opened = {
  readonly element: Omit<Element, 'name'> & { readonly name: string };
  readonly children: Node[];
  readonly shape: Shape | undefined;
};

function open(name: string, attributes: Element['attributes'], at: number, shape: Shape | undefined): Opened {
  const children: Node[] = [];
  return { element: { name, attributes, children, at }, children, shape };
}

/** Why an element cannot stand where it stands. */
function misfit({ element: { name, attributes }, shape }: Opened, parent: Opened): string | undefined {
  if (shape === undefined) return `<${name}> is no element of the markup`;
  if (parent.shape?.holds.has(name) === false) return `<${name}> cannot stand in <${parent.element.name}>`;
  for (const attribute in attributes) {
    const form = shape.takes.get(attribute);
    if (form === undefined) return `<${name}> has no attribute ${attribute}`;
    const value = attributes[attribute] ?? '';
    if (!form.test(value)) return `${attribute}="${value}" is not what <${name}> takes`;
  }
  return undefined;
}

/** The parser's own words start with the line and column of what it saw, which is not the template's. */
const plainReason = (message: string): string => message.replace(/^\d+:\d+: /, '').replace(/\.$/, '');
