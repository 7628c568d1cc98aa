import { inflateRawSync } from 'node:zlib';
import { archive, type Part } from '../support/archive.ts';

/** A number of a sequence that is the same for the same seed (mulberry32). */
export type Chance = (below: number) => number;

export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  return below => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % below;
  };
}

/** The same workbook with something wrong in it: in its cells, its markup, its archive or its bytes. */
export function mutate(bytes: Uint8Array, chance: Chance): Uint8Array {
  const kind = chance(10);
  if (kind === 0) return bytes.subarray(0, chance(bytes.length));
  if (kind === 1) return withFlippedBytes(bytes, chance);
  const parts = [...partsOf(bytes)];
  if (kind === 2) return archive(shuffled(parts, chance));
  const times = 1 + chance(4);
  for (let count = 0; count < times; count++) {
    const at = kind === 3 ? chance(parts.length) : pick(sheets(parts), chance);
    const changed = parts[at];
    if (changed !== undefined)
      parts[at] = kind === 3 ? withBrokenMarkup(changed, chance) : withStrangeCell(changed, chance);
  }
  return archive(parts);
}

function withFlippedBytes(bytes: Uint8Array, chance: Chance): Uint8Array {
  const flipped = Uint8Array.from(bytes);
  for (let count = chance(20); count >= 0; count--) flipped[chance(bytes.length)] = chance(256);
  return flipped;
}

/** Two parts change their contents, or one goes, or one is there twice. */
function shuffled(parts: readonly Part[], chance: Chance): readonly Part[] {
  const [one, other] = [parts[chance(parts.length)], parts[chance(parts.length)]];
  if (one === undefined || other === undefined) return parts;
  const what = chance(3);
  if (what === 0) return parts.filter(each => each !== one);
  if (what === 1) return [...parts, one];
  return parts.map(each =>
    each === one ? { ...one, bytes: other.bytes } : each === other ? { ...other, bytes: one.bytes } : each,
  );
}

function withBrokenMarkup(part: Part, chance: Chance): Part {
  const text = Buffer.from(part.bytes).toString();
  const at = chance(text.length);
  const broken = [
    () => text.slice(0, at),
    () => text.slice(0, at) + text.slice(at + 1 + chance(50)),
    () => text.slice(0, at) + pickOf(MARKUP, chance) + text.slice(at),
    () => text.replace(/<row /, `<row r="${pickOf(NUMBERS, chance)}" `),
    () => text.replace(/ r="[^"]*"/, ` r="${pickOf(NUMBERS, chance)}"`),
    () => text.repeat(2),
  ];
  return { ...part, bytes: Buffer.from(pickOf(broken, chance)()) };
}

/** One cell's value, kind or style becomes another. */
function withStrangeCell(part: Part, chance: Chance): Part {
  const text = Buffer.from(part.bytes).toString();
  const cells = [...text.matchAll(/<c r="([A-Z]+\d+)"[^>]*?(?:\/>|>.*?<\/c>)/gs)];
  const cell = cells[chance(Math.max(cells.length, 1))];
  if (cell === undefined) return part;
  const name = cell[1] ?? 'A1';
  const strange = [
    () => `<c r="${name}" t="inlineStr"><is><t>${pickOf(TEXTS, chance)}</t></is></c>`,
    () => `<c r="${name}"><v>${pickOf(NUMBERS, chance)}</v></c>`,
    () => `<c r="${name}" s="${chance(40)}"><v>${chance(60_000)}</v></c>`,
    () => `<c r="${name}" t="d"><v>2026-0${chance(10)}-0${chance(10)}</v></c>`,
    () => `<c r="${name}" t="e"><v>#REF!</v></c>`,
    () => `<c r="${name}" t="b"><v>1</v></c>`,
    () => `<c r="${name}" t="s"><v>${pickOf(NUMBERS, chance)}</v></c>`,
    () => `<c r="${name}"><f>A1*2</f></c>`,
    () => `<c r="${name}" t="str"><f t="shared" si="0"/><v>${pickOf(TEXTS, chance)}</v></c>`,
    () => '',
  ];
  return { ...part, bytes: Buffer.from(text.replace(cell[0], () => pickOf(strange, chance)())) };
}

const NUMBERS = [
  '0',
  '-1',
  '1e308',
  '1e400',
  'NaN',
  '4294967295',
  '0.1',
  '23.249999999999996',
  '1048577',
  '',
  '1e-300',
  '99999999999999999999',
];
const TEXTS = [
  '3/4',
  '14 3/8 "',
  '1/0',
  '-',
  '../../x',
  '&lt;script&gt;',
  '=1+1',
  '{{x}}',
  '&#9;',
  '&#1234;',
  'left',
  '2',
  'x'.repeat(3000),
  '٣',
  '1\u20282',
  'inch',
  'slab',
  'glass',
  '0:0',
  '5/4',
  '_x0000_',
];
const MARKUP = [
  '<',
  '&',
  '<!DOCTYPE a>',
  '<a>',
  '</row>',
  '<mergeCell ref="A1:XFD1048576"/>',
  ']]>',
  '<![CDATA[x]]>',
  '\u0000',
  '<c r="XFD1"><v>1</v></c>',
];

const pickOf = <T>(all: readonly T[], chance: Chance): T => {
  const found = all[chance(all.length)];
  if (found === undefined) throw new Error('nothing to pick from');
  return found;
};
const pick = (all: readonly number[], chance: Chance): number => all[chance(Math.max(all.length, 1))] ?? 0;
const sheets = (parts: readonly Part[]): readonly number[] =>
  parts.flatMap(({ name }, at) => (name.includes('worksheets/sheet') ? [at] : []));

/** The files of a sound archive, by its directory. */
function partsOf(bytes: Uint8Array): readonly Part[] {
  const buffer = Buffer.from(bytes);
  const end = buffer.lastIndexOf(Buffer.from('504b0506', 'hex'));
  const parts: Part[] = [];
  let at = buffer.readUInt32LE(end + 16);
  for (let count = buffer.readUInt16LE(end + 10); count > 0; count--) {
    const [method, packed, nameLength] = [
      buffer.readUInt16LE(at + 10),
      buffer.readUInt32LE(at + 20),
      buffer.readUInt16LE(at + 28),
    ];
    const header = buffer.readUInt32LE(at + 42);
    const start = header + 30 + buffer.readUInt16LE(header + 26) + buffer.readUInt16LE(header + 28);
    const data = buffer.subarray(start, start + packed);
    parts.push({
      name: buffer.toString('utf8', at + 46, at + 46 + nameLength),
      bytes: method === 8 ? inflateRawSync(data) : data,
    });
    at += 46 + nameLength + buffer.readUInt16LE(at + 30) + buffer.readUInt16LE(at + 32);
  }
  return parts;
}
