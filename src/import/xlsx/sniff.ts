import { type Refusal, refusal } from './refusal.ts';

/** Tells by its first bytes what a file is that is no zip archive; undefined where it may be a workbook. */
export function sniff(bytes: Uint8Array): Refusal | undefined {
  if (bytes.length === 0) return refusal('file-empty', {});
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const start = buffer.subarray(0, 1024).toString('latin1').trimStart();
  if (start.startsWith('PK')) return undefined;
  if (start.startsWith('\xd0\xcf\x11\xe0')) {
    // A compound file; a locked .xlsx is one that holds a stream of this name.
    const isLocked = buffer.includes(Buffer.from('EncryptedPackage', 'utf16le'));
    return isLocked ? refusal('file-has-password', {}) : refusal('file-is-old-workbook', {});
  }
  if (start.startsWith('%PDF')) return refusal('file-is-no-workbook', { looks: 'pdf' });
  if (/^(\xef\xbb\xbf)?(<!doctype html|<html|<table|<meta)/i.test(start)) {
    return refusal('file-is-no-workbook', { looks: 'web-page' });
  }
  return refusal('file-is-no-workbook', { looks: isText(buffer.subarray(0, 4096)) ? 'text' : 'unknown' });
}

/** Text has no control characters but spaces of all sorts. */
const isText = (bytes: Buffer): boolean => bytes.every(byte => byte >= 32 || (byte >= 9 && byte <= 13));
