import { crc32, deflateRawSync } from 'node:zlib';

/** A file of an archive, and what the archive says of it where that is not true. */
export type Part = {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly saysSize?: number;
  readonly flags?: number;
  readonly method?: number;
};

export const part = (name: string, text: string, more: Partial<Part> = {}): Part => ({
  name,
  bytes: Buffer.from(text),
  ...more,
});

/** A zip archive, written from APPNOTE 6.3 without a line of the program's own. */
export function archive(parts: readonly Part[], comment = ''): Uint8Array {
  const chunks: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { name, bytes, saysSize, flags = 0, method = 8 } of parts) {
    const packed = method === 8 ? deflateRawSync(bytes) : Buffer.from(bytes);
    const path = Buffer.from(name);
    const local = Buffer.alloc(30);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(20, 4);
    local.writeUInt16LE(flags, 6);
    local.writeUInt16LE(method, 8);
    local.writeUInt32LE(crc32(bytes), 14);
    local.writeUInt32LE(packed.length, 18);
    local.writeUInt32LE(saysSize ?? bytes.length, 22);
    local.writeUInt16LE(path.length, 26);
    const central = Buffer.alloc(46);
    central.writeUInt32LE(0x02014b50, 0);
    central.writeUInt16LE(20, 4);
    local.copy(central, 6, 4, 28);
    central.writeUInt32LE(offset, 42);
    chunks.push(local, path, packed);
    directory.push(central, path);
    offset += local.length + path.length + packed.length;
  }
  const central = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(parts.length, 8);
  end.writeUInt16LE(parts.length, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(offset, 16);
  end.writeUInt16LE(comment.length, 20);
  return Buffer.concat([...chunks, central, end, Buffer.from(comment)]);
}

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RELATIONS = 'http://schemas.openxmlformats.org/package/2006/relationships';
const RELATION = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** The parts of a workbook of one sheet, Cabinets, whose markup is given; `more` replaces parts or adds to them. */
export function workbookParts(sheet: string, more: readonly Part[] = []): readonly Part[] {
  const parts = [
    part('_rels/.rels', relations([['rId1', 'officeDocument', 'xl/workbook.xml']])),
    part('xl/workbook.xml', main('<sheet name="Cabinets" sheetId="1" r:id="rId1"/>')),
    part(
      'xl/_rels/workbook.xml.rels',
      relations([
        ['rId1', 'worksheet', 'worksheets/sheet1.xml'],
        ['rId9', 'styles', 'styles.xml'],
      ]),
    ),
    part('xl/worksheets/sheet1.xml', `<worksheet xmlns="${MAIN}">${sheet}</worksheet>`),
  ];
  const names = new Set(more.map(({ name }) => name));
  return [...parts.filter(({ name }) => !names.has(name)), ...more];
}

export const main = (sheets: string, more = ''): string =>
  `<workbook xmlns="${MAIN}" xmlns:r="${RELATION}"><sheets>${sheets}</sheets>${more}</workbook>`;

export const relations = (all: readonly (readonly [id: string, type: string, target: string])[]): string =>
  `<Relationships xmlns="${RELATIONS}">${all
    .map(([id, type, target]) => `<Relationship Id="${id}" Type="${RELATION}/${type}" Target="${target}"/>`)
    .join('')}</Relationships>`;

/** A row of texts in place. */
export const textRow = (row: number, texts: readonly string[]): string =>
  `<row r="${row}">${texts
    .map((text, index) => `<c r="${'ABCDEFGH'[index]}${row}" t="inlineStr"><is><t>${text}</t></is></c>`)
    .join('')}</row>`;

export const HEADINGS = textRow(1, ['Cabinet', 'Opening width', 'Opening height', 'Hinge side']);
