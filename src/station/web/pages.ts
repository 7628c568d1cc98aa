import { readFileSync } from 'node:fs';
import Handlebars from 'handlebars';
import type { Language } from '../../diagnostics/languages.ts';
import { PACKAGED_STATION } from '../../packaged.ts';
import { tagAddress } from './card.ts';
import { type Say, sayerOf } from './words.ts';

/** Fills a page. What comes from a workbook is escaped by the template language; nothing is ever put in raw. */
export type Pages = (name: PageName, language: Language, data: object) => string;

export type PageName = 'home' | 'scan' | 'progress' | 'progress-body' | 'tag' | 'pair' | 'error';

/** The script that belongs to a page. */
const SCRIPTS: { readonly [P in PageName]?: string } = {
  home: 'home-page.js',
  scan: 'scan-page.js',
  progress: 'progress-page.js',
  tag: 'tag-page.js',
};

const NAMES: readonly PageName[] = ['home', 'scan', 'progress', 'progress-body', 'tag', 'pair', 'error'];

/** All pages, compiled once. `clock` writes a moment for a person. */
export function openPages(clock: (iso: string) => string): Pages {
  const language = Handlebars.create();
  language.registerHelper({
    t: (key: string, options: Handlebars.HelperOptions) => (options.data['root'].say as Say)(key, options.hash),
    join: (all: readonly string[]) => all.join(', '),
    urlOf: (text: string) => encodeURIComponent(text),
    tagOf: (job: string, code: string) => tagAddress(job, code),
    clock,
  });
  for (const partial of ['layout', 'sign', 'progress-body']) language.registerPartial(partial, source(partial));
  const compiled = new Map(NAMES.map(name => [name, language.compile(source(name), { strict: false })]));
  return (name, lang, data) => {
    const fill = compiled.get(name);
    if (fill === undefined) throw new Error(`there is no page ${name}`);
    return fill({ ...data, page: name, lang, script: SCRIPTS[name], say: sayerOf(lang) });
  };
}

const source = (name: string): string => readFileSync(new URL(`${name}.hbs`, PACKAGED_STATION), 'utf8');
