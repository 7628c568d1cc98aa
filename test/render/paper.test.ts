import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { isError } from '../../src/diagnostics/diagnostic.ts';
import type { Job } from '../../src/import/job.ts';
import type { RenderInput } from '../../src/render/draft.ts';
import { render } from '../../src/render/index.ts';
import { grouped } from '../../src/render/order.ts';
import type { Packet } from '../../src/render/packet.ts';
import { SHEET_NAMES } from '../../src/render/sheet-names.ts';
import type { Shop } from '../../src/trade/shop.ts';
import { shopDefaults } from '../../src/trade/shop-defaults.ts';
import { aJob } from '../support/a-job.ts';
import { judgeWords } from '../support/judge-pages.ts';
import { assets, demoJob, laidOut } from '../support/packet.ts';
import { faultsOf, rasterise, readPages } from '../support/pdf.ts';
import { RUNS } from '../support/runs.ts';
import { readByBoth } from '../support/scan.ts';

/** Half an inch: what the worst of printers leaves white. */
const MARGIN = 36;

async function paperOf(changes: Partial<Job>): Promise<Packet> {
  const input = await laidOut(aJob(changes));
  const packet = await render(input, assets(input.job.language));
  expect(packet.diagnostics.filter(isError)).toEqual([]);
  return packet.value;
}

/** Shops without a long search for the best plan: these tests look at paper. */
const withoutSearch = (shop: Shop): Shop => ({ ...shop, planning: { ...shop.planning, seconds: 0 } });
const quickShop = () => withoutSearch(shopDefaults('inch', 'letter'));

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

describe('the packet of a kitchen', () => {
  let input: RenderInput;
  let packet: Packet;
  beforeAll(async () => {
    input = await laidOut(await demoJob('kitchen'));
    packet = (await render(input, assets('en'), { only: SHEET_NAMES.filter(name => name !== 'tags') })).value;
  });

  it('takes sixty pages at most, without its tags', () => {
    expect(packet.pages.packet).toBeLessThanOrEqual(60);
  });

  it('gives a machine two sheets at most for one operation', async () => {
    const { operations } = input.plan;
    const pages = (await readPages(packet.packetPdf)).map(page => page.text);
    const codes = operations.flatMap(({ id, setups }) => setups.map(({ code }) => ({ id, code })));
    const pagesOf = grouped(
      codes.flatMap(({ id, code }) => pages.flatMap((text, page) => (text.includes(code) ? [{ id, page }] : []))),
      ({ id }) => id,
    );
    expect(pagesOf.size).toBeGreaterThan(20);
    for (const [id, those] of pagesOf) expect(new Set(those.map(({ page }) => page)).size, id).toBeLessThanOrEqual(2);
  });
});

describe('a packet on paper', () => {
  it('is sound whatever the names are', async () => {
    const names = fc.record({ name: aHostileName, customer: aHostileName, note: aHostileName, room: aHostileName });
    for (const { room, ...job } of fc.sample(names, { numRuns: Math.ceil(RUNS / 333), seed: 11 })) {
      const openings = aJob()
        .openings.slice(0, 5)
        .map(opening => ({ ...opening, room, note: job.note }));
      const packet = await paperOf({ ...job, openings, shop: quickShop() });
      const faults = (await sheetsOf(packet)).flatMap(page => judgeWords(page, MARGIN));
      expect(faults, JSON.stringify(job)).toEqual([]);
      expect(await faultsOf(packet.packetPdf)).toEqual([]);
      expect(await faultsOf(packet.tagsPdf)).toEqual([]);
    }
  });

  it('has a tag for every part and every door that both decoders read', async () => {
    const { tagsPdf, manifest } = await paperOf({ shop: quickShop(), openings: aJob().openings.slice(0, 5) });
    const codes = [...manifest.parts, ...manifest.doors].map(each => each.barcode).sort();
    const read = await Promise.all((await rasterise(tagsPdf, 203)).map(readByBoth));
    for (const which of [0, 1]) {
      const all = new Set(read.flatMap(both => both[which] ?? []));
      expect(codes.filter(code => !all.has(code))).toEqual([]);
    }
  });
});
