import fc from 'fast-check';
import { isError } from '../../src/diagnostics/diagnostic.ts';
import type { Job } from '../../src/import/job.ts';
import { render } from '../../src/render/index.ts';
import { shopDefaults } from '../../src/trade/shop-defaults.ts';
import { aJob } from '../support/a-job.ts';
import { judgeWords } from '../support/judge-pages.ts';
import { assets, laidOut } from '../support/packet.ts';
import { faultsOf, readPages } from '../support/pdf.ts';

/** What packets of jobs with names that nobody should give look like on paper; a line for each fault. */
export type Named = { readonly tried: number; readonly pages: number; readonly lost: readonly string[] };

/** Prints so many jobs, drawn from `seed`, and judges each page by what an independent reader finds on it. */
export async function printHostile(count: number, seed: number): Promise<Named> {
  const lost: string[] = [];
  let pages = 0;
  for (const [index, job] of fc.sample(aHostileJob, { numRuns: count, seed }).entries()) {
    const input = await laidOut(job);
    const packet = await render(input, assets(job.language));
    const read = await readPages(packet.value.packetPdf);
    // The tags' sheet has the margins of its labels.
    const sheets = read.slice(0, read.length - packet.value.pages.tags);
    const faults = [
      ...packet.diagnostics.filter(isError).map(found => JSON.stringify(found)),
      ...sheets.flatMap((page, at) => judgeWords(page, MARGIN).map(fault => `page ${at + 1}: ${fault}`)),
      ...(await faultsOf(packet.value.packetPdf)),
      ...(await faultsOf(packet.value.tagsPdf)),
    ];
    pages += sheets.length;
    lost.push(...faults.map(fault => `job ${index} of seed ${seed}: ${fault}`));
  }
  return { tried: count, pages, lost };
}

/** Half an inch: what the worst of printers leaves white. */
const MARGIN = 36;

const aHostileName = fc.oneof(
  fc.constantFrom(
    'W'.repeat(120),
    'Cabinet left of the window, over the small sink that was moved last spring',
    'Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft',
    '漢字 😀 עברית ¿ñ? <b>&amp;',
    '14 3/8 x 30 15/16',
  ),
  fc.string({ unit: 'binary', minLength: 1, maxLength: 60 }),
);

/** As long as the workbook lets a cabinet, a style or a stock be called; most are called as usual. */
const aName = (usual: string): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: 3, arbitrary: fc.constant(usual) },
    { weight: 1, arbitrary: aHostileName.map(name => `${name.slice(0, 80 - usual.length)}${usual}`) },
  );

/** Whatever a person may call things; on both papers, in both languages, without a long search for the best plan. */
const aHostileJob: fc.Arbitrary<Job> = fc
  .record({
    name: aHostileName,
    customer: aHostileName,
    note: aHostileName,
    rooms: fc.array(aHostileName, { minLength: 1, maxLength: 3 }),
    paper: fc.constantFrom('letter', 'A4'),
    language: fc.constantFrom('en', 'es'),
    openings: fc.shuffledSubarray([...aJob().openings.keys()], { minLength: 2, maxLength: 5 }),
    cabinets: fc.tuple(...['B1', 'B2', 'B3', 'B4', 'B5'].map(aName)),
    style: aName('Plain'),
    stock: aName('Maple 4/4'),
  })
  .map(({ rooms, openings, cabinets, style, stock, ...drawn }) => {
    const shop = shopDefaults('inch', drawn.paper);
    const plain = aJob();
    const named = <T>(all: T): T =>
      JSON.parse(JSON.stringify(all), (_, value) =>
        value === 'Plain' ? style : value === 'Maple 4/4' ? stock : value,
      );
    return aJob({
      ...drawn,
      ...named({ styles: plain.styles, stock: plain.stock }),
      openings: openings.flatMap((which, index) => {
        const opening = plain.openings[which];
        const [room = '', cabinet = ''] = [rooms[index % rooms.length], cabinets[index]];
        return opening === undefined ? [] : [{ ...named(opening), cabinet, room, note: drawn.note }];
      }),
      shop: { ...shop, planning: { ...shop.planning, seconds: 0 } },
    });
  });
