/**
 * The bars and gaps of a Code 128 symbol (ISO/IEC 15417) in modules, beginning with a bar: start, characters, check
 * character and stop in as few symbol characters as sets B and C allow. Undefined for text that is empty or holds
 * anything but printable ASCII: other characters would come out of a scanner as somebody else's.
 */
export function code128(text: string): readonly number[] | undefined {
  if (!/^[ -~]+$/.test(text)) return undefined;
  const values = valuesOf(text);
  const weighted = values.reduce((sum, value, at) => sum + value * Math.max(1, at), 0);
  values.push(weighted % 103, STOP);
  return values.flatMap(value => WIDTHS[value] ?? []);
}

const START = { B: 104, C: 105 } as const;
const SHIFT_TO = { B: 100, C: 99 } as const;
const STOP = 106;

type Set = keyof typeof START;

/** The start and the characters, by the cheaper of both sets at each place. */
function valuesOf(text: string): number[] {
  const rest = restsOf(text);
  const costAt = (at: number): Costs => rest[at] ?? NONE;
  let set: Set = costAt(0).C < costAt(0).B ? 'C' : 'B';
  const values: number[] = [START[set]];
  for (let at = 0; at < text.length; ) {
    const other = set === 'B' ? 'C' : 'B';
    if (costAt(at)[set] > costAt(at)[other]) {
      set = other;
      values.push(SHIFT_TO[set]);
    }
    values.push(set === 'C' ? 10 * digit(text, at) + digit(text, at + 1) : text.charCodeAt(at) - SPACE);
    at += set === 'C' ? 2 : 1;
  }
  return values;
}

/** How many symbol characters the rest of the text takes from each place on, as the set at that place is B or C. */
type Costs = { readonly [S in Set]: number };

const NONE: Costs = { B: 0, C: 0 };

function restsOf(text: string): readonly Costs[] {
  const rest: Costs[] = Array.from({ length: text.length + 1 }, () => NONE);
  for (let at = text.length - 1; at >= 0; at -= 1) {
    const inB = 1 + (rest[at + 1]?.B ?? 0);
    const inC = isDigit(text, at) && isDigit(text, at + 1) ? 1 + (rest[at + 2]?.C ?? 0) : Number.POSITIVE_INFINITY;
    rest[at] = { B: Math.min(inB, inC + 1), C: Math.min(inC, inB + 1) };
  }
  return rest;
}

const SPACE = 32;
const digit = (text: string, at: number): number => text.charCodeAt(at) - 48;
const isDigit = (text: string, at: number): boolean => digit(text, at) >= 0 && digit(text, at) <= 9;

/** ISO/IEC 15417, table 1: bar, gap, bar, gap, bar, gap of each value; the stop has one bar more. */
const WIDTHS: readonly (readonly number[])[] = `
212222 222122 222221 121223 121322 131222 122213 122312 132212 221213 221312 231212 112232 122132 122231 113222
123122 123221 223211 221132 221231 213212 223112 312131 311222 321122 321221 312212 322112 322211 212123 212321
232121 111323 131123 131321 112313 132113 132311 211313 231113 231311 112133 112331 132131 113123 113321 133121
313121 211331 231131 213113 213311 213131 311123 311321 331121 312113 312311 332111 314111 221411 431111 111224
111422 121124 121421 141122 141221 112214 112412 122114 122411 142112 142211 241211 221114 413111 241112 134111
111242 121142 121241 114212 124112 124211 411212 421112 421211 212141 214121 412121 111143 111341 131141 114113
114311 411113 411311 113141 114131 311141 411131 211412 211214 211232 2331112`
  .trim()
  .split(/\s+/)
  .map(widths => [...widths].map(Number));
