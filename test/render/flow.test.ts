import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../src/render/figure.ts';
import { columnWidths } from '../../src/render/flow/columns.ts';
import { paragraph } from '../../src/render/flow/paragraph.ts';
import { blankSheet } from '../../src/render/flow/strip.ts';
import { widthOf } from '../../src/render/fonts.ts';
import type { Item } from '../../src/render/page.ts';
import { meaningOf, typeset } from '../../src/render/typeset.ts';
import { judge } from '../support/judge-pages.ts';
import { readPages } from '../support/pdf.ts';
import { law, RUNS } from '../support/runs.ts';
import { complaints, FONTS, pagesOf, pdfOf } from '../support/typeset.ts';

const MARGIN = 43.2;

/** Names as people and machines give them: long, foreign, without blanks, with control characters and lone halves. */
const aName = fc.oneof(
  fc.constantFrom(
    'Pantry',
    'B12 wall cabinet left of the window, over the small sink that was moved',
    'Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft',
    'W'.repeat(300),
    '14 3/8 x 30 15/16',
    'fjord ÅÄÖ ñ ¿qué? 漢字 😀😀 עברית',
    '<script>&amp;</script>',
    '',
  ),
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.string({ unit: 'grapheme', maxLength: 200 }),
);

const aStyle = fc.constantFrom('small', 'body', 'large', 'heading', 'title', 'display', 'huge');

const aParagraph = fc.record({ style: aStyle, text: aName, align: fc.constantFrom('left', 'centre', 'right') });

describe('a paragraph', () => {
  const itemsOf = (text: string, room: number, size: number, linesMax?: number) => {
    const sheet = blankSheet(1000, 1000);
    const spans = [{ set: typeset(text), bold: false }];
    const strips = paragraph(spans, room, { size, align: 'left', linesMax }, FONTS);
    let y = 0;
    for (const strip of strips) {
      strip.put(0, y, sheet, 'usual');
      y += strip.usual.height;
    }
    return {
      strips,
      items: sheet.items.filter((item): item is Extract<Item, { kind: 'text' }> => item.kind === 'text'),
    };
  };

  it('is never wider than its room, and loses no letter', () => {
    law([aName, fc.integer({ min: 60, max: 500 }), fc.constantFrom(9, 10, 12.5, 44)], (text, room, size) => {
      const { items } = itemsOf(text, room, size);
      const widest = Math.max(0, ...items.map(item => item.x + widthOf(item.set, size, FONTS.regular)));
      expect(widest).toBeLessThanOrEqual(room + 0.01);
      const letters = (all: string) => all.replaceAll(' ', '');
      expect(letters(items.map(item => item.set).join(''))).toBe(letters(typeset(text)));
    });
  });

  it('breaks between words where it can: a line plus the next word would not have fitted', () => {
    const { items } = itemsOf('one two three four five six seven', 60, 10);
    expect(items.map(item => item.set)).toEqual(['one two', 'three four', 'five six seven']);
  });

  it('keeps a whole number and its fraction on one line', () => {
    const width = FONTS.measure('about 14', 10, false);
    expect(
      itemsOf('about 14 3/8', width + 1, 10).items.map(item => FONTS.measure(item.set, 10, false) > 0),
    ).toHaveLength(2);
  });

  it.each([
    ['14 3/8', 22, ['14 ', '3/8'], 'at its blank'],
    ['12.5 mm', 24, ['12.5 ', 'mm'], 'at its blank'],
    ['B7.A.1L-SL', 30, ['B7.A.', '1L-SL'], 'after a point'],
    ['Fjordkabinett', 40, ['Fjordkab', 'inett'], 'anywhere, having no joints'],
  ])('breaks %j in %d points into %j: %s', (text, room, lines) => {
    const { items } = itemsOf(text, room, 10);
    const meant = (set: string) => Array.from(set, sign => meaningOf(sign.charCodeAt(0))).join('');
    expect(items.map(item => meant(item.set))).toEqual(lines);
  });

  it.each([
    ['one two three', 60, 1, ['one two…']],
    ['one two', 60, 1, ['one two']],
    ['Donaudampfschifffahrt', 60, 1, ['Donaudam…']],
    ['one two three four five', 60, 2, ['one two', 'three four…']],
  ])('%j in %d points and %d lines', (text, room, linesMax, lines) => {
    const { items } = itemsOf(text, room, 10, linesMax);
    expect(items).toHaveLength(lines.length);
    expect(items.slice(0, -1).map(item => item.set)).toEqual(lines.slice(0, -1));
    expect(items.at(-1)?.set.endsWith('…')).toBe(lines.at(-1)?.endsWith('…') ?? false);
    expect(widthOf(items.at(-1)?.set ?? '', 10, FONTS.regular)).toBeLessThanOrEqual(room);
  });
});

