import type { LabelSheet } from '../../trade/shop.ts';
import { INCH, type Length } from '../../units/length.ts';

/** Where the labels are, in points, as the markup takes them. */
export type LabelGrid = {
  readonly paper: string;
  /** Of the printer, to the inch: single labels go through a thermal one. */
  readonly dots: number;
  readonly across: number;
  readonly down: number;
  readonly width: string;
  readonly height: string;
  readonly left: string;
  readonly top: string;
  readonly pitchAcross: string;
  readonly pitchDown: string;
  /** Kept free inside each label. */
  readonly pad: number;
  readonly start: number;
};

export function labelGrid(labels: LabelSheet): LabelGrid {
  const isSingle = labels.page === 'single';
  return {
    paper: isSingle ? `${points(labels.width)} ${points(labels.height)}` : labels.page,
    dots: isSingle ? 203 : 300,
    across: isSingle ? 1 : labels.columns,
    down: isSingle ? 1 : labels.rows,
    width: points(labels.width),
    height: points(labels.height),
    left: isSingle ? '0' : points(labels.left),
    top: isSingle ? '0' : points(labels.top),
    pitchAcross: points(labels.pitchAcross),
    pitchDown: points(labels.pitchDown),
    pad: padOf(labels),
    start: isSingle ? 1 : labels.startAt,
  };
}

/** The room for words on a label, in points. */
export const roomOn = (labels: LabelSheet): { readonly width: number; readonly height: number } => ({
  width: inPoints(labels.width) - 2 * padOf(labels),
  height: inPoints(labels.height) - 2 * padOf(labels),
});

/** Whether a label has room for large type and a drawing: about 80 × 120 mm. */
export const isLarge = ({ width, height }: LabelSheet): boolean => width >= 80 * MM && height >= 120 * MM;

/**
 * The widest module that leaves the symbol its quiet zones on the label. On a thermal printer of 8 dots a millimetre
 * (203 dpi) a module is a whole number of dots, or its bars come out uneven.
 */
export function moduleFor(labels: LabelSheet): string {
  const room = (roomOn(labels).width * INCH) / 72 / MODULES;
  if (labels.page !== 'single') return room >= 13 * MIL ? '13mil' : '10mil';
  const dots = Math.max(2, Math.min(4, Math.floor(room / DOT)));
  return `${dots * 0.125}mm`;
}

/** What is left under three lines of words, but no more than a scanner needs. */
export const barHeight = (labels: LabelSheet): string =>
  points(isLarge(labels) ? LARGE_BARS : Math.max(5 * MM, Math.min(12 * MM, labels.height - 18 * MM)));

const padOf = (labels: LabelSheet): number => (isLarge(labels) ? 10 : 3);

const inPoints = (length: Length | number): number => (length / INCH) * 72;
const points = (length: Length | number): string => inPoints(length).toFixed(3);

/** 11 characters of Code 128 take 156 modules, and 10 of quiet zone on each side (ISO/IEC 15417). */
const MODULES = 176;
const MM = 1_000_000;
const MIL = 25_400;
/** A dot of a 203 dpi printer: 8 to a millimetre. */
const DOT = 125_000;
const LARGE_BARS = 18 * MM;
