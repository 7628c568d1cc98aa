import { create, type Font } from 'fontkit';
import type { Measure } from './figure.ts';
import { BAR, BOUND, isFraction, isNumberToCome, LOWERED, RAISED, SPACE_BEFORE, typeset } from './typeset.ts';

/** A face of the packet's type family. Codes are the code units of typeset text. */
export type Face = {
  readonly font: Font;
  /** In thousandths of the type size. */
  readonly advance: (code: number) => number;
  readonly glyph: (code: number) => number;
};

export type Fonts = { readonly regular: Face; readonly bold: Face; readonly measure: Measure };

/** The line height that clears the tallest and the deepest letter of the family, in type sizes; and the part above. */
export const LINE = 1.3;
export const ASCENT = 1.025;

/** Opens the two faces from the bytes of their font files. */
export function openFonts(regular: Uint8Array, bold: Uint8Array): Fonts {
  const family = { regular: faceIn(regular), bold: faceIn(bold) };
  const measure: Measure = (text, size, isBold) => widthOf(typeset(text), size, isBold ? family.bold : family.regular);
  return { ...family, measure };
}

/** The width of typeset text in points. */
export function widthOf(set: string, size: number, face: Face): number {
  let width = 0;
  for (let at = 0; at < set.length; at += 1) width += face.advance(set.charCodeAt(at));
  return (width * size) / 1000;
}

/** A file's face is opened once, for job after job. */
function faceIn(file: Uint8Array): Face {
  const face = faces.get(file) ?? openFace(file);
  faces.set(file, face);
  return face;
}

const faces = new WeakMap<Uint8Array, Face>();

function openFace(bytes: Uint8Array): Face {
  const font = create(bytes as Buffer) as Font;
  const fraction = fractionGlyphs(font);
  const glyphs = new Map<number, number>();
  // A shop's packet asks for the same hundred letters a million times.
  const advances = new Int16Array(0x10000).fill(-1);
  const glyph = (code: number): number => {
    const known = glyphs.get(code) ?? fraction.get(code) ?? font.glyphForCodePoint(code).id;
    const shown = known === 0 ? font.glyphForCodePoint(REPLACEMENT).id : known;
    glyphs.set(code, shown);
    return shown;
  };
  const advance = (code: number): number => {
    const known = advances[code] ?? 0;
    if (known >= 0) return known;
    const width = Math.round(widthIn(font, glyph, code));
    advances[code] = width;
    return width;
  };
  return { font, advance, glyph };
}

const REPLACEMENT = 0xfffd;

/** The first half of a character beyond the 16-bit plane: the second half shows for both. */
export const isHighHalf = (code: number): boolean => code >= 0xd800 && code < 0xdc00;

function widthIn(font: Font, glyph: Face['glyph'], code: number): number {
  if (isHighHalf(code)) return 0;
  // Room for four digits.
  if (isNumberToCome(code)) return (4000 * font.getGlyph(glyph(0x30)).advanceWidth) / font.unitsPerEm;
  // The blank between a whole number and its fraction is narrower than others.
  const scale = code === SPACE_BEFORE ? 620 : isFraction(code) ? 1000 * FRACTION_SIZE : 1000;
  return (scale * font.getGlyph(glyph(code)).advanceWidth) / font.unitsPerEm;
}

/**
 * The family's fractions are as tall as a capital, and sixteenths too small at arm's length. Set larger, and a little
 * lower, they still keep within the line.
 */
export const FRACTION_SIZE = 1.3;
export const FRACTION_DROP = 0.09;

/**
 * The glyphs that the family's fractions are made of, its raised and lowered figures: all from one set, so that
 * sixteenths look like halves.
 */
function fractionGlyphs(font: Font): ReadonlyMap<number, number> {
  const glyph = (sign: string): number => font.glyphForCodePoint(sign.codePointAt(0) ?? 0).id;
  const glyphs = new Map([
    [SPACE_BEFORE, glyph(' ')],
    [BOUND, glyph(' ')],
    [BAR, glyph('⁄')],
  ]);
  for (let digit = 0; digit < 10; digit += 1) {
    glyphs.set(RAISED + digit, glyph('⁰¹²³⁴⁵⁶⁷⁸⁹'.charAt(digit)));
    glyphs.set(LOWERED + digit, glyph('₀₁₂₃₄₅₆₇₈₉'.charAt(digit)));
  }
  return glyphs;
}
