import { beforeAll, describe, expect, it } from 'vitest';
import type { Job } from '../../src/import/job.ts';
import type { RenderInput } from '../../src/render/draft.ts';
import { render } from '../../src/render/index.ts';
import { manifestSchema, type Packet } from '../../src/render/packet.ts';
import { SHEET_NAMES, type SheetName } from '../../src/render/sheet-names.ts';
import { printLength } from '../../src/units/print-length.ts';
import { aJob } from '../support/a-job.ts';
import { judge } from '../support/judge-pages.ts';
import { assets, demoJob, drafted, laidOut, sheetsOf } from '../support/packet.ts';
import { faultsOf, readPages, readText } from '../support/pdf.ts';
import { complaints, pdfOf } from '../support/typeset.ts';

const PAPERS = SHEET_NAMES.filter(name => name !== 'tags');
/** The templates' margin, half an inch, in points. */
const MARGIN = 36;

const NAMES = [
  'a small built-in',
  'the same in Spanish, on A4, in millimetres',
  'every kind of opening',
  'hostile names',
];

const jobs: { [name: string]: RenderInput } = {};
const jobOf = (name: string): RenderInput => jobs[name] as RenderInput;

/** What a packet says, and the keys that no words were found for: each made and read once. */
type Made = { readonly packet: Packet; readonly pages: readonly string[]; readonly missing: readonly string[] };
const made: { [name: string]: Made } = {};
const madeOf = (name: string): Made => made[name] as Made;

async function make(input: RenderInput): Promise<Made> {
  const missing = new Set<string>();
  const { words, ...rest } = assets(input.job.language);
  const watched = new Proxy(words, {
    get: (all, key: string) => {
      if (all[key] === undefined) missing.add(key);
      return all[key];
    },
  });
  const { value } = await render(input, { ...rest, words: watched });
  const pages = (await readPages(value.packetPdf)).map(page => page.text);
  return { packet: value, pages, missing: [...missing] };
}

beforeAll(async () => {
  const small = await demoJob('small');
  jobs['a small built-in'] = await laidOut(small);
  jobs['the same in Spanish, on A4, in millimetres'] = {
    ...jobOf('a small built-in'),
    job: inMillimetres({ ...small, language: 'es', paper: 'A4' }),
  };
  jobs['every kind of opening'] = await laidOut(aJob());
  jobs['hostile names'] = await laidOut(withHostileNames(aJob()));
  for (const name of NAMES) made[name] = await make(jobOf(name));
});

const inMillimetres = (job: Job): Job => ({
  ...job,
  units: 'mm',
  shop: { ...job.shop, printing: { lengths: { ...job.shop.printing.lengths, units: 'both' } } },
});

/** Names as nobody should write them: long, without a blank, with markup and signs of control in them. */
const withHostileNames = (job: Job): Job => ({
  ...job,
  number: '<J&1>"',
  name: `Kitchen ${'Donaudampfschifffahrtsgesellschaft'.repeat(3)} {{name}} </t> \u0007`,
  customer: 'A & B <c@d> '.repeat(12),
  note: `${'note '.repeat(80)}`,
  openings: job.openings.map((opening, index) => ({
    ...opening,
    cabinet: index % 2 === 0 ? `${opening.cabinet}-VERY-LONG-CABINET-NAME` : opening.cabinet,
    room: `Room ${'with a name that goes on '.repeat(6)}`,
    note: '漢字 <b>bold</b> '.repeat(9),
  })),
});

describe.each(NAMES)('the sheets of %s', name => {
  it('are laid out without a complaint', () => {
    expect(complaints(sheetsOf(jobOf(name), PAPERS).diagnostics)).toEqual([]);
  });

  it('have no words or rules in the margin or over each other, none too small, and none too faint', async () => {
    const pages = sheetsOf(jobOf(name), PAPERS).value;
    expect(judge(pages, await readPages(await pdfOf(pages)), MARGIN)).toEqual([]);
  });

  it('write nothing that the typeface does not have', () => {
    if (name !== 'hostile names') expect(madeOf(name).pages.join('')).not.toContain('\ufffd');
  });

  it('ask for no word that the words files do not have', () => {
    expect(madeOf(name).missing).toEqual([]);
  });

  it('say each size of each door and each part, as it is printed, to two independent readers', async () => {
    const input = jobOf(name);
    const first = squeezed(madeOf(name).pages.join(' '));
    const second = squeezed((await readText(madeOf(name).packet.packetPdf)).join(' '));
    const { lengths } = input.job.shop.printing;
    const doors = input.doorSet.doors.map(
      ({ width, height }) => `${printLength(width.value, lengths)} × ${printLength(height.value, lengths)}`,
    );
    const parts = input.doorSet.parts.flatMap(({ length, width }) =>
      [length, width].map(({ value: size }) => printLength(size, lengths)),
    );
    const sizes = [...new Set([...doors, ...parts])].map(squeezed);
    expect(sizes.filter(size => !first.includes(size))).toEqual([]);
    expect(sizes.filter(size => !second.includes(size))).toEqual([]);
  });

  it('name every door and every part', () => {
    const input = jobOf(name);
    const text = squeezed(madeOf(name).pages.join(' '));
    // Parts of one door share a box to tick (`B7-SL SR`), and a tag that is too small ends a long code in dots.
    const parts = name === 'hostile names' ? [] : input.doorSet.parts;
    const codes = [...input.doorSet.doors, ...parts].map(({ code }) => code);
    expect(codes.filter(code => !text.includes(squeezed(code)))).toEqual([]);
  });
});

