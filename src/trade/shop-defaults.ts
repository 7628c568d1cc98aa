import { area } from '../units/area.ts';
import { hours } from '../units/duration.ts';
import { mm, nm } from '../units/length.ts';
import { fromPounds, type Volume } from '../units/mass.ts';
import { money } from '../units/money.ts';
import { lengthOf, type Units } from '../units/read-length.ts';
import type { LabelSheet, Shop } from './shop.ts';

const PINT = (231 / 8) * 0.0254 ** 3;
const cup = (pints: number): Volume => (pints * PINT) as Volume;

/** What a shop that says nothing is taken to do. */
export const shopDefaults = (units: Units, paper: 'letter' | 'A4'): Shop => ({
  printing: { lengths: { units: units === 'inch' ? 'inch' : 'mm', increment: lengthOf('1/32') } },
  doors: {
    increment: units === 'inch' ? lengthOf('1/32') : lengthOf('0.5 mm'),
    overlay: units === 'inch' ? lengthOf('1/2') : mm(12),
    pairGap: units === 'inch' ? lengthOf('1/8') : mm(3),
    insetClearance: units === 'inch' ? lengthOf('3/32') : lengthOf('2.5 mm'),
    reveal: units === 'inch' ? lengthOf('1/4') : mm(6),
    squareShort: lengthOf('1/32'),
    squareTall: lengthOf('1/16'),
    squareTallFrom: lengthOf('24'),
    // Architectural Woodwork Standards, 1st ed. (2009), section 10, 4.4.6.10: over 60 in an intermediate rail.
    middleRailFrom: lengthOf('60'),
  },
  saw: {
    kerf: lengthOf('1/8'),
    sheetTrim: lengthOf('1/4'),
    boardEndTrim: lengthOf('2'),
    boardEdgeLoss: lengthOf('1/4'),
    ripCapacity: lengthOf('50'),
    crosscutCapacity: lengthOf('100'),
    leastSkim: nm(0),
    tableLength: lengthOf('48'),
    stages: 3,
  },
  rough: {
    lengthAllowance: lengthOf('1'),
    widthAllowance: lengthOf('1/4'),
    rest: hours(48),
    yield: 0.7,
    standardBoard: { width: lengthOf('6'), length: lengthOf('96') },
    standardSheet: { width: lengthOf('48'), length: lengthOf('96') },
  },
  testing: {
    stickingPieces: 2,
    copingPieces: 2,
    rabbetPieces: 1,
    pieceLength: lengthOf('16'),
    spareForEvery: 20,
    measureEvery: 10,
    tolerance: lengthOf('1/64'),
  },
  router: {
    order: 'groove-first',
    stickingBitDiameter: lengthOf('1 5/8'),
    copingBitDiameter: lengthOf('1 5/8'),
    rabbetBitDiameter: lengthOf('1 1/4'),
    speed: 16_000,
    rimSpeedMax: 50,
    sledWidth: lengthOf('6'),
    shortPiece: lengthOf('12'),
    rabbetBy: 'saw',
  },
  panels: {
    allowance: lengthOf('1/32'),
    rabbetFit: units === 'inch' ? lengthOf('0.004') : lengthOf('0.1 mm'),
    backClearance: lengthOf('1/32'),
    engagement: lengthOf('1/8'),
    stripWidthMax: lengthOf('4'),
    stripAllowance: lengthOf('1/4'),
    trimAllowance: lengthOf('1/2'),
    glassClearance: lengthOf('1/16'),
    edgeEasing: lengthOf('1/8'),
  },
  hinges: {
    // Heights and masses as a hardware catalogue's chart gives them (maker withheld). The maker's own table rules.
    counts: [
      { hinges: 2, heightUpTo: lengthOf('40'), massUpTo: fromPounds(15) },
      { hinges: 3, heightUpTo: lengthOf('60'), massUpTo: fromPounds(30) },
      { hinges: 4, heightUpTo: lengthOf('80'), massUpTo: fromPounds(45) },
      { hinges: 5, heightUpTo: lengthOf('100'), massUpTo: fromPounds(60) },
    ],
    fromEnd: lengthOf('3 1/2'),
    cupDiameter: mm(35),
    cupDepth: lengthOf('12.5 mm'),
    cupEdge: mm(4),
    leastUnderCup: mm(5),
    leastToGroove: mm(1),
    // A plate centred on a 2 in rail clears it after half of both: 1 + 1.26 in.
    shiftMax: lengthOf('2 1/2'),
    plateReach: mm(32),
  },
  pulls: {
    fromEdge: lengthOf('1'),
    fromEnd: lengthOf('2 1/2'),
    spacing: mm(96),
    holeDiameter: mm(5),
  },
  climate: {
    temperatureC: 21,
    shopMoisture: 8,
    shopHumidity: undefined,
    driestHumidity: 25,
    wettestHumidity: 65,
    driestMoisture: undefined,
    wettestMoisture: undefined,
  },
  gluing: {
    clamps: 12,
    tallFrom: lengthOf('40'),
    inClamps: hours(2),
    beforeMachining: hours(24),
    // 6 mil wet is about 267 ft²/gal: 1604.17 / 6, the film arithmetic of one US gallon.
    litresPerSquareMetre: 0.1524,
  },
  finishing: {
    rackSlots: 40,
    sprayPlaces: 8,
    potVolume: cup(2),
    potLife: hours(4),
    // 65 % is what Utah Admin. Code R307-349-5(2) asks of a gun.
    sprayTransfer: 0.65,
    containers: [cup(2), cup(8), cup(40)],
  },
  buying: {
    gluePrice: undefined,
    glueContainers: [cup(0.5), cup(1), cup(2), cup(8)],
    discArea: area(mm(1000), mm(2000)),
    discPack: 50,
    discPrice: undefined,
    glassPrice: undefined,
  },
  work: {
    people: 1,
    hoursPerDay: 8,
    startsAt: '08:00',
    weekdays: [1, 2, 3, 4, 5],
    daysOff: [],
    startDate: undefined,
    minutes: {},
    helperAlone: ['inspect', 'sand-panel', 'flush-sand', 'ease-edges', 'rest', 'take-down'],
    rate: money(6000),
    margin: 0.2,
  },
  planning: {
    seconds: 2,
    seed: 1,
    colourMatch: 'none',
    colourMatchWaste: 0.02,
    remnantLength: lengthOf('12'),
    remnantWidth: lengthOf('3'),
  },
  labels: paper === 'letter' ? THIRTY_ON_LETTER : TWENTY_ONE_ON_A4,
});

/** 3 × 10 of 2 5/8 × 1 in on letter, variant A of open label-template data (two grids circulate: see the README). */
export const THIRTY_ON_LETTER: LabelSheet = {
  page: 'letter',
  rows: 10,
  columns: 3,
  width: lengthOf('2 5/8'),
  height: lengthOf('1'),
  left: lengthOf('3/16'),
  top: lengthOf('1/2'),
  pitchAcross: lengthOf('2 3/4'),
  pitchDown: lengthOf('1'),
  startAt: 1,
};

/** 3 × 7 of 63.5 × 38.1 mm on A4; from memory. */
export const TWENTY_ONE_ON_A4: LabelSheet = {
  page: 'A4',
  rows: 7,
  columns: 3,
  width: lengthOf('63.5 mm'),
  height: lengthOf('38.1 mm'),
  left: lengthOf('7.2 mm'),
  top: lengthOf('15.1 mm'),
  pitchAcross: lengthOf('66 mm'),
  pitchDown: lengthOf('38.1 mm'),
  startAt: 1,
};
