import type { Door, DoorSet, Part, Rectangle } from '../../src/calculate/door-set.ts';
import type { FrameStyle, Job, Opening, Style } from '../../src/import/job.ts';
import { judgeWorking } from './judge-working.ts';

/**
 * Says what is wrong with the doors of a job, from the bench's point of view: do the parts, put together, give the door;
 * does the door close its opening; does every number follow from its working. Shares no code with the calculation.
 */
export function judgeDoors(job: Job, doorSet: DoorSet): readonly string[] {
  const parts = new Map<string, Part[]>();
  for (const part of doorSet.parts) parts.set(part.door, [...(parts.get(part.door) ?? []), part]);
  return [
    ...doorSet.doors.flatMap(door => {
      const opening = job.openings.find(each => each.cabinet === door.cabinet);
      const style = job.styles.find(each => each.name === door.style);
      if (opening === undefined || style === undefined) return [`${door.code} is of no opening`];
      return judgeDoor(door, parts.get(door.code) ?? [], opening, style, job).map(wrong => `${door.code}: ${wrong}`);
    }),
    ...twice([...doorSet.doors, ...doorSet.parts].map(({ code }) => code)),
    ...twice([...doorSet.doors, ...doorSet.parts].map(({ barcode }) => barcode)),
  ];
}

const twice = (codes: readonly string[]): readonly string[] =>
  new Set(codes).size === codes.length ? [] : ['two things share a code or a symbol'];

const judgeDoor = (door: Door, parts: readonly Part[], opening: Opening, style: Style, job: Job): readonly string[] => [
  ...closesOpening(door, opening, job),
  ...workingsHold(door, parts),
  ...weighsWhatItsPartsWeigh(door, parts),
  ...diagonalIsNearest(door),
  ...hingesAreInOrder(door, opening, job),
  ...pullIsWhereAsked(door, opening, job),
  ...(style.build === 'frame' ? frameGoesTogether(door, parts, style, job) : slabIsTheDoor(door, parts)),
];

const unless = (holds: boolean, wrong: string): readonly string[] => (holds ? [] : [wrong]);

function closesOpening(door: Door, { mounting, hanging, width, height }: Opening, job: Job): readonly string[] {
  const { increment } = job.shop.doors;
  const leaves = hanging.kind === 'pair' ? 2 : 1;
  const sign = mounting.kind === 'overlay' ? -1 : 1;
  const asked = mounting.kind === 'overlay' ? mounting.overlay : mounting.clearance;
  const { left, right, top, bottom, between = 0 } = door.gaps;
  const across = leaves * door.width.value + sign * (left + right) + between;
  const up = door.height.value + sign * (top + bottom);
  const latch = hanging.kind === 'single' && hanging.hingeSide === 'right' ? 'left' : 'right';
  const took = hanging.kind === 'pair' ? between - hanging.gap : sign * (door.gaps[latch] - asked[latch]);
  const kept = (['left', 'right', 'top'] as const).filter(side => hanging.kind === 'pair' || side !== latch);
  return [
    ...unless(across === width, 'leaves and gaps do not close the opening across'),
    ...unless(up === height, 'leaf and gaps do not close the opening up'),
    ...unless(door.width.value % increment === 0 && door.height.value % increment === 0, 'sizes are off the increment'),
    ...unless(took >= 0 && took < leaves * increment, `rounding took ${took} across`),
    ...unless(
      sign * (bottom - asked.bottom) >= 0 && sign * (bottom - asked.bottom) < increment,
      'rounding took too much at the bottom',
    ),
    ...unless(
      kept.every(side => door.gaps[side] === asked[side]),
      'a gap was changed that should not be',
    ),
    ...unless((door.gaps.between !== undefined) === (hanging.kind === 'pair'), 'only a pair has a gap between'),
  ];
}

