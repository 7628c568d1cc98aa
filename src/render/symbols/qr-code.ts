import bwip from 'bwip-js/node';
import type { Dark, Symbology } from '../symbols.ts';

/** A QR code (ISO/IEC 18004) of error correction M with quiet zones of 4 modules; undefined for what it cannot hold. */
export function qrCode(text: string): Symbology | undefined {
  try {
    const [{ pixs, pixx, pixy }] = bwip.raw('qrcode', text, { eclevel: 'M' } as object) as unknown as [Matrix];
    return { kind: 'matrix', width: pixx, height: pixy, quiet: 4, dark: rowsOfDark(pixs, pixx) };
  } catch {
    return undefined;
  }
}

/** What the library gives: its modules row by row, and how many across and down. */
type Matrix = { readonly pixs: readonly number[]; readonly pixx: number; readonly pixy: number };

/** Neighbouring dark modules of a row as one bar. */
function rowsOfDark(modules: readonly number[], width: number): readonly Dark[] {
  const dark: Dark[] = [];
  for (let at = 0; at < modules.length; at += 1) {
    if (modules[at] !== 1) continue;
    const start = at;
    while (modules[at + 1] === 1 && (at + 1) % width !== 0) at += 1;
    dark.push([start % width, Math.floor(start / width), at - start + 1, 1]);
  }
  return dark;
}
