import { deflateSync } from 'node:zlib';
import { type PDFContext, type PDFRef, PDFString } from 'pdf-lib';
import { hex } from '../draw/pen.ts';
import type { CodesOfFace } from '../draw/used-codes.ts';
import { type Face, FRACTION_SIZE } from '../fonts.ts';
import { isFraction } from '../typeset.ts';
import { deflated, packed } from './packed.ts';

/**
 * Embeds the letters used of a face as a composite font (ISO 32000-1, 9.7) whose codes are those of typeset text. By
 * hand, because pdf-lib's own way does not go with this version of fontkit, whose subsets are whole.
 */
export function embedFace(face: Face, used: CodesOfFace, context: PDFContext): PDFRef {
  const subset = subsetOf(face, used);
  const name = `${tagOf(used)}+${face.font.postscriptName}`;
  const stream = (bytes: Uint8Array) => context.register(packed(bytes, {}, context));
  const file = context.register(deflated(subset.file, context, { Length1: subset.length }));
  const descendant = context.obj({
    Type: 'Font',
    Subtype: 'CIDFontType2',
    BaseFont: name,
    CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
    FontDescriptor: context.register(context.obj({ ...descriptor(face, name), FontFile2: file })),
    DW: 0,
    W: widths(face, used),
    CIDToGIDMap: stream(glyphMap(subset.glyphs)),
  });
  const font = context.obj({
    Type: 'Font',
    Subtype: 'Type0',
    BaseFont: name,
    Encoding: 'Identity-H',
    DescendantFonts: [context.register(descendant)],
    ToUnicode: stream(Buffer.from(toUnicode(used), 'latin1')),
  });
  return context.register(font);
}

/** The tags have no letters that the packet has not: both documents hold the same subset. */
function subsetOf(face: Face, used: CodesOfFace): Subset {
  const known = subsets.get(face);
  if (
    known !== undefined &&
    known.glyphs.size === used.size &&
    [...used.keys()].every(code => known.glyphs.has(code))
  ) {
    return known;
  }
  const made = makeSubset(face, used);
  subsets.set(face, made);
  return made;
}

/** Its font file is compressed already; `length` is what it was. */
type Subset = { readonly glyphs: ReadonlyMap<number, number>; readonly file: Uint8Array; readonly length: number };

const subsets = new WeakMap<Face, Subset>();

function makeSubset({ font, glyph }: Face, used: CodesOfFace): Subset {
  const subset = font.createSubset();
  // The library returns the glyph's number in the subset, whatever its types say.
  const include = (id: number) => subset.includeGlyph(font.getGlyph(id)) as unknown as number;
  const glyphs = new Map([...used.keys()].map(code => [code, include(glyph(code))]));
  const file = subset.encode();
  return { glyphs, file: deflateSync(file), length: file.length };
}

/** Six letters that differ between subsets, as the format wants it. */
function tagOf(used: CodesOfFace): string {
  let digest = 7;
  for (const code of used.keys()) digest = (digest * 31 + code) % 26 ** 6;
  return Array.from({ length: 6 }, (_, place) =>
    String.fromCharCode(65 + (Math.floor(digest / 26 ** place) % 26)),
  ).join('');
}

function descriptor({ font }: Face, name: string) {
  const scaled = (value: number) => Math.round((value * 1000) / font.unitsPerEm);
  const { minX, minY, maxX, maxY } = font.bbox;
  return {
    Type: 'FontDescriptor',
    FontName: name,
    Flags: SYMBOLIC,
    FontBBox: [minX, minY, maxX, maxY].map(scaled),
    ItalicAngle: font.italicAngle,
    Ascent: scaled(font.ascent),
    Descent: scaled(font.descent),
    CapHeight: scaled(font.capHeight),
    StemV: STEM,
  };
}

/** Its codes are ours. */
const SYMBOLIC = 4;
/** Width of an upright stem: only readers without the font would ask for it. */
const STEM = 90;

/** Widths of runs of neighbouring codes, as `first [width …]`. */
function widths(face: Face, used: CodesOfFace): (number | number[])[] {
  const widthOf = (code: number) => Math.round(face.advance(code) / (isFraction(code) ? FRACTION_SIZE : 1));
  const runs: (number | number[])[] = [];
  let last = -2;
  for (const code of used.keys()) {
    const run = runs.at(-1);
    if (code === last + 1 && Array.isArray(run)) run.push(widthOf(code));
    else runs.push(code, [widthOf(code)]);
    last = code;
  }
  return runs;
}

/** Two bytes for each code up to the last: its glyph in the subset. */
function glyphMap(glyphs: ReadonlyMap<number, number>): Uint8Array {
  const map = Buffer.alloc(2 * (Math.max(0, ...glyphs.keys()) + 1));
  for (const [code, glyph] of glyphs) map.writeUInt16BE(glyph, 2 * code);
  return map;
}

/** What a reader copies and searches, code by code (ISO 32000-1, 9.10.3). */
function toUnicode(used: CodesOfFace): string {
  const lines = [...used].map(([code, meaning]) => `<${hex(code)}> <${utf16(meaning)}>`);
  const blocks: string[] = [];
  for (let at = 0; at < lines.length; at += BLOCK) {
    const block = lines.slice(at, at + BLOCK);
    blocks.push(`${block.length} beginbfchar`, ...block, 'endbfchar');
  }
  return [CMAP_HEAD, ...blocks, CMAP_FOOT].join('\n');
}

/** As many as the format allows in one block. */
const BLOCK = 100;

const utf16 = (text: string): string =>
  Array.from({ length: text.length }, (_, at) => hex(text.charCodeAt(at))).join('');

const CMAP_HEAD = `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <ffff>
endcodespacerange`;

const CMAP_FOOT = `endcmap
CMapName currentdict /CMap defineresource pop
end
end`;