const workingsHold = (door: Door, parts: readonly Part[]): readonly string[] =>
  [
    door.width,
    door.height,
    ...door.workings,
    ...parts.flatMap(({ length, width, shoulder, workings }) => [
      length,
      width,
      ...(shoulder === undefined ? [] : [shoulder]),
      ...workings,
    ]),
  ].flatMap(judgeWorking);

function weighsWhatItsPartsWeigh(door: Door, parts: readonly Part[]): readonly string[] {
  const total = parts.reduce((sum, part) => sum + part.mass, 0);
  return [
    ...unless(Math.abs(total - door.mass) < 1e-9, `weighs ${door.mass}, its parts ${total}`),
    ...unless(
      parts.every(part => part.mass > 0),
      'a part weighs nothing',
    ),
  ];
}

/** (2d − 1)² ≤ 4 (W² + H²) ≤ (2d + 1)². */
function diagonalIsNearest(door: Door): readonly string[] {
  const [width, height, length] = [door.width.value, door.height.value, door.diagonal.length].map(BigInt) as [
    bigint,
    bigint,
    bigint,
  ];
  const squares = 4n * (width * width + height * height);
  const [below, above] = [2n * length - 1n, 2n * length + 1n];
  return unless(below * below <= squares && squares <= above * above, 'the diagonal is not to the nanometre');
}

function hingesAreInOrder(door: Door, { hanging }: Opening, job: Job): readonly string[] {
  const { hinges } = door;
  if (hanging.kind === 'fixed') return unless(hinges.length === 0, 'hangs on something');
  const places = hinges.map(hinge => hinge.fromTop);
  const wished = hinges.map(hinge => hinge.fromTop - hinge.shifted);
  const steps = wished.slice(1).map((place, at) => place - (wished[at] ?? 0));
  const { increment } = job.shop.doors;
  return [
    ...unless(hinges.length >= 2, 'hangs on fewer than two hinges'),
    ...unless(
      places.every((place, at) => place > (places[at - 1] ?? 0) && place < door.height.value),
      'hinges are out of order or off the door',
    ),
    ...unless(
      (wished[0] ?? 0) + (wished.at(-1) ?? 0) === door.height.value,
      'end hinges are not as far from their ends',
    ),
    ...unless(Math.max(...steps) - Math.min(...steps) <= 2 * increment, 'hinges are not spaced equally'),
    ...unless((wished[0] ?? 0) <= job.shop.hinges.fromEnd, 'the top hinge is too far from the top'),
    ...unless(4 * (wished[0] ?? 0) <= door.height.value, 'the door hangs on less than half its height'),
    ...unless(
      hinges.every(hinge => Math.abs(hinge.shifted) <= job.shop.hinges.shiftMax),
      'a hinge was moved too far',
    ),
  ];
}

function pullIsWhereAsked(door: Door, { pull, kind }: Opening, job: Job): readonly string[] {
  const { holes = [] } = door.pull ?? {};
  const wanted =
    pull === 'none' || (pull === undefined && (door.hingeSide !== undefined || kind !== 'drawer-front')) ? 0 : 2;
  const [first, second] = holes;
  if (first === undefined || second === undefined) return unless(wanted === 0, 'a pull is missing');
  const apart = Math.abs(first.fromLeft - second.fromLeft) + Math.abs(first.fromBottom - second.fromBottom);
  const away = door.hingeSide === 'left' ? door.width.value - first.fromLeft : first.fromLeft;
  return [
    ...unless(wanted === 2, 'a pull that nobody asked for'),
    ...unless(apart === job.shop.pulls.spacing, 'the holes of a pull are not its spacing apart'),
    ...unless(door.hingeSide === undefined || away === job.shop.pulls.fromEdge, 'the pull is at the hinges'),
    ...unless(
      pull !== 'top' || door.hingeSide === undefined || first.fromBottom === door.height.value - job.shop.pulls.fromEnd,
      'the pull is not at the top',
    ),
    ...unless(
      pull !== 'bottom' || door.hingeSide === undefined || first.fromBottom === job.shop.pulls.fromEnd,
      'the pull is not at the bottom',
    ),
  ];
}

