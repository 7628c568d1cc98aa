import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { preferredLanguage, sayerOf, wordsOf } from '../../src/station/web/words.ts';

const project = join(import.meta.dirname, '../..');
const [english, spanish] = [wordsOf('en'), wordsOf('es')];

describe('the words of the pages', () => {
  it('are the same in both languages, with the same facts in them', () => {
    const facts = (words: typeof english) =>
      Object.entries(words).map(([key, sentence]) => [key, (sentence.match(/\{\w+\}/g) ?? []).sort()]);
    expect(facts(spanish)).toEqual(facts(english));
  });

  it('are all there, and none is there that nobody says', () => {
    const code = [
      ...sources(join(project, 'src/station/web'), '.ts'),
      ...sources(join(project, 'templates/station'), '.hbs'),
      ...sources(join(project, 'templates/station'), '.js'),
    ].join('\n');
    const said = new Set([
      ...[...code.matchAll(/(?:say\(|\{?\(?t |words\[)['"]([\w.]+)['"]/g)].map(([, key]) => key ?? ''),
      ...[...code.matchAll(/'((?:done|askOrder|askBatch)\.\w+)'/g)].map(([, key]) => key ?? ''),
      // Put together from the name of what is told and `title` or `line`, or `yes`, `no` and a number.
      ...[...code.matchAll(/(?:stop|waysOut|reasons)\('(\w+)'/g)].flatMap(([, about]) => built(about ?? '')),
      ...['unknownJob', 'unknown', 'mistyped'].flatMap(built),
      ...['link.ok', 'link.lost', 'link.unpaired'],
    ]);
    const known = new Set(Object.keys(english));
    expect([...said].filter(key => !known.has(key) && !OPTIONAL.test(key))).toEqual([]);
    expect([...known].filter(key => !said.has(key))).toEqual([]);
  });

  it.each([
    ['es-MX,es;q=0.9,en;q=0.8', 'es'],
    ['en-GB,en;q=0.9', 'en'],
    ['de-DE,de;q=0.9,es;q=0.5,en;q=0.7', 'en'],
    ['fr', 'es'],
    ['', 'es'],
    ['*;q=abc,,;;=', 'es'],
  ] as const)('for a browser that wants “%s” are %s, where the jobs are Spanish', (wanted, language) => {
    expect(preferredLanguage(wanted, 'es')).toBe(language);
  });

  it('put facts in as they are, and nothing for a fact that is not there', () => {
    const say = sayerOf('en');
    expect(say('oldTag.line', { code: '$& {code}' })).toBe('Its remake is $& {code}. Throw this tag away.');
    expect(() => say('no.such.key')).toThrow('no.such.key');
  });
});

const OPTIONAL = /\.(title|line|yes|no|reason\d)$/;

const built = (about: string): readonly string[] =>
  ['title', 'line', 'yes', 'no', 'reason1', 'reason2', 'reason3'].map(each => `${about}.${each}`);

const sources = (folder: string, ending: string): readonly string[] =>
  readdirSync(folder)
    .filter(name => name.endsWith(ending))
    .map(name => readFileSync(join(folder, name), 'utf8'));
