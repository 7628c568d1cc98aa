import { readFileSync } from 'node:fs';
import { LANGUAGES, type Language } from '../../diagnostics/languages.ts';
import { PACKAGED_STATION } from '../../packaged.ts';

/** Says the sentence that `key` names, with `facts` put in. Throws on a key that is not in the file: that is a bug. */
export type Say = (key: string, facts?: { readonly [name: string]: string | number }) => string;

type Words = { readonly [key: string]: string };

const read = (language: Language): Words =>
  JSON.parse(readFileSync(new URL(`words.${language}.json`, PACKAGED_STATION), 'utf8'));

const WORDS: { readonly [L in Language]: Words } = { en: read('en'), es: read('es') };

export const wordsOf = (language: Language): Words => WORDS[language];

export function sayerOf(language: Language): Say {
  const words = WORDS[language];
  return (key, facts = {}) => {
    const sentence = words[key];
    if (sentence === undefined) throw new Error(`words.${language}.json has no ${key}`);
    return sentence.replaceAll(/\{(\w+)\}/g, (_, name: string) => String(facts[name] ?? ''));
  };
}

/** The first language of a browser's list that we have; `otherwise` where it has none of them. */
export function preferredLanguage(acceptLanguage: string, otherwise: Language): Language {
  const wanted = acceptLanguage
    .split(',')
    .map(each => each.split(';'))
    .map(([tag = '', weight = '']) => ({ tag: tag.trim().slice(0, 2).toLowerCase(), weight: weightOf(weight) }))
    .sort((a, b) => b.weight - a.weight);
  for (const { tag } of wanted) {
    const known = LANGUAGES.find(language => language === tag);
    if (known !== undefined) return known;
  }
  return otherwise;
}

const weightOf = (text: string): number => {
  const weight = Number(/q=([\d.]+)/.exec(text)?.[1] ?? '1');
  return Number.isFinite(weight) ? weight : 0;
};
