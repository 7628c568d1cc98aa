import { describe, expect, it } from 'vitest';
import type { Part } from '../../src/calculate/door-set.ts';
import { calculate } from '../../src/calculate/index.ts';
import type { FrameStyle, Opening } from '../../src/import/job.ts';
import { shopDefaults } from '../../src/trade/shop-defaults.ts';
import { mm, plus } from '../../src/units/length.ts';
import { addMasses, pounds } from '../../src/units/mass.ts';
import { aFrameStyle, aJob, anOpening, overlay } from '../support/a-job.ts';
import { length } from '../support/length.ts';

const shop = shopDefaults('inch', 'letter');

/** A door of the given size, without overlays. */
function door(
  width: string,
  height: string,
  style: Partial<FrameStyle>,
  opening: Partial<Opening> = {},
  ofShop = shop,
) {
  const drawn = { mounting: overlay('0'), width: length(width), height: length(height), ...opening };
  const { value } = calculate(aJob({ openings: [anOpening(drawn)], styles: [aFrameStyle(style)], shop: ofShop }));
  const part = (role: Part['role']) => value.parts.find(each => each.role === role);
  return { door: value.doors[0], parts: value.parts, part };
}

const members = (width: string) => ({
  stileWidth: length(width),
  topRail: length(width),
  bottomRail: length(width),
});

describe('published door examples', () => {
  // A how-to article of 2019 on matched router bits: rail = door − 2 · stile + 2 · tongue.
  it('a door 14 in wide, stiles 2 1/2, tongues 3/8: rails of 9 3/4', () => {
    expect(door('14', '20', members('2 1/2')).part('rail-top')?.length.value).toBe(length('9 3/4'));
  });

  // A public do-it-yourself guide: rails = width − both stiles + 3/4 in.
  it('a door 27 × 45 1/2 in, stiles 3 1/2, both tongues together 3/4: rails of 20 3/4', () => {
    const made = door('27', '45 1/2', members('3 1/2'));
    expect(made.part('rail-bottom')?.length.value).toBe(length('20 3/4'));
    expect(made.part('stile-left')?.length.value).toBe(length('45 1/2'));
  });

  // Worked elsewhere: 406.4 − 2 · 57 + 2 · 9.5 = 311.4; less 3 mm of clearance 308.4; 635 − 114 + 19 − 3 = 537.
  it('a door 406.4 × 635 mm of 57 mm members: rails of 311.4, a panel of 308.4 × 537', () => {
    const style = { ...members('57 mm'), grooveDepth: length('9.5 mm'), tongueLength: length('9.5 mm') };
    const metric = {
      ...shop,
      doors: { ...shop.doors, increment: length('0.1 mm') },
      panels: { ...shop.panels, allowance: length('1.5 mm') },
    };
    const made = door('406.4 mm', '635 mm', style, {}, metric);
    expect(made.part('rail-top')?.length.value).toBe(length('311.4 mm'));
    expect(made.part('panel')?.width.value).toBe(length('308.4 mm'));
    expect(made.part('panel')?.length.value).toBe(length('537 mm'));
  });

  // Worked elsewhere with 44.05 lb/ft³: 3.2 lb.
  it('a frame 16 × 25 in of 2 1/4 in members of 3/4 in sugar maple weighs 3.2 lb', () => {
    const { parts } = door('16', '25', members('2 1/4'));
    const frame = parts.filter(part => part.role !== 'panel').map(part => part.mass);
    expect(pounds(addMasses(frame))).toBeCloseTo(3.2, 1);
  });
});

describe('hinges', () => {
  // A hardware catalogue’s chart (maker withheld): 2 to 40 in, 3 to 60, 4 to 80, 5 to 100; also 15, 30, 45, 60 lb.
  it.each([
    ['40', 2],
    ['40 1/32', 3],
    ['60', 3],
    ['60 1/32', 4],
    ['80', 4],
    ['80 1/32', 5],
    ['100', 5],
  ])('a light door %s in high has %i', (height, count) => {
    const made = door('12', height, {}, { grid: { panelsHigh: 3, panelsWide: 1, middleRailHeights: [] } });
    expect(made.door?.hinges).toHaveLength(count);
  });

  // Slabs of 30 × 20 in: 23/32 in thick, and so dense that they weigh what the row says.
  it.each([
    [15, 2],
    [15.1, 3],
    [30, 3],
    [30.1, 4],
    [45, 4],
    [45.1, 5],
    [60, 5],
  ])('a door of 30 in that weighs %f lb has %i', (weight, count) => {
    const volume = 30 * 20 * (23 / 32) * 0.0254 ** 3;
    const stock = aJob().stock.map(each => ({ ...each, density: (weight * 0.45359237 * (1 - 1e-12)) / volume }));
    const opening = anOpening({ style: 'Slab', width: length('20'), height: length('30'), mounting: overlay('0') });
    const [made] = calculate(aJob({ openings: [opening], stock })).value.doors;
    expect(made?.hinges).toHaveLength(count);
  });

  // A catalogue’s table (maker withheld): centre of the cup = edge distance + 17.5 mm, for 3 to 8 mm.
  it.each([3, 4, 5, 6, 7, 8])('a cup %i mm from the edge has its centre 17.5 mm farther in', edge => {
    const bored = { ...shop, hinges: { ...shop.hinges, cupEdge: mm(edge) } };
    const { door: made } = door('16', '30', members('2 1/2'), {}, bored);
    expect(made?.hinges[0]?.fromEdge).toBe(plus(mm(edge), mm(17.5)));
  });
});

// Architectural Woodwork Standards, 1st ed. (2009), section 10, 4.4.6.10: over 60 in an intermediate rail.
it('a frame over 60 in high wants a middle rail', () => {
  const codes = (height: string) => {
    const opening = anOpening({ mounting: overlay('0'), height: length(height) });
    return calculate(aJob({ openings: [opening] })).diagnostics.map(found => found.code);
  };
  expect(codes('60')).toEqual([]);
  expect(codes('60 1/32')).toEqual(['door-wants-middle-rail']);
});
