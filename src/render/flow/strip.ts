import type { Item, Link, Target, Tint } from '../page.ts';

/** A page while it is being filled. */
export type Sheet = {
  readonly width: number;
  readonly height: number;
  readonly tints: Tint[];
  readonly items: Item[];
  readonly links: Link[];
  readonly targets: Target[];
  readonly bookmarks: readonly string[];
};

/** How much of the room above and below things is kept: all of it, or less where that saves a page. */
export type Spacing = 'usual' | 'close';

export const ROOM_KEPT: { readonly [S in Spacing]: number } = { usual: 1, close: 0.4 };

export type Size = {
  readonly height: number;
  /** Of its first line, from its top; undefined for what has no words. */
  readonly baseline?: number | undefined;
};

/**
 * A level piece of a sheet: what flows down a page, one below the other. Its width is that of its place; its size is
 * known for both spacings, so that a section is laid out once and then set as it needs fewer pages.
 */
export type Strip = { readonly [S in Spacing]: Size } & {
  /** Stays on one page with the strip after it. */
  readonly keepsNext?: boolean | undefined;
  /** Room that vanishes at the top of a page. */
  readonly isRoom?: boolean;
  /** What comes above it where it starts a new page: the heads of its table. */
  readonly heads?: Strip | undefined;
  /** The part that fits into so much height, and the rest; undefined where nothing fits. For what no page can hold. */
  readonly split?: (room: number, spacing: Spacing) => readonly [Strip, Strip] | undefined;
  readonly put: (x: number, y: number, sheet: Sheet, spacing: Spacing) => void;
};

export const blankSheet = (width: number, height: number, bookmarks: readonly string[] = []): Sheet => ({
  width,
  height,
  tints: [],
  items: [],
  links: [],
  targets: [],
  bookmarks,
});

/** For what has no room to give. */
export const evenly = (size: Size): { readonly [S in Spacing]: Size } => ({ usual: size, close: size });

export function heightOf(strips: readonly Strip[], spacing: Spacing): number {
  let height = 0;
  for (const strip of strips) height += strip[spacing].height;
  return height;
}

/** Strips as one that stays together where a page can hold it. */
export function stacked(strips: readonly Strip[], keepsNext = false): Strip {
  return {
    usual: { height: heightOf(strips, 'usual'), baseline: strips[0]?.usual.baseline },
    close: { height: heightOf(strips, 'close'), baseline: strips[0]?.close.baseline },
    keepsNext,
    split: (room, spacing) => {
      const [fits, rest] = parted(strips, room, spacing);
      return fits.length === 0 || rest.length === 0 ? undefined : [stacked(fits), stacked(rest, keepsNext)];
    },
    put: (x, y, sheet, spacing) => putAll(strips, x, y, sheet, spacing),
  };
}

export function putAll(strips: readonly Strip[], x: number, y: number, sheet: Sheet, spacing: Spacing): void {
  let top = y;
  for (const strip of strips) {
    strip.put(x, top, sheet, spacing);
    top += strip[spacing].height;
  }
}

/** The strips that fit into `room`, one of them split if need be, and the rest. */
export function parted(
  strips: readonly Strip[],
  room: number,
  spacing: Spacing,
): readonly [readonly Strip[], readonly Strip[]] {
  let left = room;
  for (const [index, strip] of strips.entries()) {
    const { height } = strip[spacing];
    if (height > left + SLACK) {
      const [head, tail] = strip.split?.(left, spacing) ?? [];
      if (head === undefined || tail === undefined) return [strips.slice(0, index), strips.slice(index)];
      return [
        [...strips.slice(0, index), head],
        [tail, ...strips.slice(index + 1)],
      ];
    }
    left -= height;
  }
  return [strips, []];
}

/** Sums of heights are floats: a thousandth of a point is no overflow. */
export const SLACK = 0.001;
