import type { WholeFile } from '../host.ts';
import type { Packet } from '../render/packet.ts';

/** The files of a packet's folder. */
export const packetFiles = (packet: Packet): readonly WholeFile[] => [
  { name: 'packet.pdf', bytes: packet.packetPdf },
  { name: 'tags.pdf', bytes: packet.tagsPdf },
  { name: 'parts.xlsx', bytes: packet.partsXlsx },
  { name: 'parts.csv', bytes: inUtf8(packet.partsCsv) },
  { name: 'remnants.csv', bytes: inUtf8(packet.remnantsCsv) },
  { name: 'manifest.json', bytes: inUtf8(`${JSON.stringify(packet.manifest, null, 1)}\n`) },
];

const inUtf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
