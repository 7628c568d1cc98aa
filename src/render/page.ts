import type { Figure } from './figure.ts';
import type { Symbology } from './symbols.ts';

/**
 * A page as a list of things at fixed places, in points from its top left corner. Nothing is left to decide: `draw`
 * writes it down, the numbers of pages when all are laid out. Tints come first, so that no line is hidden by one.
 */
export type Page = {
  readonly width: number;
  readonly height: number;
  readonly tints: readonly Tint[];
  readonly items: readonly Item[];
  readonly links: readonly Link[];
  readonly targets: readonly Target[];
  /** Those whose pages its late texts name, by the number in their signs. */
  readonly bookmarks: readonly string[];
};

/** A page without what is drawn on it. */
export type Bare = Omit<Page, 'tints' | 'items'>;

/** A grey area without an edge: 0 is black, 1 white. */
export type Tint = Box & { readonly grey: number };

export type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

export type Item =
  | {
      readonly kind: 'text';
      readonly x: number;
      /** The base line. */
      readonly y: number;
      /** As typeset, its letters and blanks one glyph each. */
      readonly set: string;
      readonly size: number;
      readonly bold: boolean;
    }
  | (Box & { readonly kind: 'frame'; readonly weight: number })
  | {
      readonly kind: 'line';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly weight: number;
    }
  | {
      readonly kind: 'symbol';
      /** Top left corner of the first dark module; the quiet zone is kept free around it. */
      readonly x: number;
      readonly y: number;
      readonly symbol: Symbology;
      /** Width of a module, and how tall a module of the symbol is drawn. */
      readonly module: number;
      readonly tall: number;
    }
  | { readonly kind: 'figure'; readonly x: number; readonly y: number; readonly figure: Figure }
  | LateText;

/** A line with numbers of pages in it, which are known when all is laid out. `x` to `x + room` is its place. */
export type LateText = {
  readonly kind: 'late';
  readonly x: number;
  readonly y: number;
  readonly room: number;
  readonly align: Align;
  readonly size: number;
  readonly runs: readonly Run[];
};

export type Align = 'left' | 'centre' | 'right';

/** Typeset text of one face. */
export type Run = { readonly set: string; readonly bold: boolean; readonly width: number };

/** An area that leads to the target of that name. */
export type Link = Box & { readonly to: string };

/** A place that links lead to, and that stands in the outline where it has a title. */
export type Target = {
  readonly bookmark: string;
  readonly title: string;
  readonly level: number;
  readonly y: number;
};
