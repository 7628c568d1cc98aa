import { crc32, inflateRawSync } from 'node:zlib';
import { damaged, refusal } from './refusal.ts';

/** A file within an archive, still packed. */
export type Entry = {
  readonly name: string;
  readonly isPacked: boolean;
  readonly packedSize: number;
  readonly size: number;
  readonly checksum: number;
  /** Where its own header lies in the archive. */
  readonly header: number;
};

/** A workbook has some dozens of parts; pictures make a few hundred of it. */
const ENTRIES_MAX = 2_000;
const PART_MAX = 48_000_000;
/** Of all that is read together. */
export const UNPACKED_MAX = 96_000_000;

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;

/**
 * The files of a zip archive by their names, from its own directory. Refuses what is no whole archive, is encrypted,
 * or names a file twice. Nothing is unpacked. APPNOTE 6.3, sections 4.3.12 and 4.3.16; archives over 4 GB are not read.
 */
export function readDirectory(bytes: Uint8Array): ReadonlyMap<string, Entry> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  const count = view.getUint16(end + 10, true);
  if (count > ENTRIES_MAX) throw damaged('zip');
  const entries = new Map<string, Entry>();
  let at = view.getUint32(end + 16, true);
  for (let index = 0; index < count; index++) {
    const { entry, next } = readEntry(view, at, end);
    if (entries.has(entry.name)) throw damaged(entry.name);
    entries.set(entry.name, entry);
    at = next;
  }
  return entries;
}

/** The end record, which may have a comment of up to 64 KB behind it. */
function findEnd(view: DataView): number {
  const last = view.byteLength - 22;
  for (let at = last; at >= Math.max(0, last - 65_535); at--) {
    if (view.getUint32(at, true) === END) return at;
  }
  throw damaged('zip');
}

function readEntry(view: DataView, at: number, end: number): { readonly entry: Entry; readonly next: number } {
  if (at + 46 > end || view.getUint32(at, true) !== CENTRAL) throw damaged('zip');
  const nameLength = view.getUint16(at + 28, true);
  const next = at + 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  if (next > end) throw damaged('zip');
  if ((view.getUint16(at + 8, true) & 1) === 1) throw refusal('file-has-password', {});
  const method = view.getUint16(at + 10, true);
  const name = textAt(view, at + 46, nameLength)
    .replace(/\\/g, '/')
    .replace(/^\//, '');
  if (method !== 0 && method !== 8) throw damaged(name);
  const entry = {
    name,
    isPacked: method === 8,
    checksum: view.getUint32(at + 16, true),
    packedSize: view.getUint32(at + 20, true),
    size: view.getUint32(at + 24, true),
    header: view.getUint32(at + 42, true),
  };
  return { entry, next };
}

const textAt = (view: DataView, at: number, length: number): string =>
  new TextDecoder().decode(new Uint8Array(view.buffer, view.byteOffset + at, length));

/**
 * Unpacks one file. What it says of its own size is the most that is unpacked, so that a small file which unpacks to
 * gigabytes is refused before it does; a size or checksum that is not true is refused, too.
 */
export function unpack(bytes: Uint8Array, entry: Entry): Uint8Array {
  if (entry.size > PART_MAX) throw refusal('file-unpacks-too-large', { limit: `${PART_MAX / 1_000_000} MB` });
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (entry.header + 30 > bytes.length || view.getUint32(entry.header, true) !== LOCAL) throw damaged(entry.name);
  const start = entry.header + 30 + view.getUint16(entry.header + 26, true) + view.getUint16(entry.header + 28, true);
  if (start + entry.packedSize > bytes.length) throw damaged(entry.name);
  const packed = bytes.subarray(start, start + entry.packedSize);
  const unpacked = entry.isPacked ? inflate(packed, entry) : packed;
  if (unpacked.length !== entry.size || crc32(unpacked) !== entry.checksum) throw damaged(entry.name);
  return unpacked;
}

function inflate(packed: Uint8Array, entry: Entry): Uint8Array {
  try {
    return inflateRawSync(packed, { maxOutputLength: Math.max(entry.size, 1) });
  } catch {
    throw damaged(entry.name);
  }
}

/** An archive of files that are not packed, for handing them on within the program. */
export function pack(files: readonly (readonly [name: string, text: string])[]): Uint8Array {
  const locals: Buffer[] = [];
  const centrals: Buffer[] = [];
  let offset = 0;
  for (const [path, text] of files) {
    const name = Buffer.from(path);
    const data = Buffer.from(text);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt32LE(crc32(data), 10);
    common.writeUInt32LE(data.length, 14);
    common.writeUInt32LE(data.length, 18);
    common.writeUInt16LE(name.length, 22);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    locals.push(word(LOCAL), common, name, data);
    centrals.push(word(CENTRAL), Buffer.from([20, 0]), common, tail, name);
    offset += 30 + name.length + data.length;
  }
  const central = Buffer.concat(centrals);
  const end = Buffer.alloc(18);
  end.writeUInt16LE(files.length, 4);
  end.writeUInt16LE(files.length, 6);
  end.writeUInt32LE(central.length, 8);
  end.writeUInt32LE(offset, 12);
  return Buffer.concat([...locals, central, word(END), end]);
}

function word(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(value);
  return bytes;
}
