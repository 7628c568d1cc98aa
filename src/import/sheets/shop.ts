import { OPERATION_IDS } from '../../trade/operations.ts';
import { at, type Setting } from '../setting.ts';
import {
  AREA,
  CHOICE,
  COUNT,
  DATE,
  DATES,
  HOURS,
  IF_SET,
  LENGTH,
  MONEY,
  NUMBER,
  OPERATIONS,
  orNone,
  PERCENT,
  PRICE_BY_AREA,
  PRICE_BY_VOLUME,
  SHARE,
  SIZE,
  TEMPERATURE,
  TIME,
  VOLUME,
  VOLUMES,
  WEEKDAYS,
} from '../setting-kinds.ts';
import { hingesUpTo, labelPreset, minutesOf, printed, standardSize } from './shop-places.ts';
import { PLANNING_SETTINGS } from './shop-planning.ts';

const LENGTHS_IN = CHOICE<'inch' | 'decimal-inch' | 'mm' | 'both'>([
  ['inch', 'inch', 'inches', 'fractions', 'in'],
  ['decimal-inch', 'decimal inch', 'decimal'],
  ['mm', 'mm', 'millimetres', 'millimeters', 'metric'],
  ['both', 'both', 'inch and mm'],
]);
const STAGES = CHOICE<2 | 3 | 'free'>([
  [2, '2'],
  [3, '3'],
  ['free', 'free', 'any'],
]);
const ROUTER_ORDER = CHOICE<'groove-first' | 'cope-first'>([
  ['groove-first', 'groove first', 'groove', 'stick first'],
  ['cope-first', 'cope first', 'cope'],
]);
const RABBET_BY = CHOICE<'saw' | 'router'>([
  ['saw', 'saw', 'dado'],
  ['router', 'router', 'bit'],
]);
const LABEL_PAGE = CHOICE<'letter' | 'A4' | 'single'>([
  ['letter', 'letter'],
  ['A4', 'A4'],
  ['single', 'single', 'roll', 'thermal'],
]);

