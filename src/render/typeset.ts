/**
 * Text as it is set: fractions in signs of their own, other white space as blanks, invisible format characters dropped.
 * Each code unit of it is one glyph (the high half of a pair is none), so that lines are measured and broken without a
 * shaper.
 */
export function typeset(text: string): string {
  const known = lately.get(text);
  if (known !== undefined) return known;
  const set = setAnew(text);
  if (lately.size >= LATELY_MAX) lately.clear();
  lately.set(text, set);
  return set;
}

/** A packet says the same few thousand things again and again. */
const lately = new Map<string, string>();
const LATELY_MAX = 20_000;

function setAnew(text: string): string {
  if (/^[ -.0-~]*$/.test(text)) return UNIT.test(text) ? withUnits(text) : text;
  if (/^[ -~]*$/.test(text)) return withUnits(text).replace(FRACTION, setFraction);
  return text
    .normalize('NFC')
    .replace(/[\uE000-\uF8FF]/g, '\uFFFD')
    .replace(/[\t\n\v\f\r\u1680\u2000-\u2006\u2008-\u200a\u2028\u2029\u205f\u3000]/g, ' ')
    .replace(/\p{Cf}/gu, '')
    .replace(/(?:(\d) ?)?([½¼¾⅛⅜⅝⅞])/g, (_, whole = '', sign) => `${whole}${whole && ' '}${SIGNS[sign]}`)
    .replace(UNITS, String.fromCharCode(BOUND))
    .replace(FRACTION, setFraction);
}

/** Fractions that people type as one sign are set like those that they type as three. */
const SIGNS: { readonly [sign: string]: string } = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** A number and its unit, or its sign for a tolerance, stay on one line. */
const UNIT = /(?<=[\d+−]) (?=(?:mm|cm|in|ft|lb|kg|g|oz|gal|min|h|°|%)(?![\p{L}\d]))|(?<=±) (?=\d)/u;
const UNITS = new RegExp(UNIT, 'gu');
const withUnits = (text: string): string => text.replace(UNITS, String.fromCharCode(BOUND));

/** What a code unit of typeset text means to a reader. */
export function meaningOf(code: number): string {
  if (code === SPACE_BEFORE || code === BOUND) return ' ';
  if (code === BAR) return '/';
  if (code >= RAISED && code < RAISED + 10) return String(code - RAISED);
  if (code >= LOWERED && code < LOWERED + 10) return String(code - LOWERED);
  return String.fromCharCode(code);
}

/** The narrow blank between a whole number and its fraction, where no line breaks. */
export const SPACE_BEFORE = 0xe000;
/** Any other blank where no line breaks if it can help it. */
export const BOUND = 0xe001;
export const RAISED = 0xe010;
export const BAR = 0xe01a;
export const LOWERED = 0xe020;

export const isFraction = (code: number): boolean => code >= RAISED && code < LOWERED + 10;

/** A fraction of an inch, alone or after its whole number: not a date, and not a part of a code or of a decimal. */
const FRACTION = /(?:(?<=\d) |(?<![\w/.,]))(\d{1,2})\/(2|4|8|16|32|64)(?![\w/]|\.\d)/g;

function setFraction(found: string, numerator: string, denominator: string): string {
  if (Number(numerator) >= Number(denominator)) return found;
  const space = found.startsWith(' ') ? String.fromCharCode(SPACE_BEFORE) : '';
  return `${space}${digits(numerator, RAISED)}${String.fromCharCode(BAR)}${digits(denominator, LOWERED)}`;
}

const digits = (number: string, from: number): string =>
  [...number].map(digit => String.fromCharCode(from + Number(digit))).join('');

/** Numbers of pages that are known only when all is laid out: this page's, how many there are, that of a bookmark. */
export const THIS_PAGE = 0xe100;
export const ALL_PAGES = 0xe101;
export const PAGE_OF = 0xe200;
export const PAGES_OF_MAX = 0xf900 - PAGE_OF;

/** A sign that stands for a number of a page. */
export const NUMBERS_TO_COME = /[\uE100-\uF8FF]/g;

export function hasNumberToCome(set: string): boolean {
  for (let at = 0; at < set.length; at += 1) if (isNumberToCome(set.charCodeAt(at))) return true;
  return false;
}

export const isNumberToCome = (code: number): boolean => code >= THIS_PAGE && code < PAGE_OF + PAGES_OF_MAX;
