import type { Door, DoorSet, Part, Working } from '../calculate/door-set.ts';
import type { Job } from '../import/job.ts';
import type { Length } from '../units/length.ts';
import { printLength } from '../units/print-length.ts';
import type { PacketWords } from './fill.ts';
import { quantities } from './quantities.ts';
import { sayer } from './say.ts';
import { printWorking, type Writer } from './working.ts';

/**
 * How every number of a door or a part came about, in plain words: each with its formula, the numbers put in, the
 * result, what each symbol stands for, and the source where it is published. `code` may be typed in small letters, or
 * be what a scanner reads from the tag. Undefined where the job has no such door or part.
 */
export function explain(
  code: string,
  { job, doorSet }: { readonly job: Job; readonly doorSet: DoorSet },
  words: PacketWords,
): readonly string[] | undefined {
  const size = (length: Length): string => printLength(length, job.shop.printing.lengths);
  const { mass } = quantities(job.units);
  const writer: Writer = { job, size, say: sayer(words, { length: size, mass }) };
  const isMeant = meant(code);
  const door = doorSet.doors.find(isMeant);
  if (door !== undefined) return doorExplained(door, doorSet, writer, words);
  const part = doorSet.parts.find(isMeant);
  return part === undefined ? undefined : partExplained(part, doorSet, writer, words);
}

/** Codes that were typed nearly right: those that begin or end alike. */
export function similarCodes(code: string, { doors, parts }: DoorSet): readonly string[] {
  const typed = code.toLowerCase();
  return [...doors, ...parts]
    .map(each => each.code)
    .filter(each => each.toLowerCase().includes(typed) || typed.startsWith(each.toLowerCase()))
    .slice(0, SIMILAR_MAX);
}

/** As many as fit under a message without hiding it. */
const SIMILAR_MAX = 12;

const meant = (typed: string) => {
  const wanted = typed.toLowerCase();
  return ({ code, barcode }: { readonly code: string; readonly barcode: string }): boolean =>
    code === typed || code.toLowerCase() === wanted || barcode.toLowerCase() === wanted;
};

function doorExplained(door: Door, { parts }: DoorSet, writer: Writer, words: PacketWords): readonly string[] {
  const own = parts.filter(part => part.door === door.code);
  return [
    `${door.code}  ${doorNamed(door, writer)}`,
    writer.say('explain.door', {
      width: door.width.value,
      height: door.height.value,
      thick: door.thickness,
      mass: door.mass,
      style: door.style,
    }),
    writer.say('explain.parts', { parts: own.map(part => part.code).join(', ') }),
    ...[door.width, door.height, ...door.workings].flatMap(working => workingExplained(working, writer, words)),
  ];
}

function partExplained(part: Part, { doors }: DoorSet, writer: Writer, words: PacketWords): readonly string[] {
  const door = doors.find(each => each.code === part.door);
  const { length, width, shoulder, workings, thickness, mass, stock } = part;
  return [
    `${part.code}  ${writer.say(`role.${part.role}`)}${door === undefined ? '' : `, ${doorNamed(door, writer)}`}`,
    writer.say(stock === undefined ? 'explain.part' : 'explain.part-of-stock', {
      length: length.value,
      width: width.value,
      thick: thickness,
      mass,
      stock: stock ?? '',
    }),
    ...(part.make.kind === 'solid-panel' ? [writer.say('explain.do-not-glue')] : []),
    ...[length, width, ...(shoulder === undefined ? [] : [shoulder]), ...workings].flatMap(working =>
      workingExplained(working, writer, words),
    ),
  ];
}

const doorNamed = ({ cabinet, label, copy, leaf, front }: Door, { say }: Writer): string =>
  [
    say(`front.${front}`),
    label === '' ? cabinet : `${cabinet}/${label}`,
    ...(leaf === 'single' ? [] : [say(`leaf.${leaf}`)]),
    say('explain.copy', { copy }),
  ].join(', ');

function workingExplained(working: Working, writer: Writer, words: PacketWords): readonly string[] {
  const symbols =
    working.kind === 'length'
      ? working.terms.filter(({ count }) => count !== 0).map(({ symbol }) => symbol)
      : working.inputs.map(({ symbol }) => symbol);
  const meanings = [...new Set(symbols)].flatMap(symbol => {
    const meaning = symbolMeaning(symbol, working.of, words);
    return meaning === undefined ? [] : [`${symbol}: ${meaning}`];
  });
  const source = words[`source.${working.of}`];
  return [
    '',
    printWorking(working, writer),
    ...(meanings.length === 0 ? [] : [`    ${meanings.join('; ')}`]),
    ...(source === undefined ? [] : [`    ${source}`]),
  ];
}

/** A letter can mean one thing in one formula and another in the next; numbered heights and masses share their words. */
function symbolMeaning(symbol: string, of: string, words: PacketWords): string | undefined {
  const family = symbol.replace(/^h\d+$/, 'h#').replace(/^m\(.*\)$/, 'm()');
  return words[`symbol.${of}.${symbol}`] ?? words[`symbol.${family}`];
}