/** Every setting of the Shop sheet, in the order in which the README and the blank workbook list them. */
export const SETTINGS: readonly Setting[] = [
  at('doors', 'overlay', 'Overlay', LENGTH, 'How far a door lies over the face frame where its row does not say.'),
  at('doors', 'pairGap', 'Pair gap', LENGTH, 'Between the two leaves of a pair.', ['Gap']),
  at('doors', 'insetClearance', 'Inset clearance', LENGTH, 'On each side of an inset leaf.', ['Clearance']),
  at('doors', 'reveal', 'Reveal', LENGTH, 'What should show of the face frame between neighbouring doors.'),
  at('doors', 'increment', 'Door increment', SIZE, 'Door sizes are rounded down to this; the rest goes to the gap.'),
  at('doors', 'squareShort', 'Diagonals apart', LENGTH, 'How far apart the diagonals of a door may be.'),
  at('doors', 'squareTall', 'Diagonals apart when tall', LENGTH, 'How far apart the diagonals of a tall door may be.'),
  at(
    'doors',
    'squareTallFrom',
    'Diagonals tall from',
    SIZE,
    'Doors higher than this count as tall for their diagonals.',
  ),
  at('doors', 'middleRailFrom', 'Middle rail from', SIZE, 'Doors higher than this want a middle rail.'),

  printed('units', 'Print lengths in', LENGTHS_IN, 'How lengths are printed.'),
  printed(
    'increment',
    'Print fractions to',
    SIZE,
    'Inch fractions are printed to this, marked + or − where the true value lies between.',
  ),

  at('saw', 'kerf', 'Kerf', LENGTH, 'What the saw blade takes.', ['Saw kerf', 'Blade']),
  at(
    'saw',
    'sheetTrim',
    'Sheet trim',
    LENGTH,
    'Cut off each side of a sheet first, its own kerf included; 0 where factory edges are used.',
  ),
  at('saw', 'boardEndTrim', 'Board end trim', LENGTH, 'Cut off each end of a board first.', ['End trim']),
  at(
    'saw',
    'boardEdgeLoss',
    'Board edge loss',
    LENGTH,
    'Lost along a board before its first strip: the jointed edge.',
    ['Edge loss'],
  ),
  at('saw', 'ripCapacity', 'Rip capacity', SIZE, 'Largest distance from fence to blade.'),
  at('saw', 'crosscutCapacity', 'Crosscut capacity', SIZE, 'Longest piece that the crosscut stop can measure.'),
  at(
    'saw',
    'leastSkim',
    'Least skim',
    LENGTH,
    'Leftovers narrower than this cannot be cut off; 0 where the saw can skim.',
  ),
  at('saw', 'tableLength', 'Table length', SIZE, 'Pieces longer than this want support behind the table.'),
  at('saw', 'stages', 'Cutting stages', STAGES, 'How often the direction of cutting may change on a sheet.', [
    'Stages',
  ]),

  at('rough', 'lengthAllowance', 'Rough length allowance', LENGTH, 'Added to a finished length for the rough blank.'),
  at('rough', 'widthAllowance', 'Rough width allowance', LENGTH, 'Added to a finished width for the rough blank.'),
  at('rough', 'rest', 'Rest', HOURS, 'How long ripped strips rest before they are jointed.'),
  at('rough', 'yield', 'Yield', SHARE(100), 'Net over bought wood where no boards have been measured.'),
  standardSize('standardBoard', 'width', 'Board width'),
  standardSize('standardBoard', 'length', 'Board length'),
  standardSize('standardSheet', 'width', 'Sheet width'),
  standardSize('standardSheet', 'length', 'Sheet length'),

  at('testing', 'stickingPieces', 'Sticking test pieces', COUNT(0, 20), 'Blanks to try the sticking set-up on.'),
  at('testing', 'copingPieces', 'Coping test pieces', COUNT(0, 20), 'Blanks to try the coping set-up on.'),
  at('testing', 'rabbetPieces', 'Rabbet test pieces', COUNT(0, 20), 'Offcuts to try the panel rabbet on.'),
  at('testing', 'pieceLength', 'Test piece length', SIZE, 'Length of a test blank.'),
  at(
    'testing',
    'spareForEvery',
    'Spare for every',
    COUNT(1, 1000),
    'One spare stile and one spare rail for so many of each, at least one.',
  ),
  at('testing', 'measureEvery', 'Measure every', COUNT(1, 1000), 'One piece in so many is measured.'),
  at('testing', 'tolerance', 'Tolerance', LENGTH, 'How far a measured piece may be off.'),

  at('router', 'order', 'Router order', ROUTER_ORDER, 'Which of the two frame bits runs first.'),
  at('router', 'stickingBitDiameter', 'Sticking bit diameter', SIZE, 'Largest diameter of the sticking bit.'),
  at('router', 'copingBitDiameter', 'Coping bit diameter', SIZE, 'Largest diameter of the coping bit.'),
  at('router', 'rabbetBitDiameter', 'Rabbet bit diameter', SIZE, 'Largest diameter of the rabbeting bit.'),
  at('router', 'speed', 'Router speed', NUMBER(1000, 30_000), 'Turns a minute.'),
  at('router', 'rimSpeedMax', 'Rim speed limit', NUMBER(1, 200), 'Metres a second that no bit may pass at its rim.'),
  at('router', 'sledWidth', 'Sled width', SIZE, 'Widest rail that the coping sled holds.'),
  at(
    'router',
    'shortPiece',
    'Short piece',
    SIZE,
    'Pieces shorter than this are machined as part of a longer blank, or in a carrier.',
  ),
  at(
    'router',
    'rabbetBy',
    'Rabbet by',
    RABBET_BY,
    'The panel rabbet is cut with a dado stack at the saw, or with a bit at the router table.',
  ),

  at(
    'panels',
    'allowance',
    'Panel allowance',
    LENGTH,
    'Left free on each edge of a plywood panel, and along the grain of a solid one.',
  ),
  at('panels', 'rabbetFit', 'Rabbet fit', LENGTH, 'Play of the panel’s tongue in the groove.'),
  at(
    'panels',
    'backClearance',
    'Back clearance',
    LENGTH,
    'Added to the rabbet’s width so that the field drops between the back lips of the frame.',
  ),
  at(
    'panels',
    'engagement',
    'Least engagement',
    LENGTH,
    'Least engagement on each edge of a solid panel at the driest.',
  ),
  at('panels', 'stripWidthMax', 'Widest strip', SIZE, 'Widest strip of a solid panel.'),
  at('panels', 'stripAllowance', 'Strip allowance', LENGTH, 'Added to each strip for jointing its two edges.'),
  at(
    'panels',
    'trimAllowance',
    'Panel trim',
    LENGTH,
    'Added to a glued-up panel on each dimension, to be trimmed square.',
  ),
  at('panels', 'glassClearance', 'Glass clearance', LENGTH, 'Left free on each edge of a pane of glass.'),
  at('panels', 'edgeEasing', 'Edge easing', LENGTH, 'Radius to which the edges of a door are eased.', [
    'Easing',
    'Roundover',
  ]),

  ...[2, 3, 4, 5, 6, 7, 8].map(hingesUpTo),
  at('hinges', 'fromEnd', 'Hinge from end', SIZE, 'Centre of an end hinge from the end of the door.'),
  at('hinges', 'cupDiameter', 'Cup diameter', SIZE, 'Diameter of the hinge cup.'),
  at('hinges', 'cupDepth', 'Cup depth', SIZE, 'Depth of the hinge cup.'),
  at('hinges', 'cupEdge', 'Cup to edge', SIZE, 'Edge of the cup to the edge of the door.'),
  at('hinges', 'leastUnderCup', 'Least under cup', LENGTH, 'Wood that must stay under the cup.'),
  at('hinges', 'leastToGroove', 'Least cup to groove', LENGTH, 'Wood that must stay between cup and groove.'),
  at(
    'hinges',
    'shiftMax',
    'Hinge shift limit',
    LENGTH,
    'How far a hinge may be moved to keep its plate off a rail joint.',
  ),
  at('hinges', 'plateReach', 'Hinge plate reach', LENGTH, 'Half the height of the hinge’s plate.'),

  at('pulls', 'fromEdge', 'Pull from edge', SIZE, 'Lower hole of a door’s pull from the edge away from the hinge.'),
  at('pulls', 'fromEnd', 'Pull from end', SIZE, 'Lower hole of a door’s pull from the end, along the stile.'),
  at('pulls', 'spacing', 'Pull spacing', LENGTH, 'Between the two holes of a pull; 0 for a knob.'),
  at('pulls', 'holeDiameter', 'Pull hole', SIZE, 'Diameter of a pull’s holes.'),

  at('climate', 'temperatureC', 'Temperature', TEMPERATURE, 'Of the house that the doors go to.'),
  at('climate', 'shopMoisture', 'Shop moisture', PERCENT, 'Moisture content of the wood when it is machined.'),
  at(
    'climate',
    'shopHumidity',
    'Shop humidity',
    IF_SET(PERCENT),
    'Relative humidity of the shop, where the wood has settled to it.',
  ),
  at('climate', 'driestHumidity', 'Driest humidity', PERCENT, 'Relative humidity of the house at its driest.'),
  at('climate', 'wettestHumidity', 'Wettest humidity', PERCENT, 'Relative humidity of the house at its wettest.'),

  at(
    'climate',
    'driestMoisture',
    'Driest moisture',
    IF_SET(PERCENT),
    'Moisture content of wood in the house at its driest, where it was measured.',
  ),
  at(
    'climate',
    'wettestMoisture',
    'Wettest moisture',
    IF_SET(PERCENT),
    'Moisture content of wood in the house at its wettest, where it was measured.',
  ),

  at('gluing', 'clamps', 'Clamps', COUNT(1, 1000), 'Clamps that the shop has.'),
  at('gluing', 'tallFrom', 'Clamps tall from', SIZE, 'Doors higher than this take two more clamps along the stiles.'),
  at('gluing', 'inClamps', 'Time in clamps', HOURS, 'Until the clamps come off.'),
  at('gluing', 'beforeMachining', 'Cure before machining', HOURS, 'From glue-up to machining.'),
  at(
    'gluing',
    'litresPerSquareMetre',
    'Glue spread',
    NUMBER(0.01, 2),
    'Litres of glue for each square metre of joint.',
  ),

  at('finishing', 'rackSlots', 'Rack slots', COUNT(1, 10_000), 'Wet doors that the drying rack holds.'),
  at('finishing', 'sprayPlaces', 'Spray places', COUNT(1, 1000), 'Doors that can be sprayed side by side.'),
  at('finishing', 'potVolume', 'Pot volume', VOLUME, 'What the cup or gun holds.'),
  at('finishing', 'potLife', 'Pot life', HOURS, 'How long a mix stays workable.'),
  at(
    'finishing',
    'sprayTransfer',
    'Spray transfer',
    SHARE(100),
    'Share of what leaves the gun that stays on the door.',
  ),
  at('finishing', 'containers', 'Containers', VOLUMES, 'Containers that finish is sold in.'),

  at('buying', 'gluePrice', 'Glue price', IF_SET(PRICE_BY_VOLUME), 'What glue costs.'),
  at('buying', 'glueContainers', 'Glue bottles', VOLUMES, 'Bottles that glue is sold in.'),
  at('buying', 'discArea', 'Disc good for', AREA, 'What one sanding disc is good for.'),
  at('buying', 'discPack', 'Discs in a pack', COUNT(1, 10_000), 'How many sanding discs come in a pack.'),
  at('buying', 'discPrice', 'Disc price', IF_SET(MONEY), 'What a pack of sanding discs costs.'),
  at('buying', 'glassPrice', 'Glass price', IF_SET(PRICE_BY_AREA), 'What glass costs, cut to size.'),

  at('work', 'people', 'People', COUNT(1, 50), 'Who work on the job.'),
  at('work', 'hoursPerDay', 'Hours a day', NUMBER(0.5, 24), 'Hours of work in a day.', ['Hours per day', 'Hours']),
  at('work', 'startsAt', 'Work starts at', TIME, 'When the day begins.'),
  at('work', 'weekdays', 'Weekdays', WEEKDAYS, 'Days on which the shop works.', ['Work days', 'Days']),
  at('work', 'daysOff', 'Days off', orNone(DATES), 'Dates on which nobody works.', ['Holidays']),
  at('work', 'startDate', 'Start date', IF_SET(DATE), 'First day of work on the job.', ['Start']),
  at('work', 'helperAlone', 'Helper alone', orNone(OPERATIONS), 'Operations that a helper may do alone.'),
  at('work', 'rate', 'Rate', MONEY, 'What an hour of work costs.', ['Hourly rate', 'Labour rate', 'Labor rate']),
  at('work', 'margin', 'Margin', SHARE(1000), 'Added to the cost of the job.'),

  ...PLANNING_SETTINGS,

  labelPreset(),
  at('labels', 'page', 'Label page', LABEL_PAGE, 'What the tags are printed on: a sheet of labels, or single labels.'),
  at('labels', 'rows', 'Label rows', COUNT(1, 50), 'Labels down the sheet.'),
  at('labels', 'columns', 'Label columns', COUNT(1, 20), 'Labels across the sheet.'),
  at('labels', 'width', 'Label width', SIZE, 'Width of one label.'),
  at('labels', 'height', 'Label height', SIZE, 'Height of one label.'),
  at('labels', 'left', 'Label left', LENGTH, 'From the left edge of the sheet to the first label.'),
  at('labels', 'top', 'Label top', LENGTH, 'From the top edge of the sheet to the first label.'),
  at('labels', 'pitchAcross', 'Label pitch across', SIZE, 'From the left edge of one label to that of the next.'),
  at('labels', 'pitchDown', 'Label pitch down', SIZE, 'From the top edge of one label to that of the next.'),
  at(
    'labels',
    'startAt',
    'Label start',
    COUNT(1, 1000),
    'First label still on a partly used sheet, counted along the rows.',
    ['Start label'],
  ),
];

/** One more for each operation; their defaults are the planner's own. */
export const MINUTES_SETTINGS: readonly Setting[] = OPERATION_IDS.map(minutesOf);
