import { describe, expect, it } from 'vitest';
import { WORKED } from '../../src/calculate/worked.ts';
import { packagedTemplates, packagedWords } from '../../src/packaged.ts';
import { SHEET_NAMES } from '../../src/render/sheet-names.ts';
import { OPERATION_IDS } from '../../src/trade/operations.ts';

const english = packagedWords('en');
const spanish = packagedWords('es');
const holes = (text = ''): readonly string[] => [...text.matchAll(/\{[^}]*\}/g)].map(([hole]) => hole).sort();

describe('the words of the packet', () => {
  it('are the same keys in both languages', () => {
    expect(Object.keys(spanish).sort()).toEqual(Object.keys(english).sort());
  });

  it('leave the same holes in both languages', () => {
    const different = Object.keys(english).filter(key => holes(english[key]).join() !== holes(spanish[key]).join());
    expect(different).toEqual([]);
  });

  it('are said in each language in its own words', () => {
    // Names and signs are alike everywhere; sentences are not.
    const sentences = Object.keys(english).filter(key => (english[key] ?? '').split(' ').length > 5);
    const same = sentences.filter(key => english[key] === spanish[key]);
    expect(same).toEqual([]);
  });

  it.each(packagedTemplates().map(({ file, text }) => [file, text] as const))(
    '%s asks for no word that is not there',
    (_, text) => {
      const asked = [...text.matchAll(/\(?w "([^"]+)"/g)].flatMap(([, key]) => key ?? []);
      expect(asked.filter(key => english[key] === undefined)).toEqual([]);
    },
  );

  it('name every operation, and say how it is done', () => {
    const keys = OPERATION_IDS.flatMap(id => [`operation.${id}`, `operation.${id}.do`]);
    expect(keys.filter(key => english[key] === undefined)).toEqual([]);
  });

  it('name every sheet of the packet', () => {
    expect(SHEET_NAMES.filter(name => english[`section.${name}`] === undefined)).toEqual([]);
  });

  it('name every number that is worked out', () => {
    expect(WORKED.filter(of => english[`working.${of}`] === undefined)).toEqual([]);
  });
});