function slabIsTheDoor(door: Door, parts: readonly Part[]): readonly string[] {
  const [slab, ...more] = parts;
  return unless(
    more.length === 0 && slab?.length.value === door.height.value && slab.width.value === door.width.value,
    'the slab is not the door',
  );
}

const frameGoesTogether = (door: Door, parts: readonly Part[], style: FrameStyle, job: Job): readonly string[] => [
  ...tilesTheDoor(door, parts),
  ...membersFit(door, parts, style),
  ...infillFits(door, parts, style, job),
  ...sharedAlike(door, job),
];

const FRAME = new Set<Part['role']>([
  'stile-left',
  'stile-right',
  'stile-middle',
  'rail-top',
  'rail-middle',
  'rail-bottom',
]);

/** What is seen of the members and of the infill covers the door once. */
function tilesTheDoor(door: Door, parts: readonly Part[]): readonly string[] {
  const seen: readonly Rectangle[] = [
    ...parts.filter(part => FRAME.has(part.role)).map(part => part.place),
    ...door.sights,
  ];
  const covered = seen.reduce((sum, { width, height }) => sum + BigInt(width) * BigInt(height), 0n);
  const inside = seen.every(
    ({ left, bottom, width, height }) =>
      left >= 0 && bottom >= 0 && left + width <= door.width.value && bottom + height <= door.height.value,
  );
  const apart = seen.every((one, at) => seen.slice(at + 1).every(other => !overlap(one, other)));
  return [
    ...unless(inside, 'a part is seen outside of the door'),
    ...unless(apart, 'two parts are seen in one place'),
    ...unless(covered === BigInt(door.width.value) * BigInt(door.height.value), 'there is a hole in the door'),
  ];
}

const overlap = (one: Rectangle, other: Rectangle): boolean =>
  one.left < other.left + other.width &&
  other.left < one.left + one.width &&
  one.bottom < other.bottom + other.height &&
  other.bottom < one.bottom + one.height;

/** Tongues reach into the grooves by their length and not more; stiles run through. */
const membersFit = (door: Door, parts: readonly Part[], style: FrameStyle): readonly string[] =>
  parts
    .filter(part => FRAME.has(part.role))
    .flatMap(({ role, length, width, shoulder, place, thickness }) => {
      const upright = role.startsWith('stile');
      const [along, across] = upright ? [place.height, place.width] : [place.width, place.height];
      const longer = role === 'stile-left' || role === 'stile-right' ? style.horn : style.tongueLength;
      return [
        ...unless(width.value === across, `${role} is not as wide as it is seen`),
        ...unless(length.value === along + 2 * longer, `${role} does not reach`),
        ...unless(shoulder === undefined || shoulder.value === along, `${role} has its shoulders wrong`),
        ...unless(
          (shoulder === undefined) === (longer === style.horn && upright && role !== 'stile-middle'),
          `${role}: shoulders`,
        ),
        ...unless(thickness === door.thickness, `${role} is not as thick as the door`),
      ];
    });

/** Panels and panes lie in their grooves, with play on every edge and never more than the groove is deep. */
function infillFits(door: Door, parts: readonly Part[], style: FrameStyle, job: Job): readonly string[] {
  return door.sights.flatMap(sight => {
    const part = parts.find(each => each.code === sight.infill);
    if (part === undefined) return ['a sight is filled with nothing'];
    const { panels, doors } = job.shop;
    const grid = job.openings.find(each => each.cabinet === door.cabinet)?.grid;
    const play = 2 * style.grooveDepth - 2 * (style.infill.kind === 'glass' ? panels.glassClearance : panels.allowance);
    // Where sizes are shared, all are cut for the smallest.
    const [up, across] = [grid?.panelsHigh !== 1 && grid?.middleRailHeights.length === 0, grid?.panelsWide !== 1];
    const high = play - (part.length.value - sight.height);
    const wide = play - (part.width.value - sight.width);
    return [
      ...unless(high >= 0 && high <= (up ? doors.increment : 0), `infill is ${high} lower than its grooves take`),
      ...unless(wide >= 0, 'infill is wider than its grooves take'),
      ...unless(
        style.infill.kind === 'solid' || wide <= (across ? doors.increment : 0),
        `infill is ${wide} narrower than its grooves take`,
      ),
      ...(part.make.kind === 'solid-panel' ? panelMoves(part, sight, style, job) : []),
      ...rabbetFits(part, style, job),
    ];
  });
}

