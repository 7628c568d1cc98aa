import { builtInFormat, type NumberFormat, readFormat } from './number-formats.ts';
import { damaged, refusal } from './refusal.ts';
import { readXml } from './xml.ts';
import { type Entry, readDirectory, UNPACKED_MAX, unpack } from './zip.ts';

/** A workbook taken apart: where its sheets are, and what their cells refer to. */
export type Book = {
  readonly sheets: readonly { readonly name: string; readonly hidden: boolean; readonly part: string }[];
  readonly strings: readonly string[];
  /** By the cells' style numbers. */
  readonly formats: readonly NumberFormat[];
  /** Days are counted from 1904 and not from 1900. */
  readonly from1904: boolean;
  readonly part: (name: string) => Uint8Array;
};

const SHEETS_MAX = 100;
const STRINGS_MAX = 200_000;

/** Opens a workbook's archive and reads all but its sheets. Parts are found by their relations, as ECMA-376 part 2 says. */
export function openBook(bytes: Uint8Array): Book {
  const entries = readDirectory(bytes);
  const part = partReader(bytes, entries);
  const main =
    [...relationsOf('', part, entries).values()].find(({ type }) => type === 'officeDocument')?.target ??
    'xl/workbook.xml';
  if (!entries.has(main)) throw refusal('file-is-no-workbook', { looks: 'other-zip' });
  const relations = relationsOf(main, part, entries);
  const { sheets, from1904 } = readMain(main, part);
  if (sheets.length > SHEETS_MAX) throw damaged(main);
  const targetOf = (type: string) => [...relations.values()].find(relation => relation.type === type)?.target;
  return {
    sheets: sheets.flatMap(({ name, hidden, relation }) => {
      const found = relations.get(relation);
      if (found === undefined || !entries.has(found.target)) throw damaged(name);
      // Charts and old dialogues are sheets without cells.
      return found.type === 'worksheet' ? [{ name, hidden, part: found.target }] : [];
    }),
    strings: readStrings(targetOf('sharedStrings'), part, entries),
    formats: readFormats(targetOf('styles'), part, entries),
    from1904,
    part,
  };
}

type Parts = (name: string) => Uint8Array;

/** Unpacks parts as they are asked for, and no more of them together than a job can need. */
function partReader(bytes: Uint8Array, entries: ReadonlyMap<string, Entry>): Parts {
  let unpacked = 0;
  return name => {
    const entry = entries.get(name);
    if (entry === undefined) throw damaged(name);
    unpacked += entry.size;
    if (unpacked > UNPACKED_MAX) throw refusal('file-unpacks-too-large', { limit: `${UNPACKED_MAX / 1_000_000} MB` });
    return unpack(bytes, entry);
  };
}

type Relation = { readonly type: string; readonly target: string };

function relationsOf(of: string, part: Parts, entries: ReadonlyMap<string, Entry>): ReadonlyMap<string, Relation> {
  const folder = of.slice(0, of.lastIndexOf('/') + 1);
  const name = `${folder}_rels/${of.slice(folder.length)}.rels`;
  const relations = new Map<string, Relation>();
  if (!entries.has(name)) return relations;
  readXml(part(name), name, {
    open: (element, { Id, Type, Target, TargetMode }) => {
      if (element !== 'Relationship' || Id === undefined || Target === undefined || TargetMode === 'External') return;
      relations.set(Id, { type: Type?.split('/').at(-1) ?? '', target: resolve(folder, Target) });
    },
  });
  return relations;
}

/** `/xl/a.xml` from the archive's top, `worksheets/a.xml` from the folder of the part that refers to it. */
function resolve(folder: string, target: string): string {
  const steps: string[] = [];
  for (const step of (target.startsWith('/') ? target : folder + target).split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '' && step !== '.') steps.push(step);
  }
  return steps.join('/');
}

function readMain(name: string, part: Parts) {
  const sheets: { readonly name: string; readonly hidden: boolean; readonly relation: string }[] = [];
  let from1904 = false;
  readXml(part(name), name, {
    open: (element, attributes) => {
      if (element === 'workbookPr') from1904 = isTrue(attributes['date1904']);
      if (element !== 'sheet') return;
      const hidden = attributes['state'] !== undefined && attributes['state'] !== 'visible';
      sheets.push({ name: attributes['name'] ?? '', hidden, relation: attributes[':id'] ?? '' });
    },
  });
  return { sheets, from1904 };
}

export const isTrue = (value: string | undefined): boolean => value === '1' || value === 'true';

/** The texts that cells refer to by number. What is said of how an East Asian word sounds is left out. */
function readStrings(name: string | undefined, part: Parts, entries: ReadonlyMap<string, Entry>): readonly string[] {
  if (name === undefined || !entries.has(name)) return [];
  const strings: string[] = [];
  let text = '';
  let inText = false;
  let inSound = false;
  readXml(part(name), name, {
    open: element => {
      if (element === 'si') text = '';
      if (element === 'rPh') inSound = true;
      inText = element === 't' && !inSound;
    },
    text: more => {
      if (inText) text += more;
    },
    close: element => {
      if (element === 't') inText = false;
      if (element === 'rPh') inSound = false;
      if (element === 'si') strings.push(text);
      if (strings.length > STRINGS_MAX) throw refusal('file-takes-too-much-memory', {});
    },
  });
  return strings;
}

function readFormats(
  name: string | undefined,
  part: Parts,
  entries: ReadonlyMap<string, Entry>,
): readonly NumberFormat[] {
  if (name === undefined || !entries.has(name)) return [];
  const custom = new Map<number, NumberFormat>();
  const formats: NumberFormat[] = [];
  let inCells = false;
  readXml(part(name), name, {
    open: (element, { numFmtId, formatCode }) => {
      if (element === 'numFmt') custom.set(Number(numFmtId), readFormat(formatCode ?? ''));
      if (element === 'cellXfs') inCells = true;
      const id = Number(numFmtId ?? 0);
      if (element === 'xf' && inCells) formats.push(custom.get(id) ?? builtInFormat(id));
    },
    close: element => {
      if (element === 'cellXfs') inCells = false;
    },
  });
  return formats;
}
