import { code128 } from './symbols/code-128.ts';

/**
 * The dark parts of a symbol in modules, `[across, down, wide, high]` from its top left corner, and its size without
 * the quiet zone that it needs on each side. A linear symbol is one module high; on paper it is as tall as wanted.
 */
export type Symbology = {
  readonly kind: 'linear' | 'matrix';
  readonly width: number;
  readonly height: number;
  readonly quiet: number;
  readonly dark: readonly Dark[];
};

export type Dark = readonly [across: number, down: number, wide: number, high: number];

/** Symbols by their text, each worked out once: a tag, its route row and its door sheet show the same one. */
export type Symbols = { readonly bar: Make; readonly qr: Make };

/** Undefined for what a symbol cannot hold. */
type Make = (text: string) => Symbology | undefined;

/**
 * `bar` is Code 128 (ISO/IEC 15417) with quiet zones of 10 modules. `qr` is handed in where a sheet has such symbols:
 * the library that makes them takes long to load.
 */
export const openSymbols = (qr: Make = () => undefined): Symbols => ({ bar: remembering(linear), qr: remembering(qr) });

function remembering(make: Make): Make {
  const made = new Map<string, Symbology | undefined>();
  return text => {
    const known = made.get(text);
    if (known !== undefined || made.has(text)) return known;
    const symbol = make(text);
    made.set(text, symbol);
    return symbol;
  };
}

function linear(text: string): Symbology | undefined {
  const widths = code128(text);
  if (widths === undefined) return undefined;
  const dark: Dark[] = [];
  let across = 0;
  for (const [index, width] of widths.entries()) {
    if (index % 2 === 0) dark.push([across, 0, width, 1]);
    across += width;
  }
  return { kind: 'linear', width: across, height: 1, quiet: 10, dark };
}
