import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const FAMILY = createRequire(import.meta.url).resolve('@expo-google-fonts/ibm-plex-sans/package.json');

/** The bytes of a font file of the packet's family. */
export const fontFile = (face: '400Regular' | '600SemiBold'): Uint8Array =>
  readFileSync(FAMILY.replace('package.json', `${face}/IBMPlexSans_${face}.ttf`));
