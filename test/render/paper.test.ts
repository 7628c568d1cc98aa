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
import { printHostile } from '../faults/hostile-names.ts';
import { aJob } from '../support/a-job.ts';
import { assets, demoJob, laidOut } from '../support/packet.ts';
import { rasterise, readPages } from '../support/pdf.ts';
import { RUNS } from '../support/runs.ts';
import { readByBoth } from '../support/scan.ts';

async function paperOf(changes: Partial<Job>): Promise<Packet> {
  const input = await laidOut(aJob(changes));
  const packet = await render(input, assets(input.job.language));
  expect(packet.diagnostics.filter(isError)).toEqual([]);
  return packet.value;
}

/** Shops without a long search for the best plan: these tests look at paper. */
const withoutSearch = (shop: Shop): Shop => ({ ...shop, planning: { ...shop.planning, seconds: 0 } });
const quickShop = () => withoutSearch(shopDefaults('inch', 'letter'));

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

  it('takes a few more on A4, in Spanish, with every size in two units', async () => {
    const { shop } = input.job;
    const lengths = { ...shop.printing.lengths, units: 'both' } as const;
    const printing = { ...shop, printing: { ...shop.printing, lengths } };
    const job = { ...input.job, paper: 'A4', language: 'es', shop: printing } as const;
    const { value } = await render({ ...input, job }, assets('es'), {
      only: SHEET_NAMES.filter(name => name !== 'tags'),
    });
    expect(value.pages.packet).toBeLessThanOrEqual(64);
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
  // `npm run faults` prints two hundred.
  it('is sound whatever the names are', { timeout: 300_000 }, async () => {
    const { lost, pages } = await printHostile(Math.ceil(RUNS / 125), 11);
    expect(lost).toEqual([]);
    expect(pages).toBeGreaterThan(RUNS / 10);
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
