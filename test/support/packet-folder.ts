/** What a packet's folder holds, in the order of the names. */
export const PACKET_FILES = ['manifest.json', 'packet.pdf', 'parts.csv', 'parts.xlsx', 'remnants.csv', 'tags.pdf'];
