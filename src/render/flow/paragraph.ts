import { ASCENT, type Face, type Fonts, LINE, widthOf } from '../fonts.ts';
import type { Align, Run } from '../page.ts';
import { hasNumberToCome, isFraction } from '../typeset.ts';
import type { Sheet, Strip } from './strip.ts';

/** Typeset words of one face, or the end of a line. */
export type Span = { readonly set: string; readonly bold: boolean } | 'break';

export type Setting = {
  readonly size: number;
  readonly align: Align;
  /** The bookmark it leads to. */
  readonly to?: string | undefined;
  /** How many lines it may take; what does not fit ends in an ellipsis. */
  readonly linesMax?: number | undefined;
};

/** A paragraph as one strip for each line. Its first two and its last two lines stay together. */
export function paragraph(spans: readonly Span[], room: number, setting: Setting, fonts: Fonts): readonly Strip[] {
  const lines = shortened(linesOf(spans, room, setting.size, fonts), room, setting, fonts);
  return lines.map((line, index) => lineStrip(line, room, setting, index === 0 || index === lines.length - 2, lines));
}

/** How wide the paragraph's longest line is when nothing makes it break. */
export function naturalWidth(spans: readonly Span[], size: number, fonts: Fonts): number {
  const lines = linesOf(spans, Number.POSITIVE_INFINITY, size, fonts);
  return Math.max(0, ...lines.map(line => line.width));
}

type Line = { readonly runs: readonly Run[]; readonly width: number };

const EMPTY: Line = { runs: [], width: 0 };

function linesOf(spans: readonly Span[], room: number, size: number, fonts: Fonts): readonly Line[] {
  const only = spans[0];
  if (spans.length === 1 && only !== undefined && only !== 'break') {
    const width = widthOf(only.set, size, faceOf(only.bold, fonts));
    if (width <= room) return [{ runs: [{ set: only.set, bold: only.bold, width }], width }];
  }
  const lines: Line[] = [];
  let line = EMPTY;
  for (const word of wordsOf(spans, room, size, fonts)) {
    if (word === 'break') {
      lines.push(line);
      line = EMPTY;
      continue;
    }
    const longer = joined(line, word);
    if (longer.width <= room || line === EMPTY) line = longer;
    else {
      lines.push(line);
      line = joined(EMPTY, word);
    }
  }
  return [...lines, line];
}

/** What a line may not break: pieces of one or two faces, and the blank before it. */
type Word = { readonly pieces: readonly Run[]; readonly width: number; readonly blank: Run | undefined };

function wordsOf(spans: readonly Span[], room: number, size: number, fonts: Fonts): readonly (Word | 'break')[] {
  const words: (Word | 'break')[] = [];
  let blank: Run | undefined;
  let isGlued = false;
  for (const span of spans) {
    if (span === 'break') {
      words.push('break');
      [blank, isGlued] = [undefined, false];
      continue;
    }
    const face = faceOf(span.bold, fonts);
    const run = (set: string): Run => ({ set, bold: span.bold, width: widthOf(set, size, face) });
    for (const [index, part] of span.set.split(' ').entries()) {
      if (index > 0) [blank, isGlued] = [run(' '), false];
      if (part === '') continue;
      const pieces = broken(run(part), room, size, face);
      const last = words.at(-1);
      if (isGlued && last !== undefined && last !== 'break' && last.width + (pieces[0]?.width ?? 0) <= room) {
        words[words.length - 1] = glued(last, pieces[0]);
        pieces.shift();
      }
      for (const piece of pieces) {
        words.push({ pieces: [piece], width: piece.width, blank });
        blank = undefined;
      }
      isGlued = true;
    }
  }
  return words;
}

const glued = (word: Word, piece: Run | undefined): Word =>
  piece === undefined ? word : { ...word, pieces: [...word.pieces, piece], width: word.width + piece.width };

/** A word that no line can hold, in pieces that lines can hold; after a hyphen, point or stroke where there is one. */
function broken(word: Run, room: number, size: number, face: Face): Run[] {
  const pieces: Run[] = [];
  let rest = word;
  while (rest.width > room && rest.set.length > 1) {
    const end = endWithin(rest.set, room, size, face);
    const head = rest.set.slice(0, end);
    pieces.push({ ...rest, set: head, width: widthOf(head, size, face) });
    const tail = rest.set.slice(end);
    rest = { ...rest, set: tail, width: widthOf(tail, size, face) };
  }
  return [...pieces, rest];
}