/** Without blanks and ends of lines: a long name may be broken where it stands. */
const squeezed = (text: string): string => text.replace(/\s+/g, '');

describe('the packet', () => {
  it('is a sound document', async () => {
    const { packet } = madeOf('a small built-in');
    expect(await faultsOf(packet.packetPdf)).toEqual([]);
    expect(await faultsOf(packet.tagsPdf)).toEqual([]);
  });

  it('has a manifest of the form that it says', () => {
    for (const name of NAMES)
      expect(manifestSchema.safeParse(madeOf(name).packet.manifest).error, name).toBeUndefined();
  });

  it.each([...SHEET_NAMES])('has, of %s alone, a document that hangs together', only => {
    expect(complaints(sheetsOf(jobOf('a small built-in'), [only]).diagnostics)).toEqual([]);
  });

  it('leaves out a sheet to which the job gives nothing to say', async () => {
    const input = jobOf('every kind of opening');
    const bare = {
      ...input,
      plan: { ...input.plan, cutPlans: [], operations: [], batches: [], days: { schedules: [] } },
    };
    const { value, diagnostics } = await render(bare, assets('en'));
    expect(complaints(diagnostics)).toEqual([]);
    const text = (await readPages(value.packetPdf)).map(page => page.text).join(' ');
    expect(text).not.toContain('Board plans');
    expect(text).not.toContain('Glue-up');
  });

  it('says on its cover what changed since the revision before', async () => {
    const changes = { since: 'A', added: ['B9.1'], removed: ['B8.1'], changed: ['B7.1-SL'] };
    const input = { ...jobOf('a small built-in'), revision: { letter: 'B', inputHash: '', changes } };
    const [cover] = await readPages(await pdfOf(sheetsOf(input, ['cover']).value));
    for (const said of ['Revision B', 'since revision A', 'B9.1', 'B8.1', 'B7.1-SL'])
      expect(cover?.text).toContain(said);
  });
});

describe('a template of the shop’s own', () => {
  const own = (file: string, text: string) =>
    assets('en').templates.map(template =>
      template.file.endsWith(`/${file}`) ? { file: `own/${file}`, text } : template,
    );

  it('takes the place of ours', async () => {
    const templates = own('cover.hbs', '<section><t>Our own cover for {{job.number}}</t></section>');
    const { value } = await render(jobOf('a small built-in'), assets('en', templates), { only: ['cover'] });
    expect((await readPages(value.packetPdf)).map(page => page.text.trim())).toEqual(['Our own cover for D-001']);
  });

  it.each([
    ['<section>\n<t>{{job.number</t></section>', 'own/cover.hbs', 2, 'a tag that is not closed'],
    ['<section>\n\n<t>{{job.nummer}}</t></section>', 'own/cover.hbs', 3, 'a field that there is not'],
    ['<section><t>fine</t>\n<circle/></section>', 'own/cover.hbs', 2, 'an element that there is not'],
    ['<section>\n<t>{{w "cover.nothing"}}</t></section>', 'own/cover.hbs', 2, 'words that there are not'],
  ])('is found out at its line: %j', async (text, file, line) => {
    const { diagnostics } = await render(jobOf('a small built-in'), assets('en', own('cover.hbs', text)), {
      only: ['cover'],
    });
    expect(diagnostics.map(({ severity, at }) => ({ severity, at }))).toContainEqual({
      severity: 'error',
      at: { kind: 'template', file, line },
    });
  });
});

// The words of each sheet in reading order: rewritten by `npx vitest --update`, and read by whoever changes a sheet.
describe('the words of the sheets', () => {
  it.each([
    ['a small built-in', 'small.en.txt'],
    ['the same in Spanish, on A4, in millimetres', 'small.es.txt'],
  ])('of %s are as they were', async (name, file) => {
    const text = madeOf(name)
      .pages.map((page, index) => `--- ${index + 1}\n${page.trim()}\n`)
      .join('');
    await expect(text).toMatchFileSnapshot(`../packets/${file}`);
  });
});

describe('reading order', () => {
  it('is that of the page: a heading before what it heads', async () => {
    const sheets: readonly SheetName[] = ['schedule', 'shopping'];
    const ready = drafted(jobOf('a small built-in'));
    const text = (await readPages(await pdfOf(sheetsOf(jobOf('a small built-in'), sheets).value)))
      .map(page => page.text)
      .join('\n');
    expect(text.indexOf(ready.say('section.schedule'))).toBeLessThan(text.indexOf(ready.say('section.shopping')));
    expect(text.indexOf('L1.A.1')).toBeGreaterThan(text.indexOf(ready.say('schedule.lead').slice(0, 20)));
  });
});
