import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Language } from './diagnostics/languages.ts';

/** The project or the package, found from where this file lies: in `src/`, or bundled into some other folder of it. */
const rootAround = (place: URL): URL =>
  existsSync(new URL('package.json', place)) ? place : rootAround(new URL('../', place));

const ROOT = rootAround(new URL('../', import.meta.url));

/** What ships with the program. */
const beside = (path: string): URL => new URL(path, ROOT);

export function programVersion(): string {
  const { version } = JSON.parse(readFileSync(beside('package.json'), 'utf8')) as { readonly version: string };
  return version;
}

/** The templates of the packet, and the words of one language, as they ship; a shop's own folder may replace them. */
export function packagedTemplates(): readonly { readonly file: string; readonly text: string }[] {
  return readdirSync(beside('templates'))
    .filter(file => file.endsWith('.hbs'))
    .sort()
    .map(file => ({ file: `templates/${file}`, text: readFileSync(beside(`templates/${file}`), 'utf8') }));
}

export const packagedWords = (language: Language): { readonly [key: string]: string } =>
  JSON.parse(readFileSync(beside(`templates/words.${language}.json`), 'utf8')) as { readonly [key: string]: string };

/** The workbook of the demo kitchen. */
export const packagedDemo = (): Uint8Array => readFileSync(beside('fixtures/demo/kitchen.xlsx'));

/** The pages of the stations, with their scripts, styles and words. */
export const PACKAGED_STATION = beside('templates/station/');

/** The two faces of the packet, from the package of an open type family. Read once: whoever opens them knows them again. */
export function packagedFonts(): FontFiles {
  fonts ??= readFonts();
  return fonts;
}

type FontFiles = { readonly regular: Uint8Array; readonly bold: Uint8Array };

let fonts: FontFiles | undefined;

function readFonts(): FontFiles {
  const face = (path: string): Uint8Array =>
    readFileSync(createRequire(import.meta.url).resolve(`@expo-google-fonts/ibm-plex-sans/${path}`));
  return {
    regular: face('400Regular/IBMPlexSans_400Regular.ttf'),
    bold: face('600SemiBold/IBMPlexSans_600SemiBold.ttf'),
  };
}
