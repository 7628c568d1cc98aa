import { crc32, deflateRawSync } from 'node:zlib';

/** A file in an archive. */
export type Entry = { readonly name: string; readonly text: string };

/**
 * Files as a zip archive (PKWARE APPNOTE, 4.3): for each a record and its compressed bytes, then the directory. All are
 * dated 1 January 1980, the first day that the format knows, so that the same files give the same bytes.
 */
export function zip(entries: readonly Entry[]): Uint8Array {
  const files: Buffer[] = [];
  const directory: Buffer[] = [];
  let at = 0;
  for (const { name, text } of entries) {
    const [path, plain] = [Buffer.from(name, 'utf8'), Buffer.from(text, 'utf8')];
    const packed = deflateRawSync(plain);
    const facts = Buffer.alloc(26);
    facts.writeUInt16LE(VERSION, 0);
    facts.writeUInt16LE(UTF8_NAMES, 2);
    facts.writeUInt16LE(DEFLATED, 4);
    facts.writeUInt32LE(FIRST_DAY, 6);
    facts.writeUInt32LE(crc32(plain), 10);
    facts.writeUInt32LE(packed.length, 14);
    facts.writeUInt32LE(plain.length, 18);
    facts.writeUInt16LE(path.length, 22);
    const place = Buffer.alloc(14);
    place.writeUInt32LE(at, 10);
    const file = [signed('PK\x03\x04'), facts, path, packed];
    files.push(...file);
    directory.push(signed('PK\x01\x02'), signed(`${String.fromCharCode(VERSION)}\0`), facts, place, path);
    at += lengthOf(file);
  }
  const end = Buffer.alloc(18);
  end.writeUInt16LE(entries.length, 4);
  end.writeUInt16LE(entries.length, 6);
  end.writeUInt32LE(lengthOf(directory), 8);
  end.writeUInt32LE(at, 12);
  return Buffer.concat([...files, ...directory, signed('PK\x05\x06'), end]);
}

const VERSION = 20;
const UTF8_NAMES = 1 << 11;
const DEFLATED = 8;
/** Time 0 in the low half, and month 1, day 1 of year 0 in the high one. */
const FIRST_DAY = ((1 << 5) | 1) << 16;

const signed = (signature: string): Buffer => Buffer.from(signature, 'latin1');
const lengthOf = (buffers: readonly Buffer[]): number => buffers.reduce((sum, { length }) => sum + length, 0);
