import { SaxesParser } from 'saxes';
import { damaged, refusal } from './refusal.ts';

/** What a part's elements are told to, by their names without prefix. Attributes likewise. */
export type Listener = {
  readonly open?: (name: string, attributes: Attributes) => void;
  readonly text?: (text: string) => void;
  readonly close?: (name: string) => void;
};
export type Attributes = { readonly [name: string]: string };

/** Deeper than any part of a workbook. */
const DEPTH_MAX = 100;

/** Reads a part of a workbook. Refuses what is not well formed, and a DOCTYPE: no spreadsheet program writes one. */
export function readXml(bytes: Uint8Array, part: string, listener: Listener): void {
  const parser = new SaxesParser({ xmlns: false });
  let depth = 0;
  parser.on('error', () => {
    throw damaged(part);
  });
  parser.on('doctype', () => {
    throw refusal('file-has-foreign-entities', { part });
  });
  parser.on('opentag', ({ name, attributes }) => {
    depth += 1;
    if (depth > DEPTH_MAX) throw damaged(part);
    listener.open?.(local(name), localAttributes(attributes));
  });
  parser.on('closetag', ({ name }) => {
    depth -= 1;
    listener.close?.(local(name));
  });
  if (listener.text !== undefined) {
    parser.on('text', listener.text);
    parser.on('cdata', listener.text);
  }
  parser.write(decode(bytes, part)).close();
}

const local = (name: string): string => name.slice(name.indexOf(':') + 1);

/** `r:id` and `id` may stand side by side; the one with the prefix is kept under its whole name, too. */
function localAttributes(attributes: { readonly [name: string]: string }): Attributes {
  const found: { [name: string]: string } = Object.create(null);
  for (const [name, value] of Object.entries(attributes)) {
    const plain = local(name);
    if (plain !== name) found[`:${plain}`] = value;
    if (plain === name || found[plain] === undefined) found[plain] = value;
  }
  return found;
}

/** Workbooks are written in UTF-8, by rare writers in UTF-16 with its byte-order mark. */
function decode(bytes: Uint8Array, part: string): string {
  const encoding =
    bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : 'utf-8';
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    throw damaged(part);
  }
}
