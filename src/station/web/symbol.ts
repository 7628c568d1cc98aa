import bwip from 'bwip-js/node';

/** A Code 128 symbol in millimetres, quiet zones and all. */
export type Symbol128 = {
  readonly width: number;
  readonly height: number;
  readonly bars: readonly { readonly x: number; readonly width: number }[];
};

/** Narrowest bar and quiet zone: what a hand scanner reads from a cheap printer's label. */
const MODULE_MM = 0.3;
const QUIET_MODULES = 10;
const HEIGHT_MM = 11;

export function symbolOf(barcode: string): Symbol128 {
  const [symbol] = bwip.raw({ bcid: 'code128', text: barcode }) as readonly { readonly sbs?: readonly number[] }[];
  const bars = [];
  let at = QUIET_MODULES;
  // Widths of bar, space, bar … in modules.
  for (const [index, modules] of (symbol?.sbs ?? []).entries()) {
    if (index % 2 === 0) bars.push({ x: millimetres(at), width: millimetres(modules) });
    at += modules;
  }
  return { width: millimetres(at + QUIET_MODULES), height: HEIGHT_MM, bars };
}

const millimetres = (modules: number): number => Math.round(modules * MODULE_MM * 1000) / 1000;
