import { area } from '../units/area.ts';
import { hours } from '../units/duration.ts';
import { type Length, mm, nm } from '../units/length.ts';
import { fromPounds, type Volume } from '../units/mass.ts';
import { money } from '../units/money.ts';
import { lengthOf, type Units } from '../units/read-length.ts';
import type { LabelSheet, Shop } from './shop.ts';

const PINT = (231 / 8) * 0.0254 ** 3;
const cup = (pints: number): Volume => (pints * PINT) as Volume;

/** What a shop that says nothing is taken to do. */
export function shopDefaults(units: Units, paper: 'letter' | 'A4'): Shop {
  /** The same habit in a shop that works in inches, and in one that works in millimetres. */
  const size = (inches: string, millimetres: string): Length =>
    lengthOf(units === 'inch' ? inches : `${millimetres} mm`);
  return {
    printing: { lengths: { units: units === 'inch' ? 'inch' : 'mm', increment: lengthOf('1/32') } },
    doors: {
      increment: size('1/32', '0.5'),
      overlay: size('1/2', '12'),
      pairGap: size('1/8', '3'),
      insetClearance: size('3/32', '2.5'),
      reveal: size('1/4', '6'),
      squareShort: size('1/32', '0.8'),
      squareTall: size('1/16', '1.6'),
      squareTallFrom: size('24', '600'),
      // Architectural Woodwork Standards, 1st ed. (2009), section 10, 4.4.6.10: over 60 in an intermediate rail.
      middleRailFrom: size('60', '1525'),
    },
    saw: {
      kerf: size('1/8', '3.2'),
      sheetTrim: size('1/4', '6'),
      boardEndTrim: size('2', '50'),
      boardEdgeLoss: size('1/4', '6'),
      ripCapacity: size('50', '1270'),
      crosscutCapacity: size('100', '2500'),
      leastSkim: nm(0),
      tableLength: size('48', '1200'),
      stages: 3,
    },
    rough: {
      lengthAllowance: size('1', '25'),
      widthAllowance: size('1/4', '6'),
      rest: hours(48),
      yield: 0.7,
      standardBoard: { width: size('6', '150'), length: size('96', '2400') },
      standardSheet: { width: size('48', '1220'), length: size('96', '2440') },
    },
    testing: {
      stickingPieces: 2,
      copingPieces: 2,
      rabbetPieces: 1,
      pieceLength: size('16', '400'),
      spareForEvery: 20,
      measureEvery: 10,
      tolerance: size('1/64', '0.4'),
    },
    router: {
      order: 'groove-first',
      stickingBitDiameter: size('1 5/8', '41'),
      copingBitDiameter: size('1 5/8', '41'),
      rabbetBitDiameter: size('1 1/4', '32'),
      speed: 16_000,
      rimSpeedMax: 50,
      sledWidth: size('6', '150'),
      shortPiece: size('12', '300'),
      rabbetBy: 'saw',
    },
    panels: {
      allowance: size('1/32', '1'),
      rabbetFit: size('0.004', '0.1'),
      backClearance: size('1/32', '1'),
      engagement: size('1/8', '3'),
      stripWidthMax: size('4', '100'),
      stripAllowance: size('1/4', '6'),
      trimAllowance: size('1/2', '12'),
      glassClearance: size('1/16', '1.5'),
      edgeEasing: size('1/8', '3'),
    },
    hinges: {
      // Heights and masses as a hardware catalogue's chart gives them (maker withheld). The maker's own table rules.
      counts: [
        { hinges: 2, heightUpTo: size('40', '1000'), massUpTo: fromPounds(15) },
        { hinges: 3, heightUpTo: size('60', '1500'), massUpTo: fromPounds(30) },
        { hinges: 4, heightUpTo: size('80', '2000'), massUpTo: fromPounds(45) },
        { hinges: 5, heightUpTo: size('100', '2500'), massUpTo: fromPounds(60) },
      ],
      fromEnd: size('3 1/2', '90'),
      cupDiameter: mm(35),
      cupDepth: lengthOf('12.5 mm'),
      cupEdge: mm(4),
      leastUnderCup: mm(5),
      leastToGroove: mm(1),
      // A plate centred on a 2 in rail clears it after half of both: 1 + 1.26 in.
      shiftMax: size('2 1/2', '50'),
      plateReach: mm(32),
    },
    pulls: {
      fromEdge: size('1', '25'),
      fromEnd: size('2 1/2', '64'),
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
      tallFrom: size('40', '1000'),
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
      patience: 0.015,
      seed: 1,
      colourMatch: 'none',
      colourMatchWaste: 0.02,
      remnantLength: size('12', '300'),
      remnantWidth: size('3', '75'),
      remnantForSetting: 1,
      boardsForSetting: 0,
    },
    labels: paper === 'letter' ? THIRTY_ON_LETTER : TWENTY_ONE_ON_A4,
  };
}

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
