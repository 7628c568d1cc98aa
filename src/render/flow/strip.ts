import type { Item, Link, Target, Tint } from '../page.ts';

/** A page while it is being filled. */
export type Sheet = {
  readonly width: number;
  readonly height: number;
  readonly tints: Tint[];
  readonly items: (Item | LateText)[];
  readonly links: Link[];
  readonly targets: Target[];
};

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

/** A level piece of a sheet: what flows down a page, one below the other. Its width is that of its place. */
export type Strip = {
  readonly height: number;
  /** Of its first line, from its top; undefined for what has no words. */
  readonly baseline?: number | undefined;
  /** Stays on one page with the strip after it. */
  readonly keepsNext?: boolean | undefined;
  /** Room that vanishes at the top of a page. */
  readonly isRoom?: boolean;
  /** What comes above it where it starts a new page: the heads of its table. */
  readonly heads?: Strip | undefined;
  /** The part that fits into so much height, and the rest; undefined where nothing fits. For what no page can hold. */
  readonly split?: (room: number) => readonly [Strip, Strip] | undefined;
  readonly put: (x: number, y: number, sheet: Sheet) => void;
};

export const blankSheet = (width: number, height: number): Sheet => ({
  width,
  height,
  tints: [],
  items: [],
  links: [],
  targets: [],
});

export const heightOf = (strips: readonly Strip[]): number => strips.reduce((total, strip) => total + strip.height, 0);

/** Strips as one that stays together where a page can hold it. */
export function stacked(strips: readonly Strip[], keepsNext = false): Strip {
  return {
    height: heightOf(strips),
    baseline: strips[0]?.baseline,
    keepsNext,
    split: room => {
      const [fits, rest] = parted(strips, room);
      return fits.length === 0 || rest.length === 0 ? undefined : [stacked(fits), stacked(rest, keepsNext)];
    },
    put: (x, y, sheet) => putAll(strips, x, y, sheet),
  };
}

export function putAll(strips: readonly Strip[], x: number, y: number, sheet: Sheet): void {
  let top = y;
  for (const strip of strips) {
    strip.put(x, top, sheet);
    top += strip.height;
  }
}

/** The strips that fit into `room`, one of them split if need be, and the rest. */
export function parted(strips: readonly Strip[], room: number): readonly [readonly Strip[], readonly Strip[]] {
  let left = room;
  for (const [index, strip] of strips.entries()) {
    if (strip.height > left + SLACK) {
      const [head, tail] = strip.split?.(left) ?? [];
      if (head === undefined || tail === undefined) return [strips.slice(0, index), strips.slice(index)];
      return [
        [...strips.slice(0, index), head],
        [tail, ...strips.slice(index + 1)],
      ];
    }
    left -= strip.height;
  }
  return [strips, []];
}

/** Sums of heights are floats: a thousandth of a point is no overflow. */
export const SLACK = 0.001;