/** How many code units of a word fit; one at least, never half a character, and a fraction whole where it can be. */
function endWithin(set: string, room: number, size: number, face: Face): number {
  const limit = (room * 1000) / size;
  let width = 0;
  let end = 0;
  let joint = 0;
  let blank = 0;
  for (; end < set.length; end += 1) {
    width += face.advance(set.charCodeAt(end));
    if (width > limit) break;
    if (BLANKS.test(set.charAt(end))) blank = end + 1;
    if ('-–./_,;:·'.includes(set.charAt(end))) joint = end + 1;
  }
  if (blank > 0) return blank;
  if (joint > end / 2) return joint;
  return Math.max(1, wholeBefore(set, end)) + (end === 0 && isLowHalf(set.charCodeAt(1)) ? 1 : 0);
}

/** The blanks of typeset text at which a line had better not break: still better than within a number. */
const BLANKS = /[\uE000\uE001]/;

/** The nearest place before `end` that is not within a fraction or a character; `end` where there is none. */
function wholeBefore(set: string, end: number): number {
  let start = end;
  const isInside = (at: number) => isFraction(set.charCodeAt(at)) && isFraction(set.charCodeAt(at - 1));
  while (start > 0 && (isInside(start) || isLowHalf(set.charCodeAt(start)))) start -= 1;
  return start > 0 ? start : end;
}

const isLowHalf = (code: number): boolean => (code & 0xfc00) === 0xdc00;

function joined(line: Line, word: Word): Line {
  const added = line === EMPTY || word.blank === undefined ? word.pieces : [word.blank, ...word.pieces];
  const runs = [...line.runs];
  for (const piece of added) {
    const last = runs.at(-1);
    if (last !== undefined && last.bold === piece.bold) {
      runs[runs.length - 1] = { ...last, set: last.set + piece.set, width: last.width + piece.width };
    } else runs.push(piece);
  }
  return { runs, width: added.reduce((total, piece) => total + piece.width, line.width) };
}

function shortened(lines: readonly Line[], room: number, setting: Setting, fonts: Fonts): readonly Line[] {
  const { linesMax, size } = setting;
  if (linesMax === undefined || lines.length <= linesMax) return lines;
  const last = lines[linesMax - 1]?.runs.at(-1);
  const before = lines[linesMax - 1]?.runs.slice(0, -1) ?? [];
  if (last === undefined) return lines.slice(0, linesMax);
  const face = faceOf(last.bold, fonts);
  const taken = before.reduce((total, run) => total + run.width, 0);
  let set = last.set;
  while (set !== '' && taken + widthOf(`${set}…`, size, face) > room) set = set.slice(0, -1);
  const cut: Run = { set: `${set.trimEnd()}…`, bold: last.bold, width: widthOf(`${set.trimEnd()}…`, size, face) };
  return [...lines.slice(0, linesMax - 1), { runs: [...before, cut], width: taken + cut.width }];
}

function lineStrip(line: Line, room: number, setting: Setting, keepsNext: boolean, all: readonly Line[]): Strip {
  const { size, align, to } = setting;
  const baseline = size * ASCENT;
  const isLate = line.runs.some(run => hasNumberToCome(run.set));
  const own = { height: size * LINE, baseline };
  // Without `evenly`: this is done for every line of a packet, and a copy costs as much as the rest.
  return {
    usual: own,
    close: own,
    keepsNext: keepsNext && all.length > 1,
    put: (x, y, sheet) => {
      if (isLate) sheet.items.push({ kind: 'late', x, y: y + baseline, room, align, size, runs: line.runs });
      else putRuns(line.runs, startOf(x, room, align, line.width), y + baseline, size, sheet);
      if (to !== undefined) sheet.links.push({ x, y, width: room, height: size * LINE, to });
    },
  };
}

export const startOf = (x: number, room: number, align: Align, width: number): number =>
  align === 'left' ? x : align === 'right' ? x + room - width : x + (room - width) / 2;

export function putRuns(runs: readonly Run[], x: number, y: number, size: number, sheet: Pick<Sheet, 'items'>): void {
  let left = x;
  for (const { set, bold, width } of runs) {
    if (set !== '') sheet.items.push({ kind: 'text', x: left, y, set, size, bold });
    left += width;
  }
}

const faceOf = (bold: boolean, fonts: Fonts): Face => (bold ? fonts.bold : fonts.regular);
