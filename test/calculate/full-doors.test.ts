import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calculate/index.ts';
import type { Job, Opening } from '../../src/import/job.ts';
import { shopDefaults } from '../../src/trade/shop-defaults.ts';
import { nm } from '../../src/units/length.ts';
import { aBoardStock, aFrameStyle, aGrid, aJob, anOpening, aSheetStock, inset, overlay } from '../support/a-job.ts';
import { length } from '../support/length.ts';
import { doorLines } from './door-lines.ts';

/** One opening of a job: the first door that it gets. */
type Drawn = Partial<Opening> & { readonly job?: Partial<Job>; readonly metric?: true };

const pair = { kind: 'pair', gap: length('1/8') } as const;
const right = { kind: 'single', hingeSide: 'right' } as const;
const fixed = { kind: 'fixed' } as const;
const imperial = shopDefaults('inch', 'letter');
const metric = shopDefaults('mm', 'A4');

/** Wood that was measured to be so moist when it was machined, and will be in the driest and the wettest weeks. */
const moist = (made: number, driest: number, wettest: number) => ({
  ...imperial,
  climate: { ...imperial.climate, shopMoisture: made, driestMoisture: driest, wettestMoisture: wettest },
});

/**
 * Whole doors, each number worked out with a pencil: left what must come out, right of the stroke the steps. Sizes,
 * rabbets, borings and gaps from the geometry of the joint and common practice; movement with the coefficients of the
 * Wood Handbook's table 13–5; masses from its specific gravities (sugar maple 705.6, black cherry 560, red oak 705.6
 * kg/m³) and 600 kg/m³ for plywood, 1 in³ = 16.387064 cm³.
 */
