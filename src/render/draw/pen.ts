import { FRACTION_DROP, FRACTION_SIZE, isHighHalf } from '../fonts.ts';

export type Point = readonly [x: number, y: number];

/** How a path is painted: outlined where it has a weight, filled where it has a grey and is closed. */
export type Painting = {
  readonly closed: boolean;
  readonly weight?: number;
  readonly dash?: readonly number[];
  readonly fill?: number;
};

/** The names under which a page's resources hold the two faces. */
export const FACE_NAMES = { regular: 'R', bold: 'B' } as const;

/** The operators of content streams (ISO 32000-1, annex A) that pages need. Places are in points from the top left. */
export type Pen = ReturnType<typeof openPen>;

/** A pen for one page. It remembers its state, so that nothing is said twice. */
export function openPen(pageHeight: number) {
  const lines: string[] = [];
  let grey = 0;
  let weight = 1;
  let dash = SOLID;
  let font = '';
  let isText = false;
  const at = (x: number, y: number) => `${num(x)} ${num(pageHeight - y)}`;
  const say = (operators: string) => {
    if (isText) lines.push('ET');
    isText = false;
    lines.push(operators);
  };
  const useGrey = (value: number) => {
    if (value !== grey) say(`${num(value)} g`);
    grey = value;
  };
  const useStroke = (wide: number, dashes?: readonly number[]) => {
    const pattern = dashes === undefined ? SOLID : `[${dashes.map(num).join(' ')}] 0 d`;
    if (wide !== weight) say(`${num(wide)} w`);
    if (pattern !== dash) say(pattern);
    weight = wide;
    dash = pattern;
  };
  /** Codes shown in a face and size; a fraction in a larger one and a little lower. */
  const shown = (set: string, name: string, size: number): string => {
    const wanted = `/${name} ${num(size)} Tf`;
    const before = wanted === font ? '' : `${wanted} `;
    font = wanted;
    return `${before}<${codesOf(set)}> Tj`;
  };
  const shownWithFractions = (set: string, name: string, size: number): string =>
    set
      .split(FRACTIONS)
      .map((part, index) => {
        if (part === '') return '';
        if (index % 2 === 0) return shown(part, name, size);
        return ` ${num(-size * FRACTION_DROP)} Ts ${shown(part, name, size * FRACTION_SIZE)} 0 Ts `;
      })
      .join('');

  return {
    area: (x: number, y: number, width: number, height: number, value: number) => {
      useGrey(value);
      say(`${at(x, y + height)} ${num(width)} ${num(height)} re f`);
    },
    frame: (x: number, y: number, width: number, height: number, wide: number) => {
      useStroke(wide);
      say(`${at(x, y + height)} ${num(width)} ${num(height)} re S`);
    },
    line: ([x1, y1]: Point, [x2, y2]: Point, wide: number, dashes?: readonly number[]) => {
      useStroke(wide, dashes);
      say(`${at(x1, y1)} m ${at(x2, y2)} l S`);
    },
    polygon: (points: readonly Point[], how: Painting) => {
      if (how.weight !== undefined) useStroke(how.weight, how.dash);
      if (how.fill !== undefined) useGrey(how.fill);
      say(`${points.map(([x, y], index) => `${at(x, y)} ${index === 0 ? 'm' : 'l'}`).join(' ')} ${operatorFor(how)}`);
    },
    circle: (x: number, y: number, radius: number, how: Painting) => {
      if (how.weight !== undefined) useStroke(how.weight, how.dash);
      if (how.fill !== undefined) useGrey(how.fill);
      const curves = QUARTERS.map(ends => `${ends.map(([a, b]) => at(x + a * radius, y + b * radius)).join(' ')} c`);
      say(`${at(x + radius, y)} m ${curves.join(' ')} ${operatorFor(how)}`);
    },
    /** Typeset text on its base line, turned to read from below where `turn` is 90. */
    text: (x: number, y: number, set: string, face: keyof typeof FACE_NAMES, size: number, turn: 0 | 90 = 0) => {
      useGrey(0);
      if (!isText) lines.push('BT');
      isText = true;
      const codes = FRACTIONS.test(set)
        ? shownWithFractions(set, FACE_NAMES[face], size)
        : shown(set, FACE_NAMES[face], size);
      lines.push(`${TURNS[turn]} ${at(x, y)} Tm ${codes}`);
    },
    /** A path in units of its own, counted from the top left: filled, each unit so wide and so tall. */
    stencil: (x: number, y: number, wide: number, tall: number, path: string) => {
      useGrey(0);
      say(`q ${exact(wide)} 0 0 ${exact(-tall)} ${at(x, y)} cm\n${path} f Q`);
    },
    written: () => {
      if (isText) say('');
      return lines.join('\n');
    },
  };
}

const FRACTIONS = /([\uE010-\uE029]+)/;

const SOLID = '[] 0 d';
const TURNS = { 0: '1 0 0 1', 90: '0 1 -1 0' } as const;

function operatorFor({ closed, weight, fill }: Painting): string {
  const isFilled = closed && fill !== undefined;
  if (weight === undefined) return isFilled ? 'f' : 'n';
  if (isFilled) return 'b';
  return closed ? 's' : 'S';
}

/** How far the controls of a cubic curve stand out for the roundest quarter of a circle. */
const K = 0.5523;
const QUARTERS: readonly (readonly Point[])[] = [
  [
    [1, K],
    [K, 1],
    [0, 1],
  ],
  [
    [-K, 1],
    [-1, K],
    [-1, 0],
  ],
  [
    [-1, -K],
    [-K, -1],
    [0, -1],
  ],
  [
    [K, -1],
    [1, -K],
    [1, 0],
  ],
];

/** The codes of typeset text as the embedded faces know them. */
function codesOf(set: string): string {
  let codes = '';
  for (let index = 0; index < set.length; index += 1) {
    const code = set.charCodeAt(index);
    if (!isHighHalf(code)) codes += HEX[code] ?? hex(code);
  }
  return codes;
}

export const hex = (code: number): string => code.toString(16).padStart(4, '0');

/** The letters of most texts, written out beforehand. */
const HEX: readonly string[] = Array.from({ length: 0x180 }, (_, code) => hex(code));

/** Hundredths of a point are finer than any printer. Put together from whole numbers: a page has thousands. */
function num(value: number): string {
  const hundredths = Math.round(Math.abs(value) * 100);
  const rest = hundredths % 100;
  const digits = `${(hundredths - rest) / 100}${AFTER_POINT[rest]}`;
  return value < 0 && hundredths > 0 ? `-${digits}` : digits;
}

const AFTER_POINT: readonly string[] = Array.from({ length: 100 }, (_, rest) => String(rest / 100).slice(1));

/** Units that are counted many times over want all their digits. */
const exact = (value: number): string => String(Math.round(value * 1e7) / 1e7);