function panelMoves({ make, width, length }: Part, sight: Rectangle, style: FrameStyle, job: Job): readonly string[] {
  if (make.kind !== 'solid-panel') return [];
  const { movement, glueUp } = make;
  const { increment } = job.shop.doors;
  const { stripAllowance, stripWidthMax } = job.shop.panels;
  const grooves = sight.width + 2 * style.grooveDepth;
  const jointed = glueUp.stripWidth - stripAllowance;
  return [
    ...unless(width.value + movement.swells <= grooves, 'the panel bottoms in the wettest weeks'),
    ...unless(movement.clearance >= 0, 'the panel has less than no clearance'),
    ...unless(
      Math.abs(width.value - movement.shrinks - sight.width - 2 * movement.engagement) <= increment + 1,
      'engagement is wrong',
    ),
    ...unless(width.value % increment === 0, 'the panel is off the increment'),
    ...unless(glueUp.strips * jointed >= glueUp.blankWidth, 'the strips do not make the blank'),
    ...unless(jointed <= stripWidthMax + increment, 'a strip is too wide'),
    ...unless(glueUp.strips === 1 || (glueUp.strips - 1) * stripWidthMax < glueUp.blankWidth, 'a strip too many'),
    ...unless(
      glueUp.blankWidth - width.value === job.shop.panels.trimAllowance &&
        glueUp.blankLength - length.value === job.shop.panels.trimAllowance,
      'the blank has no trim',
    ),
  ];
}

function rabbetFits({ make, thickness }: Part, style: FrameStyle, job: Job): readonly string[] {
  if (make.kind !== 'plywood-panel' && make.kind !== 'solid-panel') return [];
  const { rabbet } = make;
  if (rabbet === undefined) return unless(thickness <= style.grooveWidth, 'a thick panel has no rabbet');
  return [
    ...unless(thickness > style.grooveWidth, 'a thin panel has a rabbet'),
    ...unless(rabbet.depth + rabbet.tongue === thickness, 'rabbet and tongue are not the panel'),
    ...unless(style.grooveWidth - rabbet.tongue === job.shop.panels.rabbetFit, 'the tongue has not its play'),
    ...unless(rabbet.width > style.grooveDepth - job.shop.panels.allowance, 'the field does not drop between the lips'),
  ];
}

/** Rows and columns that share are alike to one increment. */
function sharedAlike(door: Door, job: Job): readonly string[] {
  const opening = job.openings.find(each => each.cabinet === door.cabinet);
  const spread = (sizes: readonly number[]): number => Math.max(...sizes) - Math.min(...sizes);
  const { increment } = job.shop.doors;
  return [
    ...unless(spread(door.sights.map(sight => sight.width)) <= increment, 'columns differ by more than the increment'),
    ...unless(
      opening?.grid.middleRailHeights.length !== 0 || spread(door.sights.map(sight => sight.height)) <= increment,
      'rows differ by more than the increment',
    ),
    ...(opening?.grid.middleRailHeights ?? []).flatMap((centre, at) => {
      const above = door.sights.find(sight => sight.row === at + 2)?.bottom ?? 0;
      const below = door.sights.find(sight => sight.row === at + 1);
      const twice = above + (below?.bottom ?? 0) + (below?.height ?? 0);
      return unless(Math.abs(twice - 2 * centre) <= 1, `middle rail ${at + 1} is not centred where it was asked for`);
    }),
  ];
}
