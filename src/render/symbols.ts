import bwip from 'bwip-js/node';

/**
 * The dark parts of a symbol in modules: across, down, wide, high of each in turn, from its top left corner; and its size without
 * the quiet zone that it needs on each side. A linear symbol is one module high; on paper it is as tall as wanted.
 */
export type Symbology = {
  readonly kind: 'linear' | 'matrix';
  readonly width: number;
  readonly height: number;
  readonly quiet: number;
  /** Packed: a large job has symbols by the ten thousand. */
  readonly dark: Uint16Array;
};

/** Symbols by their text, each worked out once: a tag, its route row and its door sheet show the same one. */
export type Symbols = { readonly [S in Symbol]: (text: string) => Symbology | undefined };
type Symbol = 'bar' | 'qr';

/**
 * `bar` is Code 128 (ISO/IEC 15417) with quiet zones of 10 modules, `qr` a QR code (ISO/IEC 18004) of error correction
 * M with quiet zones of 4. Undefined for what a symbol cannot hold.
 */
export const openSymbols = (): Symbols => ({ bar: remembering(code128), qr: remembering(qrCode) });

function remembering(make: (text: string) => Symbology): (text: string) => Symbology | undefined {
  const made = new Map<string, Symbology | undefined>();
  return text => {
    if (!made.has(text))
      made.set(
        text,
        attempt(() => make(text)),
      );
    return made.get(text);
  };
}

/** The library throws for what it cannot encode. */
function attempt<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch {
    return undefined;
  }
}

function code128(text: string): Symbology {
  // Other characters would come out of a scanner as somebody else's.
  if (!/^[ -~]+$/.test(text)) throw new Error('Code 128 holds ASCII');
  const [{ sbs }] = bwip.raw('code128', text) as unknown as [{ sbs: readonly number[] }];
  const dark: number[] = [];
  let across = 0;
  for (const [index, width] of sbs.entries()) {
    if (index % 2 === 0) dark.push(across, 0, width, 1);
    across += width;
  }
  return { kind: 'linear', width: across, height: 1, quiet: 10, dark: Uint16Array.from(dark) };
}

/** What the library gives for a matrix symbol: its modules row by row, and how many across and down. */
type Matrix = { readonly pixs: readonly number[]; readonly pixx: number; readonly pixy: number };

function qrCode(text: string): Symbology {
  const options = { eclevel: 'M' } as object;
  const [{ pixs, pixx, pixy }] = bwip.raw('qrcode', text, options) as unknown as [Matrix];
  return { kind: 'matrix', width: pixx, height: pixy, quiet: 4, dark: rowsOfDark(pixs, pixx) };
}

/** Neighbouring dark modules of a row as one bar. */
function rowsOfDark(modules: readonly number[], width: number): Uint16Array {
  const dark: number[] = [];
  for (let at = 0; at < modules.length; at += 1) {
    if (modules[at] !== 1) continue;
    const start = at;
    while (modules[at + 1] === 1 && (at + 1) % width !== 0) at += 1;
    dark.push(start % width, Math.floor(start / width), at - start + 1, 1);
  }
  return Uint16Array.from(dark);
}