describe('widths of columns', () => {
  const pointsOf = (text: string) => Number(text);
  const widths = (asked: string, room: number, natural: readonly number[]) =>
    columnWidths(asked.split(' '), room, column => natural[column] ?? 0, pointsOf);

  it.each([
    ['60 * *', 300, [], [60, 120, 120], 'a length, and the rest in halves'],
    ['60 2* *', 300, [], [60, 160, 80], 'two shares and one'],
    ['auto *', 300, [70], [70, 230], 'as wide as its longest line'],
    ['auto auto', 300, [70, 80], [70, 80], 'no more than they need'],
    ['auto auto', 300, [70, 500], [70, 230], 'the wider one gives way'],
    ['auto auto auto', 300, [70, 400, 500], [70, 115, 115], 'down to the same width'],
    ['auto *', 300, [500], [276, 24], 'a share keeps room for a letter'],
  ])('%s in %d points: %s', (asked, room, natural, expected) => {
    expect(widths(asked, room, natural)).toEqual({ widths: expected, reason: undefined });
  });

  it('says when lengths leave no room', () => {
    expect(widths('200 200 *', 300, []).reason).toBe('its columns need 424 points, and 300 are there');
  });

  it('never need more than the room', () => {
    const column = fc.constantFrom('auto', '*', '2*', '60', '120');
    law(
      [fc.array(column, { minLength: 1, maxLength: 9 }), fc.array(fc.nat({ max: 900 }), { maxLength: 9 })],
      (asked, natural) => {
        const found = widths(asked.join(' '), 525.6, natural).widths;
        expect(found.reduce((total, width) => total + width, 0)).toBeLessThanOrEqual(525.6 + 0.001);
        for (const width of found) expect(width).toBeGreaterThanOrEqual(0);
      },
    );
  });
});

const FURNITURE = `<header><row><col><t style="small">{{job}}</t></col><col width="auto"><t style="small">Rev B</t></col></row><rule/></header>
<footer><t style="small" align="right">Page <page/> of <pages/></t></footer>`;