const DOORS: readonly (readonly [why: string, drawn: Drawn, expected: string])[] = [
  [
    'the usual door: single, overlay, plywood panel rabbeted on its back',
    {},
    `
    leaf 15 3/8 x 31                             | 14 3/8 + 1/2 + 1/2; 30 + 1/2 + 1/2
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2   | nothing to round
    SL 31 x 2 x 3/4                              | runs through
    SR 31 x 2 x 3/4
    RB 12 1/8 x 2 x 3/4                          | 15 3/8 - 2*2 = 11 3/8 shoulder; + 2*3/8 tongues
    RT 12 1/8 x 2 x 3/4
    P 27 11/16 x 12 1/16 x 0.47                  | sight 27 x 11 3/8; + 2*3/8 - 2*1/32 = + 11/16
      rabbet 0.224 deep 3/8 wide tongue 0.246    | 0.47 - 0.25 + 0.004; 3/8 - 1/32 + 1/32; 0.25 - 0.004
    hinges 3 1/2, 27 1/2                         | 31 <= 40 and 3 kg <= 15 lb: 2; 31 - 3 1/2
    diagonal 34.6033                             | root of 15.375^2 + 31^2 = 236.3906 + 961
    mass 3.039 kg                                | stiles 2*0.5377 + rails 2*0.2103 + panel 1.5434
    `,
  ],
  [
    'a pair with unequal overlays',
    { width: length('33'), mounting: overlay('1/2', '1 1/4', '1/2', '3/4'), hanging: pair },
    `
    leaf 17 5/16 x 31 1/4                        | (33 + 1/2 + 1 1/4 - 1/8) / 2 = 34 5/8 / 2; 30 + 1/2 + 3/4
    gaps left 1/2 right 1 1/4 top 1/2 bottom 3/4 between 1/8 | 34 3/4 - 2*17 5/16
    SL 31 1/4 x 2 x 3/4
    SR 31 1/4 x 2 x 3/4
    RB 14 1/16 x 2 x 3/4                         | 17 5/16 - 4 + 3/4
    RT 14 1/16 x 2 x 3/4
    P 27 15/16 x 14 x 0.47                       | 27 1/4 + 11/16; 13 5/16 + 11/16
      rabbet 0.224 deep 3/8 wide tongue 0.246
    hinges 3 1/2, 27 3/4                         | 31 1/4 - 3 1/2
    diagonal 35.7251
    mass 3.379 kg
    `,
  ],
  [
    'a pantry of three panels with the middle rails where the shelves are',
    { height: length('84'), grid: aGrid(3, 1, '30', '57') },
    `
    leaf 15 3/8 x 85
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2
    SL 85 x 2 x 3/4
    SR 85 x 2 x 3/4
    RB 12 1/8 x 2 x 3/4
    RM1 12 1/8 x 2 x 3/4
    RM2 12 1/8 x 2 x 3/4
    RT 12 1/8 x 2 x 3/4
    P1A 27 11/16 x 12 1/16 x 0.47                | 30 - 1 - 2 = 27, + 11/16
      rabbet 0.224 deep 3/8 wide tongue 0.246
    P2A 25 11/16 x 12 1/16 x 0.47                | 57 - 1 - (30 + 1) = 25
      rabbet 0.224 deep 3/8 wide tongue 0.246
    P3A 25 11/16 x 12 1/16 x 0.47                | 85 - 2 - (57 + 1) = 25
      rabbet 0.224 deep 3/8 wide tongue 0.246
    hinges 3 1/2, 23, 42 1/2, 62, 81 1/2         | above 80: 5; (85 - 7) / 4 = 19 1/2 apart; rails at 27-29 and 54-56
    diagonal 86.3793
    mass 8.197 kg
    `,
  ],
  [
    'a grid of 2 x 2: the middle hinge moves off the middle rail',
    { width: length('22'), height: length('40'), grid: aGrid(2, 2) },
    `
    leaf 23 x 41
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2
    SL 41 x 2 x 3/4
    SR 41 x 2 x 3/4
    RB 19 3/4 x 2 x 3/4                          | 23 - 4 + 3/4
    RM1 19 3/4 x 2 x 3/4
    RT 19 3/4 x 2 x 3/4
    SM1A 18 1/4 x 2 x 3/4                        | (41 - 2 - 2 - 2) / 2 = 17 1/2, + 3/4
    SM2A 18 1/4 x 2 x 3/4
    P1A 18 3/16 x 9 3/16 x 0.47                  | 17 1/2 + 11/16; (23 - 4 - 2) / 2 = 8 1/2, + 11/16
      rabbet 0.224 deep 3/8 wide tongue 0.246
    P1B 18 3/16 x 9 3/16 x 0.47
      rabbet 0.224 deep 3/8 wide tongue 0.246
    P2A 18 3/16 x 9 3/16 x 0.47
      rabbet 0.224 deep 3/8 wide tongue 0.246
    P2B 18 3/16 x 9 3/16 x 0.47
      rabbet 0.224 deep 3/8 wide tongue 0.246
    hinges 3 1/2, 18 7/32, 37 1/2                | above 40: 3; 20 1/2 is on the rail 19 1/2-21 1/2; 19 1/2 - 32 mm = 18.24
    diagonal 47.0106
    mass 6.172 kg
    `,
  ],
  [
    'an inset pair',
    { width: length('29 5/16'), mounting: inset('3/32'), hanging: pair },
    `
    leaf 14 1/2 x 29 13/16                       | (29 5/16 - 3/16 - 1/8) / 2 = 29 / 2; 30 - 3/16
    gaps left 3/32 right 3/32 top 3/32 bottom 3/32 between 1/8
    SL 29 13/16 x 2 x 3/4
    SR 29 13/16 x 2 x 3/4
    RB 11 1/4 x 2 x 3/4                          | 14 1/2 - 4 + 3/4
    RT 11 1/4 x 2 x 3/4
    P 26 1/2 x 11 3/16 x 0.47                    | 25 13/16 + 11/16; 10 1/2 + 11/16
      rabbet 0.224 deep 3/8 wide tongue 0.246
    hinges 3 1/2, 26 5/16
    diagonal 33.1517
    mass 2.794 kg
    `,
  ],
  [
    'an inset door hinged on the right: what rounding takes is left on the left and at the bottom',
    { width: length('14 25/64'), height: length('30 1/64'), mounting: inset('3/32'), hanging: right },
    `
    leaf 14 3/16 x 29 13/16                      | 14 25/64 - 12/64 = 14 13/64, down to 12/64; 30 1/64 - 12/64, down
    gaps left 7/64 right 3/32 top 3/32 bottom 7/64 | 3/32 + 1/64
    SL 29 13/16 x 2 x 3/4
    SR 29 13/16 x 2 x 3/4
    RB 10 15/16 x 2 x 3/4
    RT 10 15/16 x 2 x 3/4
    P 26 1/2 x 10 7/8 x 0.47
      rabbet 0.224 deep 3/8 wide tongue 0.246
    hinges 3 1/2, 26 5/16
    diagonal 33.0162
    mass 2.745 kg
    `,
  ],
  [
    'a pair of an odd opening: what rounding takes is left between the leaves',
    { width: length('29 21/64'), height: length('30 1/64'), hanging: pair },
    `
    leaf 15 3/32 x 31                            | (29 21/64 + 1 - 8/64) / 2 = 15 13/128, down to 12/128; 31 1/64, down
    gaps left 1/2 right 1/2 top 1/2 bottom 31/64 between 9/64 | 1/2 - 1/64; 1/8 + 2*1/128
    SL 31 x 2 x 3/4
    SR 31 x 2 x 3/4
    RB 11 27/32 x 2 x 3/4                        | 15 3/32 - 3 1/4
    RT 11 27/32 x 2 x 3/4
    P 27 11/16 x 11 25/32 x 0.47                 | 11 3/32 + 11/16
      rabbet 0.224 deep 3/8 wide tongue 0.246
    hinges 3 1/2, 27 1/2
    diagonal 34.4793
    mass 2.994 kg
    `,
  ],
  [
    'a slab',
    { style: 'Slab' },
    `
    leaf 15 3/8 x 31
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2
    SLAB 31 x 15 3/8 x 23/32                     | grain along the height
    hinges 3 1/2, 27 1/2
    diagonal 34.6033
    mass 3.368 kg                                | 31 * 15.375 * 0.71875 in3 = 5.614 dm3 of 600 kg/m3
    `,
  ],
  [
    'a solid panel of cherry in a steady house: the usual allowance is enough',
    { style: 'Solid', height: length('36'), job: { shop: moist(8, 6, 10) } },
    `
    leaf 15 3/8 x 37
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2
    SL 37 x 2 x 13/16
    SR 37 x 2 x 13/16
    RB 12 1/8 x 3 x 13/16
    RT 12 1/8 x 2 x 13/16
    P 32 11/16 x 12 1/16 x 1/2                   | 37 - 2 - 3 = 32, + 11/16; 12 1/8 * .00248 * 2 = .0601 < 1/16: 12 1/8 - 1/16
      rabbet 0.254 deep 13/32 wide tongue 0.246 | 0.5 - 0.25 + 0.004; 3/8 - 0 (.0013 down to 32nds) + 1/32
      swells 0.0598 shrinks 0.0598               | 12.0625 * .00248 * 2 both ways
      wettest 0.0013 free driest 0.3138 held     | (12 1/8 - 12 1/16 - .0598) / 2; (12.0625 - .0598 - 11.375) / 2
      4 strips of 3 13/32 for 33 3/16 x 12 9/16  | 12 1/16 + 1/2; / 4 = 3 9/64, up to 3 5/32, + 1/4
    hinges 3 1/2, 33 1/2
    diagonal 40.0673
    mass 3.769 kg
    `,
  ],
  [
    'a solid panel of maple from a dry shop in a damp house: cut narrower',
    {
      style: 'Solid maple',
      height: length('36'),
      job: {
        shop: moist(7, 5, 13),
        styles: [
          aFrameStyle({
            name: 'Solid maple',
            frameThickness: length('13/16'),
            bottomRail: length('3'),
            infill: { kind: 'solid', stock: 'Maple 4/4', thickness: length('1/2'), cut: 'flat-sawn' },
          }),
        ],
      },
    },
    `
    leaf 15 3/8 x 37
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2
    SL 37 x 2 x 13/16
    SR 37 x 2 x 13/16
    RB 12 1/8 x 3 x 13/16
    RT 12 1/8 x 2 x 13/16
    P 32 11/16 x 11 27/32 x 1/2                  | 12 1/8 * .00353 * 6 = .2568; 12 1/8 - .2568 = 11.8682, down to 11.84375
      rabbet 0.254 deep 13/32 wide tongue 0.246 | 3/8 - 0 (.0152 down to 32nds) + 1/32
      swells 0.2509 shrinks 0.0836               | 11.84375 * .00353 * 6; * 2
      wettest 0.0152 free driest 0.1926 held     | (12.125 - 11.84375 - .25085) / 2; (11.84375 - .08362 - 11.375) / 2
      4 strips of 3 11/32 for 33 3/16 x 12 11/32 | 12 11/32 / 4 = 3 11/128, up to 3 12/128, + 1/4
    hinges 3 1/2, 33 1/2
    diagonal 40.0673
    mass 4.198 kg
    `,
  ],
  [
    'a wide quarter-sawn panel of oak in a deep groove',
    {
      width: length('23'),
      height: length('36'),
      style: 'Oak',
      job: {
        shop: moist(8, 5, 12),
        stock: [aBoardStock({ name: 'Oak 4/4', species: 'red oak' })],
        styles: [
          aFrameStyle({
            name: 'Oak',
            stileWidth: length('2 1/2'),
            grooveDepth: length('1/2'),
            tongueLength: length('1/2'),
            frameStock: 'Oak 4/4',
            infill: { kind: 'solid', stock: 'Oak 4/4', thickness: length('1/2'), cut: 'quarter-sawn' },
          }),
        ],
      },
    },
    `
    leaf 24 x 37
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2
    SL 37 x 2 1/2 x 3/4
    SR 37 x 2 1/2 x 3/4
    RB 20 x 2 x 3/4                              | 24 - 5 + 1
    RT 20 x 2 x 3/4
    P 33 15/16 x 19 27/32 x 1/2                  | 33 + 1 - 1/16; 20 * .00158 * 4 = .1264; 19.8736 down to 19.84375
      rabbet 0.254 deep 17/32 wide tongue 0.246 | 1/2 - 0 (.0154 down to 32nds) + 1/32
      swells 0.1254 shrinks 0.0941               | 19.84375 * .00158 * 4; * 3
      wettest 0.0154 free driest 0.3748 held     | (20 - 19.84375 - .12541) / 2; (19.84375 - .09406 - 19) / 2
      6 strips of 3 21/32 for 34 7/16 x 20 11/32 | 20 11/32 / 4 = 5.1: 6; 20 11/32 / 6 = 3.39, up to 3 13/32, + 1/4
    hinges 3 1/2, 33 1/2
    diagonal 44.1022
    mass 6.192 kg
    `,
  ],
  [
    'a glass door with its stops',
    { style: 'Glass', height: length('36') },
    `
    leaf 15 3/8 x 37
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2
    SL 37 x 2 x 3/4
    SR 37 x 2 x 3/4
    RB 12 1/8 x 2 x 3/4
    RT 12 1/8 x 2 x 3/4
    G 33 5/8 x 12 x 1/8                          | sight 33 x 11 3/8; + 2*3/8 - 2*1/16 = + 5/8
    GST 12 1/8 x 3/8 x 3/8                       | 11 3/8 + 2*3/8; as wide as the groove is deep; 3/4 - 1/4 - 1/8
    GSB 12 1/8 x 3/8 x 3/8
    GSL 33 x 3/8 x 3/8                           | between the level ones
    GSR 33 x 3/8 x 3/8
    hinges 3 1/2, 33 1/2
    diagonal 40.0673
    mass 3.917 kg                                | glass 50.4 in3 of 2500 kg/m3 is 2.066 of it
    `,
  ],
  [
    'rails and stiles of three widths',
    {
      width: length('17 1/4'),
      height: length('26 1/2'),
      mounting: overlay('3/8'),
      job: {
        styles: [aFrameStyle({ stileWidth: length('2 1/4'), topRail: length('2 1/2'), bottomRail: length('3 1/2') })],
      },
    },
    `
    leaf 18 x 27 1/4
    gaps left 3/8 right 3/8 top 3/8 bottom 3/8
    SL 27 1/4 x 2 1/4 x 3/4
    SR 27 1/4 x 2 1/4 x 3/4
    RB 14 1/4 x 3 1/2 x 3/4                      | 18 - 4 1/2 + 3/4
    RT 14 1/4 x 2 1/2 x 3/4
    P 21 15/16 x 14 3/16 x 0.47                  | 27 1/4 - 6 + 11/16; 13 1/2 + 11/16
      rabbet 0.224 deep 3/8 wide tongue 0.246
    hinges 3 1/2, 23 3/4
    diagonal 32.6583
    mass 3.243 kg
    `,
  ],
  [
    'a metric door: bits of 10 x 6.5, plywood that measures 12.2',
    {
      metric: true,
      width: length('390 mm'),
      height: length('720 mm'),
      mounting: overlay('12 mm'),
      job: {
        shop: {
          ...metric,
          panels: { ...metric.panels, allowance: length('1 mm'), backClearance: length('1 mm') },
          hinges: { ...metric.hinges, fromEnd: length('90 mm') },
        },
        styles: [
          aFrameStyle({
            stileWidth: length('57 mm'),
            topRail: length('57 mm'),
            bottomRail: length('70 mm'),
            frameThickness: length('19 mm'),
            grooveDepth: length('10 mm'),
            grooveWidth: length('6.5 mm'),
            faceToGroove: length('6 mm'),
            tongueLength: length('10 mm'),
            infill: { kind: 'plywood', stock: 'Ply 12', thickness: length('12.2 mm') },
          }),
        ],
        stock: [aBoardStock(), aSheetStock({ name: 'Ply 12', thickness: length('12.2 mm') })],
      },
    },
    `
    leaf 414 x 744                               | 390 + 24; 720 + 24
    gaps left 12 right 12 top 12 bottom 12
    SL 744 x 57 x 19
    SR 744 x 57 x 19
    RB 320 x 70 x 19                             | 414 - 114 + 20
    RT 320 x 57 x 19
    P 635 x 318 x 12.2                           | 744 - 127 + 20 - 2; 300 + 18
      rabbet 5.8 deep 10 wide tongue 6.4         | 12.2 - 6.5 + 0.1; 10 - 1 + 1; 6.5 - 0.1
    hinges 90, 654
    diagonal 851.4294
    mass 3.160 kg
    `,
  ],
  [
    'a slab drawer front with a knob in its middle',
    {
      kind: 'drawer-front',
      height: length('5'),
      style: 'Slab',
      hanging: fixed,
      job: { shop: { ...imperial, pulls: { ...imperial.pulls, spacing: nm(0) } } },
    },
    `
    leaf 15 3/8 x 6
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2
    SLAB 6 x 15 3/8 x 23/32
    pull 7 11/16, 3                              | half of 15 3/8 and of 6
    diagonal 16.5043
    mass 0.652 kg
    `,
  ],
  [
    'a framed false front: nothing hangs, nothing is pulled',
    { kind: 'false-front', height: length('6'), hanging: fixed },
    `
    leaf 15 3/8 x 7
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2
    SL 7 x 2 x 3/4
    SR 7 x 2 x 3/4
    RB 12 1/8 x 2 x 3/4
    RT 12 1/8 x 2 x 3/4
    P 3 11/16 x 12 1/16 x 0.47                   | 7 - 4 + 11/16
      rabbet 0.224 deep 3/8 wide tongue 0.246
    diagonal 16.8935
    mass 0.869 kg
    `,
  ],
  [
    'an applied end panel with horns',
    {
      kind: 'end-panel',
      width: length('23'),
      mounting: overlay('0'),
      hanging: fixed,
      job: { styles: [aFrameStyle({ horn: length('1/2') })] },
    },
    `
    leaf 23 x 30
    gaps left 0 right 0 top 0 bottom 0
    SL 31 x 2 x 3/4                              | 30 + 2*1/2
    SR 31 x 2 x 3/4
    RB 19 3/4 x 2 x 3/4
    RT 19 3/4 x 2 x 3/4
    P 26 11/16 x 19 11/16 x 0.47
      rabbet 0.224 deep 3/8 wide tongue 0.246
    diagonal 37.8021                             | of the door, not of the horns
    mass 4.188 kg
    `,
  ],
  [
    'three high and two wide, where a third of the height is no 32nd',
    { width: length('20'), height: length('39'), grid: aGrid(3, 2) },
    `
    leaf 21 x 40
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2
    SL 40 x 2 x 3/4
    SR 40 x 2 x 3/4
    RB 17 3/4 x 2 x 3/4
    RM1 17 3/4 x 2 x 3/4
    RM2 17 3/4 x 2 x 3/4
    RT 17 3/4 x 2 x 3/4
    SM1A 11 7/16 x 2 x 3/4                       | (40 - 4 - 4) / 3 = 10.667, down to 10 21/32, rest 1/32: the lowest gets it
    SM2A 11 13/32 x 2 x 3/4                      | 10 21/32 + 3/4
    SM3A 11 13/32 x 2 x 3/4
    P1A 11 11/32 x 8 3/16 x 0.47                 | all cut for 10 21/32 + 11/16; (21 - 4 - 2) / 2 + 11/16
      rabbet 0.224 deep 3/8 wide tongue 0.246
    P1B 11 11/32 x 8 3/16 x 0.47
      rabbet 0.224 deep 3/8 wide tongue 0.246
    P2A 11 11/32 x 8 3/16 x 0.47
      rabbet 0.224 deep 3/8 wide tongue 0.246
    P2B 11 11/32 x 8 3/16 x 0.47
      rabbet 0.224 deep 3/8 wide tongue 0.246
    P3A 11 11/32 x 8 3/16 x 0.47
      rabbet 0.224 deep 3/8 wide tongue 0.246
    P3B 11 11/32 x 8 3/16 x 0.47
      rabbet 0.224 deep 3/8 wide tongue 0.246
    hinges 3 1/2, 36 1/2                         | 40 is still 2
    diagonal 45.1774
    mass 5.788 kg
    `,
  ],
  [
    'a panel as thick as the groove is wide: no rabbet; a pull at the bottom corner away from the hinge',
    {
      hanging: right,
      pull: 'bottom',
      job: {
        styles: [aFrameStyle({ infill: { kind: 'plywood', stock: 'Ply 1/4', thickness: length('1/4') } })],
        stock: [aBoardStock(), aSheetStock({ name: 'Ply 1/4', thickness: length('1/4') })],
        shop: { ...imperial, pulls: { ...imperial.pulls, spacing: length('3') } },
      },
    },
    `
    leaf 15 3/8 x 31
    gaps left 1/2 right 1/2 top 1/2 bottom 1/2
    SL 31 x 2 x 3/4
    SR 31 x 2 x 3/4
    RB 12 1/8 x 2 x 3/4
    RT 12 1/8 x 2 x 3/4
    P 27 11/16 x 12 1/16 x 1/4
    hinges 3 1/2, 27 1/2
    pull 1, 2 1/2                                | hinged right: 1 in from the left edge
    pull 1, 5 1/2                                | 3 in higher
    diagonal 34.6033
    mass 2.317 kg
    `,
  ],
];

describe('whole doors, worked by hand', () => {
  it.each(DOORS)('%s', (_why, { job = {}, metric: isMetric, ...opening }, expected) => {
    const { value, diagnostics } = calculate(aJob({ openings: [anOpening(opening)], ...job }));
    const [door] = value.doors;
    const lines = door === undefined ? [] : doorLines(value, door, isMetric ? 'mm' : 'inch');
    expect(diagnostics.filter(found => found.severity !== 'note')).toEqual([]);
    expect(lines.join('\n')).toBe(withoutSteps(expected));
  });
});

const withoutSteps = (expected: string): string =>
  expected
    .trim()
    .split('\n')
    .map(line => line.split('|')[0]?.replace(/^ {4}/, '').trimEnd())
    .join('\n');
