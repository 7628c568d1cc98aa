/**
 * A zip file with every entry's date set to 1 January 1980, the first that the format knows: the library that writes
 * workbooks stamps the clock on them, and the same workbook must give the same bytes. (PKWARE APPNOTE, 4.3.7, 4.3.12 and
 * 4.3.16: where the records stand and what is in them.)
 */
export function withoutDates(zip: Uint8Array): Uint8Array {
  const bytes = zip.slice();
  const view = new DataView(bytes.buffer);
  const end = endRecord(view);
  let entry = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left -= 1) {
    view.setUint32(entry + 12, FIRST_DAY, true);
    view.setUint32(view.getUint32(entry + 42, true) + 10, FIRST_DAY, true);
    entry +=
      46 + view.getUint16(entry + 28, true) + view.getUint16(entry + 30, true) + view.getUint16(entry + 32, true);
  }
  return bytes;
}

/** The end of central directory record, searched from the back as its comment may be of any length. */
function endRecord(view: DataView): number {
  for (let at = view.byteLength - 22; at >= 0; at -= 1) if (view.getUint32(at, true) === END_SIGNATURE) return at;
  throw new RangeError('not a zip file');
}

const END_SIGNATURE = 0x06054b50;
/** Time 0 in the low half, and month 1, day 1 of year 0 in the high one. */
const FIRST_DAY = ((1 << 5) | 1) << 16;
