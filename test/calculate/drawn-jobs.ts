import fc from 'fast-check';
import type {
  FrameStyle,
  Grid,
  Hanging,
  Infill,
  Job,
  Mounting,
  Opening,
  SlabStyle,
  Style,
} from '../../src/import/job.ts';
import { shopDefaults } from '../../src/trade/shop-defaults.ts';
import { SPECIES } from '../../src/trade/species.ts';
import { type Length, minus, nm, plus, share, times } from '../../src/units/length.ts';
import { aBoardStock, aFrameStyle, aJob, anOpening, aSheetStock, aSlabStyle, aSource } from '../support/a-job.ts';
import { length } from '../support/length.ts';

const SIXTY_FOURTH = length('1/64');
const TENTH = length('0.1 mm');

/** A length as shops have them: 64ths of an inch and tenths of a millimetre, mixed. Bounds in inches. */
export const aLength = (from: number, to: number): fc.Arbitrary<Length> =>
  fc.oneof(
    fc.integer({ min: Math.ceil(from * 64), max: Math.floor(to * 64) }).map(count => times(count, SIXTY_FOURTH)),
    fc.integer({ min: Math.ceil(from * 254), max: Math.floor(to * 254) }).map(count => times(count, TENTH)),
  );

const anIncrement = fc.constantFrom(...['1/64', '1/32', '1/16', '0.5 mm', '1 mm'].map(length));

const aStock = [
  aBoardStock({ name: 'Board', thickness: length('2') }),
  ...SPECIES.map(({ name }) => aBoardStock({ name, species: name, thickness: length('2') })),
  aSheetStock({ name: 'Sheet' }),
];

const anInfill: fc.Arbitrary<Infill> = fc.oneof(
  fc.record({ kind: fc.constant('plywood' as const), stock: fc.constant('Sheet'), thickness: aLength(0.19, 0.5) }),
  fc.record({
    kind: fc.constant('solid' as const),
    stock: fc.constantFrom(...SPECIES.map(({ name }) => name)),
    thickness: aLength(0.19, 0.5),
    cut: fc.constantFrom('flat-sawn' as const, 'quarter-sawn' as const),
  }),
  fc.record({ kind: fc.constant('glass' as const), thickness: aLength(0.1, 0.25) }),
);

/** A style that can be made: members wider than their grooves, a lip behind the groove. */
const aStyle: fc.Arbitrary<FrameStyle> = fc
  .record({
    stileWidth: aLength(2, 4),
    topRail: aLength(1, 5),
    bottomRail: aLength(1, 6),
    middleRail: aLength(1.25, 4),
    middleStile: aLength(1.25, 4),
    frameThickness: aLength(0.75, 1.25),
    grooveDepth: aLength(0.25, 0.4),
    grooveWidth: aLength(0.19, 0.25),
    faceToGroove: aLength(0.15, 0.3),
    short: aLength(0, 0.05),
    horn: fc.oneof(fc.constant(nm(0)), aLength(0, 1)),
    infill: anInfill,
  })
  .map(({ short, ...drawn }) =>
    aFrameStyle({ ...drawn, frameStock: 'Board', tongueLength: minus(drawn.grooveDepth, short) }),
  );

const aSlab: fc.Arbitrary<SlabStyle> = aLength(0.7, 1).map(thickness =>
  aSlabStyle({ name: 'Plain', thickness, stock: 'Sheet' }),
);

const fourSides = (one: fc.Arbitrary<Length>) => fc.record({ left: one, right: one, top: one, bottom: one });

const aMounting: fc.Arbitrary<Mounting> = fc.oneof(
  fc.record({ kind: fc.constant('overlay' as const), overlay: fourSides(aLength(0, 1.5)) }),
  fc.record({ kind: fc.constant('inset' as const), clearance: fourSides(aLength(0.05, 0.2)) }),
);

const aHanging: fc.Arbitrary<Hanging> = fc.oneof(
  fc.constantFrom<Hanging>(
    { kind: 'single', hingeSide: 'left' },
    { kind: 'single', hingeSide: 'right' },
    { kind: 'fixed' },
  ),
  aLength(0, 0.25).map(gap => ({ kind: 'pair' as const, gap })),
);

/** Middle rails shared equally, or near where they would be: within a twentieth of the height. */
const aGrid = (height: Length): fc.Arbitrary<Grid> =>
  fc
    .record({
      panelsHigh: fc.integer({ min: 1, max: 4 }),
      panelsWide: fc.integer({ min: 1, max: 3 }),
      given: fc.boolean(),
      off: fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 3, maxLength: 3 }),
    })
    .map(({ panelsHigh, panelsWide, given, off }) => ({
      panelsHigh,
      panelsWide,
      middleRailHeights: given
        ? off
            .slice(0, panelsHigh - 1)
            .map((steps, at) =>
              plus(share(times(at + 1, height), panelsHigh, TENTH).each, times(steps, share(height, 400, TENTH).each)),
            )
        : [],
    }));

const anOpeningDrawn = (copies: number): fc.Arbitrary<Opening> =>
  aLength(8, 90).chain(height =>
    fc
      .record({
        width: aLength(8, 48),
        mounting: aMounting,
        hanging: aHanging,
        grid: aGrid(height),
        quantity: fc.integer({ min: 1, max: copies }),
        kind: fc.constantFrom<Opening['kind']>('door', 'door', 'drawer-front', 'false-front', 'end-panel'),
        pull: fc.constantFrom<Opening['pull']>(undefined, 'top', 'bottom', 'middle', 'none'),
      })
      .map(drawn => anOpening({ ...drawn, height })),
  );

/** What a job is made from: little enough to read when a law fails on it. */
export type Drawing = {
  readonly style: Style;
  readonly openings: readonly Opening[];
  readonly increment: Length;
  /** Percent of moisture when made, and by how much it falls and rises. */
  readonly made: number;
  readonly dries: number;
  readonly swells: number;
};

/** Openings in one style, in any increment and any climate. */
const drawingOf = (openings: number, copies: number): fc.Arbitrary<Drawing> =>
  fc.record({
    style: fc.oneof<fc.Arbitrary<Style>[]>(aStyle, aStyle, aStyle, aSlab),
    openings: fc.array(anOpeningDrawn(copies), { minLength: 1, maxLength: openings }),
    increment: anIncrement,
    made: fc.integer({ min: 6, max: 12 }),
    dries: fc.integer({ min: -1, max: 4 }),
    swells: fc.integer({ min: -1, max: 6 }),
  });

/** One to four openings, of up to three copies. */
export const aDrawing = drawingOf(4, 3);

/** One opening, once: what is asked of each door alone can be asked of many more of these. */
export const aSmallDrawing = drawingOf(1, 1);

export function drawnJob({ style, openings, increment, made, dries, swells }: Drawing): Job {
  const shop = shopDefaults('inch', 'letter');
  return aJob({
    styles: [style],
    stock: aStock,
    openings: openings.map((opening, at) => ({
      ...opening,
      cabinet: `C${at + 1}`,
      from: aSource('Cabinets', at + 2),
    })),
    shop: {
      ...shop,
      doors: { ...shop.doors, increment },
      climate: { ...shop.climate, shopMoisture: made, driestMoisture: made - dries, wettestMoisture: made + swells },
    },
  });
}
