import Handlebars from 'handlebars';
import { describe, expect, it } from 'vitest';
import { prepare } from '../../src/render/fill.ts';
import { readMarkup } from '../../src/render/markup.ts';
import { COMPILING, syntax } from '../../src/render/template-syntax.ts';

const fillOne = (text: string, data: object = {}, words = {}) =>
  prepare([{ file: 'templates/sheet.hbs', text }], words)('sheet', data);

const findings = (found: ReturnType<typeof fillOne>): readonly string[] =>
  found.diagnostics.map(({ at, facts }) =>
    at.kind === 'template' && 'reason' in facts ? `${at.file}:${at.line} ${facts.reason}` : '?',
  );

describe('filling a template', () => {
  it('puts data in as words, never as markup', () => {
    expect(fillOne('<t>{{name}}</t>', { name: '<b>&"\'</b>' }).value.text).toBe(
      '<t>&lt;b&gt;&amp;&quot;&#x27;&lt;/b&gt;</t>',
    );
  });

  it('shows what no markup can hold, and stays as long as it was', () => {
    expect(fillOne('<t>{{name}}</t>', { name: 'a\u0000b\u0007c\ud800d\uffff\u0085' }).value.text).toBe(
      '<t>a\ufffdb\ufffdc\ufffdd\ufffd\ufffd</t>',
    );
  });

  it('takes words from the language, with holes', () => {
    const words = { count: '{n} pieces of {of}, {n} in all' };
    expect(fillOne('{{w "count" n=3 of=stock}}', { stock: 'maple' }, words).value.text).toBe(
      '3 pieces of maple, 3 in all',
    );
  });

  it('chooses by what something is', () => {
    const text = '{{#each doors}}{{#if (is kind "pair")}}2{{else}}1{{/if}}{{/each}}';
    expect(fillOne(text, { doors: [{ kind: 'pair' }, { kind: 'single' }] }).value.text).toBe('21');
  });

  it('counts a field that is there and undefined as none', () => {
    expect(fillOne('<t>{{#if note}}{{note}}{{/if}}</t>', { note: undefined }).value.text).toBe('<t></t>');
  });

  it.each([
    ['a field that is not there', '\n\n<t>{{nmae}}</t>', 'templates/sheet.hbs:3 "nmae" not defined'],
    ['one in a choice', '\n{{#if nmae}}x{{/if}}', 'templates/sheet.hbs:2 "nmae" not defined'],
    ['one in a loop', '{{#each nmaes}}x{{/each}}', 'templates/sheet.hbs:1 "nmaes" not defined'],
    ['one for a hole', '{{w "count" n=nmae}}', 'templates/sheet.hbs:1 "nmae" not defined'],
    ['words that no language has', '\n{{w "cuont"}}', 'templates/sheet.hbs:2 there are no words for "cuont"'],
    ['a loop that is closed as a choice', '\n{{#if name}}\n{{/each}}', "templates/sheet.hbs:2 if doesn't match each"],
    ['a brace too few', 'a\n\n{{name}', "templates/sheet.hbs:3 Expecting 'CLOSE_RAW_BLOCK'"],
    ['a partial that is nowhere', '\n{{> foot}}', 'templates/sheet.hbs:2 there is no template "foot"'],
  ])('says file and line of %s', (_, text, finding) => {
    const found = findings(fillOne(text, { name: 'x' }, { count: '' }));
    expect(found).toHaveLength(1);
    expect(found[0]?.slice(0, finding.length)).toBe(finding);
  });

  it('names the file of a partial whose line is wrong', () => {
    const fill = prepare(
      [
        { file: 'templates/sheet.hbs', text: '<section>\n{{> foot}}</section>' },
        { file: 'templates/foot.hbs', text: '\n<t>{{pgae}}</t>' },
      ],
      {},
    );
    expect(findings(fill('sheet', {}))).toEqual(['templates/foot.hbs:2 "pgae" not defined']);
  });

  it('says that a template is not there', () => {
    expect(findings(prepare([], {})('cover', {}))).toEqual(['cover:1 there is no such template']);
  });
});

describe('a template that was compiled ahead', () => {
  const compiled = (text: string): TemplateSpecification => {
    const code = String(Handlebars.precompile(syntax(text, new Set(), 0, 'plain'), COMPILING));
    return new Function(`return ${code}`)() as TemplateSpecification;
  };
  const fill = (text: string, ahead: string, data: object) =>
    prepare(
      [{ file: 'templates/sheet.hbs', text }],
      { n: '{n} in all' },
      new Map([[ahead, compiled(ahead)]]),
    )('sheet', data);
  const text = '<t>{{w "n" n=n}}</t>\n{{#if (is kind "pair")}}<t>{{gap}}</t>{{/if}}';

  it('is filled as its text is', () => {
    const data = { n: 3, kind: 'pair', gap: '<1/8>' };
    expect(fill(text, text, data).value.text).toBe('<t>3 in all</t>\n<t>&lt;1/8&gt;</t>');
  });

  it('says the same line of what its data does not have', () => {
    expect(findings(fill(text, text, { n: 3, kind: 'pair' }))).toEqual(['templates/sheet.hbs:2 "gap" not defined']);
  });

  it('is not taken for another text', () => {
    expect(fill('<t>{{n}}</t>', text, { n: 3 }).value.text).toBe('<t>3</t>');
  });
});

describe('reading markup', () => {
  const faults = (text: string, data: object = {}) => {
    const filled = fillOne(text, data);
    return findings({ ...readMarkup(filled.value), value: filled.value });
  };

  it.each([
    ['an element that is none', '<section>\n<tt/></section>', '2 <tt> is no element of the markup'],
    ['one where it does not belong', '<section>\n\n<td>x</td></section>', '3 <td> cannot stand in <section>'],
    ['an attribute that is none', '<section><t\n colour="red">x</t></section>', '1 <t> has no attribute colour'],
    [
      'one that says what it cannot',
      '<section>\n<t align="center">x</t></section>',
      '2 align="center" is not what <t> takes',
    ],
    ['words where none belong', '<section>\n<row>x</row></section>', '2 <row> cannot hold words of its own'],
    ['an end without a start', '<section>\n<t>x</b></t></section>', '2 unexpected close tag'],
    ['a start without an end', '<section>\n<t>x</section>', '2 unexpected close tag'],
    ['a loop before it', '{{#each rows}}\n<section/>\n{{/each}}\n<tt/>', '4 <tt> is no element of the markup'],
  ])('says the line of %s', (_, text, finding) => {
    const found = faults(text, { rows: [1, 2, 3, 4, 5, 6] });
    expect(found[0]).toBe(`templates/sheet.hbs:${finding}`);
  });

  it('gives sections with their elements and words', () => {
    const filled = fillOne('<section title="{{a}}"><t>x <b>y</b></t></section><section/>', { a: 'A & B' });
    const { value, diagnostics } = readMarkup(filled.value);
    expect(diagnostics).toEqual([]);
    expect(value).toHaveLength(2);
    expect(value[0]?.element).toMatchObject({
      name: 'section',
      attributes: { title: 'A & B' },
      children: [{ name: 't', children: ['x ', { name: 'b', children: ['y'] }] }],
    });
  });
});