describe('pages', () => {
  it('are sound whatever the words are', async () => {
    const template = `<section title="All" bookmark="all">${FURNITURE}
      {{#each paragraphs}}<t style="{{style}}" align="{{align}}">{{text}}</t>{{/each}}
      <card><t>{{job}}</t><box>{{job}}</box><write label="{{job}}"/></card>
      <row><col width="auto"><t>{{job}}</t></col><col><li mark="1.">{{job}}</li></col><col width="140"><bar code="ABC123" text="yes"/></col></row>
      <table widths="30 auto * auto 120" rules="grid">
        <tr head="yes"><td></td><td>Code</td><td>{{job}}</td><td>Length</td><td>Tag</td></tr>
        {{#each rows}}<tr><td><box/></td><td bold="yes">{{this}}</td><td fill="light">{{this}}</td><td style="large">14 3/8</td><td><bar code="ABC123" height="18"/></td></tr>{{/each}}
        <tr fill="light"><td span="5" align="right">{{job}}</td></tr>
      </table></section>`;
    const cases = fc.sample(
      fc.record({
        job: aName,
        paragraphs: fc.array(aParagraph, { maxLength: 12 }),
        rows: fc.array(aName, { maxLength: 25 }),
      }),
      { numRuns: Math.ceil(RUNS / 50), seed: 7 },
    );
    for (const data of cases) {
      const { pages, diagnostics } = pagesOf(template, data);
      expect(complaints(diagnostics)).toEqual([]);
      expect(judge(pages, await readPages(await pdfOf(pages)), MARGIN)).toEqual([]);
    }
  });

  it('the judge sees what is wrong', async () => {
    const { pages } = pagesOf('<section><t>Door</t><rule/></section>');
    const [page] = pages;
    const [word, rule] = page?.items ?? [];
    if (page === undefined || word?.kind !== 'text' || rule?.kind !== 'line') throw new Error('not as drawn');
    const faultsOf = async (items: readonly Item[]) => {
      const changed = [{ ...page, items }];
      return judge(changed, await readPages(await pdfOf(changed)), MARGIN);
    };
    expect(await faultsOf([word, rule])).toEqual([]);
    expect(await faultsOf([{ ...word, x: 20 }])).toEqual(['page 1: "Door" is in the margin']);
    expect(await faultsOf([word, { ...word, y: word.y + 8 }])).toEqual(['page 1: "Door" and "Door" overlap']);
    expect(await faultsOf([word, { ...rule, y1: word.y - 3, y2: word.y - 3 }])).toEqual([
      'page 1: "Door" and a rule overlap',
    ]);
    expect(await faultsOf([{ ...word, size: 8 }])).toEqual(['page 1: "Door" is 8 points small']);
    expect(await faultsOf([{ ...rule, weight: 0.25 }])).toHaveLength(1);
  });

  it.each(['top', 'middle', 'bottom'])(
    'place the columns of a row at its %s, and leave their words on the left',
    place => {
      const template = `<section title="T" bookmark="t"><row align="${place}"><col><t>word</t></col><col width="90"><t style="huge">tall</t></col></row></section>`;
      const { pages } = pagesOf(template, {});
      const word = pages[0]?.items.find(item => item.kind === 'text' && item.set === 'word');
      expect(word).toMatchObject({ x: MARGIN });
    },
  );

  it('repeat the heads of a table and split none of its rows', async () => {
    const rows = Array.from({ length: 120 }, (_, index) => `row ${index + 1}`);
    const template = `<section>${FURNITURE}<table widths="80 *"><tr head="yes"><td>Piece</td><td>Where</td></tr>
      {{#each rows}}<tr><td>{{this}}</td><td>first line<br/>second line of {{this}}</td></tr>{{/each}}</table></section>`;
    const { pages } = pagesOf(template, { job: 'J', rows });
    const read = await readPages(await pdfOf(pages));
    expect(read.length).toBeGreaterThan(4);
    for (const page of read) expect(page.text.match(/Piece/g)).toHaveLength(1);
    for (const row of rows) {
      const holding = read.filter(({ text }) => new RegExp(`\\b${row}\\b`).test(text));
      expect(holding, row).toHaveLength(1);
      expect(holding[0]?.text.match(new RegExp(`\\b${row}\\b`, 'g')), row).toHaveLength(2);
    }
  });

  it.each([
    [36, 1, 'fits'],
    [38, 1, 'would need a second sheet for its last rows, and is set closer'],
    [60, 2, 'needs a second sheet anyhow, and is set as it should be'],
  ])('of %d rows are %d: it %s', (count, sheets, why) => {
    const rows = Array.from({ length: count }, (_, index) => `row ${index}`);
    const { pages } = pagesOf('<section><table>{{#each rows}}<tr><td>{{this}}</td></tr>{{/each}}</table></section>', {
      rows,
    });
    expect(pages).toHaveLength(sheets);
    const lines = pages[0]?.items.flatMap(item => (item.kind === 'text' ? [item.y] : [])) ?? [];
    const isClose = (lines[1] ?? 0) - (lines[0] ?? 0) < 19;
    expect(isClose).toBe(why.includes('closer'));
  });

  it.each([
    ['a section that joins whole', 20, '</section><section margin="0.6in" joins="whole">', 20, 1],
    ['a section that does not fit whole', 40, '</section><section margin="0.6in" joins="whole">', 60, 3],
    ['a section that saves a sheet', 40, '</section><section margin="0.6in" joins="yes">', 60, 2],
    ['a section that joins nothing', 20, '</section><section margin="0.6in">', 20, 2],
    ['a section of another width', 20, '</section><section margin="1in" joins="yes">', 20, 2],
    ['what follows a break', 20, '<break/>', 20, 2],
    ['what fits after a break', 20, '<break joins="yes"/>', 20, 1],
    ['what saves no sheet after a break', 40, '<break joins="yes"/>', 20, 2],
  ])('go on with %s', async (_, before, between, after, count) => {
    const lines = (word: string, number: number) =>
      Array.from({ length: number }, (__, index) => `<t>${word} ${index + 1}.</t>`).join('');
    const { pages } = pagesOf(
      `<section margin="0.6in">${lines('one', before)}${between}${lines('two', after)}</section>`,
    );
    const read = await readPages(await pdfOf(pages));
    expect(read).toHaveLength(count);
    const text = read.map(page => page.text).join('\n');
    expect(text).toContain(`one ${before}.`);
    expect(text).toContain(`two ${after}.`);
    expect(judge(pages, read, MARGIN)).toEqual([]);
  });

  it('put the header of a section above it where it joins another', async () => {
    const section = (name: string, joins: string) =>
      `<section title="${name}" bookmark="${name}"${joins}><header><t>Head of ${name}</t></header><t>Body of ${name}</t></section>`;
    const { pages } = pagesOf(section('A', '') + section('B', ' joins="whole"'));
    expect((await readPages(await pdfOf(pages))).map(page => page.text.trim().split(/\s*\n\s*/))).toEqual([
      ['Head of A', 'Body of A', 'Head of B', 'Body of B'],
    ]);
    expect(pages[0]?.targets.map(({ bookmark }) => bookmark)).toEqual(['A', 'B']);
  });

  it('keep together what belongs together', async () => {
    const filler = '<t>line</t>'.repeat(53);
    const { pages } = pagesOf(`<section>${filler}<t style="heading">Head</t><sp/><t>Body 1</t></section>
      <section>${filler}<keep><t>Kept 1</t><t>Kept 2</t><t>Kept 3</t><t>Kept 4</t></keep></section>
      <section>${filler}<t>one two three four five six seven eight nine ten ${'word '.repeat(40)}</t></section>`);
    const read = await readPages(await pdfOf(pages));
    expect(read).toHaveLength(6);
    expect(read[1]?.text).toContain('Head');
    expect(read[1]?.text).toContain('Body 1');
    expect(read[3]?.text.match(/Kept/g)).toHaveLength(4);
    // No line of a paragraph alone on a page: two at least.
    expect(read[4]?.text).not.toContain('one');
    expect(read[5]?.text).toContain('one');
  });

  it('split what no page can hold', async () => {
    const long = Array.from({ length: 2000 }, (_, index) => `word${index}`).join(' ');
    const { pages, diagnostics } = pagesOf(
      `<section>${FURNITURE}<card><t>{{long}}</t></card><table><tr head="yes"><td>H</td><td>I</td></tr><tr><td>{{long}}</td><td>short</td></tr></table></section>`,
      { job: 'J', long },
    );
    expect(complaints(diagnostics)).toEqual([]);
    const read = await readPages(await pdfOf(pages));
    expect(judge(pages, read, MARGIN)).toEqual([]);
    const text = read.map(page => page.text).join('\n');
    for (const word of ['word0', 'word999', 'word1999'])
      expect(text.match(new RegExp(`\\b${word}\\b`, 'g'))).toHaveLength(2);
  });

  it('know their number, their count and the page of a bookmark', async () => {
    const { pages } = pagesOf(`<section title="A"><t to="c">C is on <at to="c"/> of <pages/></t></section>
      <section><t>This is <page/></t></section><section bookmark="c"><t>C on <page/></t></section>`);
    const read = await readPages(await pdfOf(pages));
    expect(read.map(page => page.text.trim())).toEqual(['C is on 3 of 3', 'This is 2', 'C on 3']);
  });

  it.each([
    ['letter', 'portrait', 612, 792],
    ['letter', 'landscape', 792, 612],
    ['A4', 'portrait', 595.28, 841.89],
    ['A4', 'landscape', 841.89, 595.28],
    ['50mm 25mm', 'portrait', 141.73, 70.87],
    ['4in 6in', 'portrait', 288, 432],
  ])('are %s %s where a section says so', (paper, orientation, width, height) => {
    const { pages } = pagesOf(`<section paper="${paper}" orientation="${orientation}" margin="2mm"><t>x</t></section>`);
    expect(pages[0]?.width).toBeCloseTo(width, 2);
    expect(pages[0]?.height).toBeCloseTo(height, 2);
  });

  const figure: Figure = { width: 600, height: 40, marks: [] };
  const tall: Figure = { width: 40, height: 900, marks: [] };
  it.each([
    ['a bookmark that is nowhere', '<section>\n<t to="x">x</t></section>', '2: <t>: there is no bookmark "x"'],
    ['a drawing that is nowhere', '<section>\n<figure name="x"/></section>', '2: <figure>: there is no drawing "x"'],
    [
      'a drawing that is too wide',
      '<section>\n<figure name="wide"/></section>',
      '2: <figure>: the drawing "wide" is 600 points wide, and its place is 525',
    ],
    [
      'a drawing that is too tall',
      '<section>\n<figure name="tall"/></section>',
      '1: <section>: something in it is 900 points tall, and a page holds 705',
    ],
    [
      'a symbol that is too wide',
      '<section>\n<row><col width="80"><bar code="A7KQZ81B34X"/></col></row></section>',
      '2: <bar>: the symbol of "A7KQZ81B34X" is 127 points wide, and its place is 80',
    ],
    [
      'a symbol on a tint',
      '<section>\n<table><tr fill="light"><td><bar code="A"/></td></tr></table></section>',
      '2: <bar>: a symbol does not read on a tint',
    ],
    ['a symbol that cannot be', '<section>\n<bar code="漢"/></section>', '2: <bar>: "漢" cannot be a symbol'],
    [
      'columns without room',
      '<section>\n<table widths="400 400"><tr><td/><td/></tr></table></section>',
      '2: <table>: its columns need 800 points, and 525 are there',
    ],
    [
      'widths for other columns',
      '<section>\n<table widths="40 40"><tr><td/></tr></table></section>',
      '2: <table>: 2 widths are named for 1 columns',
    ],
    [
      'a label too small for its words',
      '<section margin="0">\n<labels across="1" down="1" width="100" height="30"><label><t>one</t><t>two</t></label></labels></section>',
      '2: <label>: "one" needs 26 points of height, and has 20',
    ],
  ])('complain of %s', (_, template, complaint) => {
    const figures = new Map([
      ['wide', figure],
      ['tall', tall],
    ]);
    expect(complaints(pagesOf(template, {}, figures).diagnostics)).toEqual([complaint]);
  });
});

