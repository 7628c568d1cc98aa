import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { calculate } from '../../src/calculate/index.ts';
import { isError } from '../../src/diagnostics/diagnostic.ts';
import type { Job } from '../../src/import/job.ts';
import { layOut } from '../../src/layout/index.ts';
import { loadSolver, type Solver } from '../../src/layout/solver.ts';
import { packagedFonts, packagedTemplates, packagedWords } from '../../src/packaged.ts';
import { render } from '../../src/render/index.ts';
import type { Packet } from '../../src/render/packet.ts';
import { shopDefaults } from '../../src/trade/shop-defaults.ts';
import { aJob } from '../support/a-job.ts';
import { judgeWords } from '../support/judge-pages.ts';
import { faultsOf, rasterise, readPages } from '../support/pdf.ts';
import { RUNS } from '../support/runs.ts';
import { readByBoth } from '../support/scan.ts';

/** Half an inch: what the worst of printers leaves white. */
const MARGIN = 36;

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

async function paperOf(changes: Partial<Job>): Promise<Packet> {
  const job = aJob(changes);
  const doorSet = calculate(job);
  const plan = layOut(job, doorSet.value, solver);
  const packet = await render(
    {
      job,
      doorSet: doorSet.value,
      plan: plan.value,
      diagnostics: [...doorSet.diagnostics, ...plan.diagnostics],
      revision: { letter: 'A', inputHash: 'x', changes: undefined },
      program: '0',
    },
    { templates: packagedTemplates(), words: packagedWords(job.language), fonts: packagedFonts() },
  );
  expect(packet.diagnostics.filter(isError)).toEqual([]);
  return packet.value;
}

/** Shops without a long search for the best plan: these tests look at paper. */
const shopFor = (units: 'inch' | 'mm', paper: 'letter' | 'A4') => {
  const shop = shopDefaults(units, paper);
  return { ...shop, planning: { ...shop.planning, seconds: 0 } };
};

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

/** The tags' sheet has the margins of its labels, and is judged by its symbols. */
const sheetsOf = async (packet: Packet) => {
  const tags = packet.pages.tags;
  const read = await readPages(packet.packetPdf);
  return read.slice(0, read.length - tags);
};

describe('a packet on paper', () => {
  it.each([
    ['letter', 'inch', 'en'],
    ['A4', 'mm', 'es'],
  ] as const)('is sound on %s in %s and %s', async (paper, units, language) => {
    const packet = await paperOf({ paper, units, language, shop: shopFor(units, paper) });
    const faults = (await sheetsOf(packet)).flatMap((page, index) =>
      judgeWords(page, MARGIN).map(fault => `page ${index + 1}: ${fault}`),
    );
    expect(faults).toEqual([]);
    expect(await faultsOf(packet.packetPdf)).toEqual([]);
    expect(await faultsOf(packet.tagsPdf)).toEqual([]);
  });

  it('is sound whatever the names are', async () => {
    const names = fc.record({ name: aHostileName, customer: aHostileName, note: aHostileName, room: aHostileName });
    for (const { room, ...job } of fc.sample(names, { numRuns: Math.ceil(RUNS / 333), seed: 11 })) {
      const openings = aJob().openings.map(opening => ({ ...opening, room, note: job.note }));
      const packet = await paperOf({ ...job, openings, shop: shopFor('inch', 'letter') });
      const faults = (await sheetsOf(packet)).flatMap(page => judgeWords(page, MARGIN));
      expect(faults, JSON.stringify(job)).toEqual([]);
    }
  });

  it('has a tag for every part and every door that both decoders read', async () => {
    const { tagsPdf, manifest } = await paperOf({ shop: shopFor('inch', 'letter') });
    const codes = [...manifest.parts, ...manifest.doors].map(each => each.barcode).sort();
    const read = await Promise.all((await rasterise(tagsPdf, 203)).map(readByBoth));
    for (const which of [0, 1]) {
      const all = new Set(read.flatMap(both => both[which] ?? []));
      expect(codes.filter(code => !all.has(code))).toEqual([]);
    }
  });
});
