import { readdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { Language } from '../diagnostics/languages.ts';
import { packagedFonts, packagedTemplates, packagedWords } from '../packaged.ts';
import type { RenderAssets } from '../render/index.ts';
import { tableWorkbookApart } from './table-workbook.ts';

/** What the packet is printed with: as it ships, each template and each word replaced where the shop's folder has its own. */
export async function assetsFor(language: Language, folder: string | undefined): Promise<RenderAssets> {
  const own = folder === undefined ? NOTHING_OWN : await readOwn(folder, language);
  const replaced = new Map(own.templates.map(template => [basename(template.file), template]));
  return {
    templates: packagedTemplates().map(template => replaced.get(basename(template.file)) ?? template),
    words: { ...packagedWords(language), ...own.words },
    fonts: packagedFonts(),
    writeTable: tableWorkbookApart,
  };
}

type Own = Pick<RenderAssets, 'templates' | 'words'>;

const NOTHING_OWN: Own = { templates: [], words: {} };

async function readOwn(folder: string, language: Language): Promise<Own> {
  const names = await readdir(folder);
  const wordsFile = `words.${language}.json`;
  return {
    templates: await Promise.all(
      names
        .filter(name => name.endsWith('.hbs'))
        .sort()
        .map(async name => ({ file: join(folder, name), text: await readFile(join(folder, name), 'utf8') })),
    ),
    words: names.includes(wordsFile) ? readWords(await readFile(join(folder, wordsFile), 'utf8')) : {},
  };
}

/** Only texts are taken: a words file of a shop's own may hold notes beside them. */
function readWords(text: string): RenderAssets['words'] {
  const read: unknown = JSON.parse(text);
  return Object.fromEntries(
    Object.entries(read ?? {}).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
  );
}