describe('labels', () => {
  const sheet = (start: number, count: number) =>
    pagesOf(
      `<section margin="0"><labels across="3" down="10" width="2.625in" height="1in" left="0.1875in" top="0.5in" pitch-x="2.75in" start="${start}">
      {{#each codes}}<label><t>{{this}}</t></label>{{/each}}</labels></section>`,
      { codes: Array.from({ length: count }, (_, index) => `L${index + 1}`) },
    );

  it('stand on their grid, row by row, on as many sheets as it takes', () => {
    const { pages, diagnostics } = sheet(1, 31);
    expect(diagnostics).toEqual([]);
    expect(pages).toHaveLength(2);
    const at = (index: number) => pages[0]?.items[index];
    expect(at(0)).toMatchObject({ set: 'L1', x: 0.1875 * 72 + 5 });
    expect(at(1)).toMatchObject({ set: 'L2', x: (0.1875 + 2.75) * 72 + 5 });
    expect(at(3)).toMatchObject({ set: 'L4', x: 0.1875 * 72 + 5, y: 0.5 * 72 + 72 + 5 + 10.25 });
    expect(pages[1]?.items).toMatchObject([{ set: 'L31' }]);
  });

  it('begin on a partly used sheet where they are told to', () => {
    const { pages } = sheet(30, 2);
    expect(pages.map(page => page.items.length)).toEqual([1, 1]);
    expect(pages[0]?.items[0]).toMatchObject({ set: 'L1', x: (0.1875 + 5.5) * 72 + 5 });
  });
});
