import type { Figure } from '../figure.ts';
import type { Fonts } from '../fonts.ts';
import type { Element } from '../markup.ts';
import type { Align } from '../page.ts';
import type { Symbols } from '../symbols.ts';
import { PAGE_OF, PAGES_OF_MAX } from '../typeset.ts';

export type StyleName = 'small' | 'body' | 'large' | 'heading' | 'title' | 'display' | 'huge';

/** What elements are set with: handed down, and changed on the way by what stands around them. */
export type Context = {
  readonly fonts: Fonts;
  readonly figures: ReadonlyMap<string, Figure>;
  readonly symbols: Symbols;
  /** Bookmarks whose pages are printed somewhere, numbered as they are met. */
  readonly awaited: Map<string, Awaited>;
  /** Their names, by their numbers. */
  readonly bookmarks: string[];
  readonly complain: (element: Element, reason: string) => void;
  /** Dots of the printer to the inch: symbols stand on whole dots. */
  readonly dots: number;
  readonly style: StyleName;
  readonly bold: boolean;
  readonly align: Align;
  readonly isTinted: boolean;
};

/** A bookmark that something leads to: it must be there in the end. */
export type Awaited = { readonly number: number; readonly complain: (reason: string) => void };

export const SIZES: { readonly [S in StyleName]: number } = {
  small: 9,
  body: 10,
  large: 12.5,
  heading: 13,
  title: 19,
  display: 28,
  huge: 44,
};

const BOLD_STYLES: readonly StyleName[] = ['heading', 'title', 'display', 'huge'];

/** The context inside an element: its style, weight and place of text, where it names them. */
export function within(element: Element, context: Context): Context {
  const { style, bold, fill } = element.attributes;
  // A row's `align` is where shorter columns stand, not how their words do.
  const align = element.name === 'row' ? undefined : element.attributes['align'];
  return style === undefined && bold === undefined && align === undefined && fill === undefined
    ? context
    : changed(context, { style, bold, align, fill });
}

type Change = { readonly [name in 'style' | 'bold' | 'align' | 'fill']?: string | undefined };

export function changed(context: Context, { style, bold, align, fill }: Change): Context {
  const name = (style as StyleName | undefined) ?? context.style;
  const isBold = style === undefined ? context.bold : BOLD_STYLES.includes(name);
  // Written out: this is done for every cell of a packet, and a copy of the rest takes ten times as long.
  const { fonts, figures, symbols, awaited, bookmarks, complain, dots } = context;
  return {
    fonts,
    figures,
    symbols,
    awaited,
    bookmarks,
    complain,
    dots,
    style: name,
    bold: bold === undefined ? isBold : bold === 'yes',
    align: (align as Align | undefined) ?? context.align,
    isTinted: context.isTinted || fill === 'light',
  };
}

/** Notes that something leads to a bookmark, and gives the sign that stands for its page until that is known. */
export function signFor(element: Element, to: string, { awaited, bookmarks, complain }: Context): string {
  const number = awaited.get(to)?.number ?? awaited.size;
  if (number >= PAGES_OF_MAX) {
    complain(element, `more than ${PAGES_OF_MAX} bookmarks are asked for`);
    return '';
  }
  if (number === awaited.size) {
    awaited.set(to, { number, complain: reason => complain(element, reason) });
    bookmarks.push(to);
  }
  return String.fromCharCode(PAGE_OF + number);
}

/** A grey that a copier neither drops nor turns into dots over the words. */
export const TINT = 0.92;

const POINTS_IN: { readonly [unit: string]: number } = { '': 1, in: 72, mm: 72 / 25.4, mil: 0.072 };

/** A length of the markup in points. */
export function points(text: string | undefined, otherwise: number): number {
  if (text === undefined) return otherwise;
  const known = lengths.get(text) ?? pointsIn(text);
  if (lengths.size < LENGTHS_MAX) lengths.set(text, known);
  return Number.isNaN(known) ? otherwise : known;
}

/** Templates name the same few lengths for every row. */
const lengths = new Map<string, number>();
const LENGTHS_MAX = 1000;

function pointsIn(text: string): number {
  const [, number, unit = ''] = /^([\d.]+)([a-z]*)$/.exec(text) ?? [];
  return Number(number) * (POINTS_IN[unit] ?? 1);
}
