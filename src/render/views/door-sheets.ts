import type { Door, Part } from '../../calculate/door-set.ts';
import type { Draft, View } from '../draft.ts';
import { boringMap } from '../drawings/boring-map.ts';
import { doorElevation } from '../drawings/door-elevation.ts';
import { jointSection } from '../drawings/joint-section.ts';
import { type Figure, wordsIn } from '../figure.ts';
import { grouped, inCabinetOrder, type Some } from '../order.ts';
import { shareWorkings, workings } from './door-workings.ts';

/** doors.hbs: a sheet for all doors that are made alike, but for the side they hang on. */
export type DoorSheetsView = { readonly styles: readonly StyleSheet[] };
/** What all doors of a style share is said once, before them. */
export type StyleSheet = {
  readonly title: string;
  /** Names of drawings: a section for each joint, where the style has panels that differ. */
  readonly sections: readonly string[];
  readonly workings: readonly string[];
  /** Whose numbers stand with each door. */
  readonly formulas: readonly string[];
  readonly sheets: readonly DoorSheet[];
};
export type DoorSheet = {
  /** Whether sizes are in two units, and need lines of their own. */
  readonly isWide: boolean;
  readonly bookmark: string;
  readonly title: string;
  /** What it is where it is no door. */
  readonly front: string;
  readonly doors: readonly { readonly code: string; readonly hung: string }[];
  /** Names of drawings; empty where there is nothing to draw. */
  readonly elevation: string;
  readonly elevationWidth: number;
  readonly boring: string;
  readonly boringWidth: number;
  readonly parts: readonly DoorSheetPart[];
  /** Sentences: diagonals, clamps, weight, cups, pull, panels that stay loose. */
  readonly facts: readonly string[];
  /** Workings beside the drawings, or, where these are lower than that, below them. */
  readonly beside: readonly string[];
  readonly below: readonly string[];
};
export type DoorSheetPart = {
  readonly marks: string;
  readonly role: string;
  readonly count: number;
  readonly length: string;
  readonly width: string;
  readonly thick: string;
  readonly stock: string;
};

export function doorSheets(draft: Draft): View<DoorSheetsView> {
  const figures = new Map<string, Figure>();
  const styles = [...grouped([...madeAlike(draft).values()], ([door]) => door.style)];
  return { data: { styles: styles.map(([style, groups]) => styleSheet(style, groups, draft, figures)) }, figures };
}

function styleSheet(style: string, groups: Some<Some<Door>>, draft: Draft, figures: Map<string, Figure>): StyleSheet {
  const drawn = groups.flatMap(([door]) => {
    const figure = section(door, draft);
    return figure === undefined ? [] : [{ name: `section-${door.code}`, figure }];
  });
  const sections = [...grouped(drawn, ({ figure }) => wordsIn(figure)).values()].map(([{ name, figure }]) => {
    figures.set(name, figure);
    return name;
  });
  const { shared, formulas, own } = shareWorkings(
    groups.map(([door]) => ({
      facts: cups(door, draft),
      workings: workings(door, { ...draft, size: draft.sizeInOne }),
    })),
  );
  return {
    title: draft.say('doors.style', { style }),
    sections,
    workings: shared,
    formulas,
    sheets: groups.map((doors, index) => doorSheet(doors, own[index] ?? [], draft, figures)),
  };
}

/** The bookmark of the sheet that a door is on. */
export const doorSheetOf = (door: Door, draft: Draft): string =>
  `door-${madeAlike(draft).get(likeness(door, draft))?.[0]?.code ?? door.code}`;

/** Doors under what makes them one job at the bench, in cabinet order. Worked out once for a draft. */
function madeAlike(draft: Draft): ReadonlyMap<string, Some<Door>> {
  const known = ALIKE.get(draft.doorSet);
  if (known !== undefined) return known;
  const ordered = [...draft.doorSet.doors].sort((a, b) => inCabinetOrder(a.code, b.code));
  const groups = grouped(ordered, door => likeness(door, draft));
  ALIKE.set(draft.doorSet, groups);
  return groups;
}

const ALIKE = new WeakMap<Draft['doorSet'], ReadonlyMap<string, Some<Door>>>();

function likeness(door: Door, draft: Draft): string {
  const parts = draft
    .partsOf(door)
    .map(part => [part.role, part.length.value, part.width.value, part.thickness, part.stock]);
  const hinges = door.hinges.map(hinge => [hinge.fromTop, hinge.fromEdge]);
  return JSON.stringify([
    door.style,
    door.front,
    door.width.value,
    door.height.value,
    parts,
    hinges,
    door.pull?.end,
    door.note,
  ]);
}

function doorSheet(doors: Some<Door>, own: readonly string[], draft: Draft, figures: Map<string, Figure>): DoorSheet {
  const [door] = doors;
  const parts = draft.partsOf(door);
  const room = roomFor(door);
  const elevation = doorElevation(door, parts, draft.pen, {
    width: handsOf(doors) === 2 ? ELEVATION_WIDTH.two : ELEVATION_WIDTH.one,
    height: room,
  });
  const boring = borings(doors, draft, room);
  figures.set(`elevation-${door.code}`, elevation);
  if (boring !== undefined) figures.set(`boring-${door.code}`, boring);
  return {
    isWide: draft.hasTwoUnits,
    bookmark: `door-${door.code}`,
    title: draft.say('doors.size', { width: draft.size(door.width.value), height: draft.size(door.height.value) }),
    front: door.front === 'door' ? '' : draft.say(`front.${door.front}`),
    doors: doors.map(each => ({ code: each.code, hung: draft.say(`doors.hung-${each.hingeSide ?? 'none'}`) })),
    elevation: `elevation-${door.code}`,
    elevationWidth: Math.ceil(elevation.width),
    boringWidth: Math.ceil(boring?.width ?? 0),
    boring: boring === undefined ? '' : `boring-${door.code}`,
    parts: partRows(parts, door, draft),
    facts: facts(door, parts, draft),
    ...(own.length * LINE > room ? { beside: [], below: own } : { beside: own, below: [] }),
  };
}

/** On how many sides the doors hang. */
const handsOf = (doors: readonly Door[]): number => new Set(doors.flatMap(door => door.hingeSide ?? [])).size;

/** A tall door is drawn taller, or its dimensions run together. */
const roomFor = (door: Door): number =>
  Math.min(ROOM.most, Math.max(ROOM.least, ROOM.least + ((door.height.value - ROOM.from) / ROOM.inch) * ROOM.perInch));

function section(door: Door, draft: Draft): Figure | undefined {
  if (door.joint === undefined) return undefined;
  const words = {
    face: draft.say('doors.show-face'),
    back: draft.say('doors.back-face'),
    stile: draft.say('doors.stile'),
    infill: draft.say(door.joint.infillKind === 'glass' ? 'doors.glass' : 'doors.panel'),
  };
  return jointSection(door.joint, words, draft.pen, SECTION_WIDTH);
}

/** The hands that are among the doors, beside each other as they lie on the bench. */
function borings(doors: readonly Door[], draft: Draft, height: number): Figure | undefined {
  const hands = (['left', 'right'] as const).flatMap(hand => {
    const door = doors.find(each => each.hingeSide === hand);
    return door === undefined ? [] : [{ door, title: draft.say(`doors.back-${hand}`) }];
  });
  return boringMap(hands, draft.pen, { width: hands.length === 2 ? BORING_WIDTH.two : BORING_WIDTH.one, height });
}

/** Parts of one size and kind share a line. */
const partRows = (parts: readonly Part[], door: Door, draft: Draft): readonly DoorSheetPart[] =>
  [
    ...grouped(parts, part =>
      JSON.stringify([kindOf(part), part.length.value, part.width.value, part.thickness, part.stock]),
    ).values(),
  ].map(alike => {
    const [part] = alike;
    return {
      marks: alike.map(each => each.code.slice(door.code.length + 1)).join(' '),
      role: draft.say(`role.${part.role}`),
      count: alike.length,
      length: draft.size(part.length.value),
      width: draft.size(part.width.value),
      thick: draft.size(part.thickness),
      stock: part.stock ?? '',
    };
  });

/** A left and a right stile are cut alike. */
const kindOf = (part: Part): string => part.role.replace(/-(left|right|top|bottom)$/, '');

function facts(door: Door, parts: readonly Part[], draft: Draft): readonly string[] {
  const batch = draft.plan.batches.find(each => each.doors.includes(door.code));
  const { say, size, quantities } = draft;
  const short = [
    say('doors.diagonal', { diagonal: size(door.diagonal.length), tolerance: size(door.diagonal.tolerance) }),
    quantities.mass(door.mass),
    ...(batch === undefined ? [] : [say('doors.clamps', { clamps: clampsFor(door, draft), batch: batch.number })]),
    ...(door.hinges.length === 0 ? [] : [say('doors.cups', { count: door.hinges.length })]),
  ];
  return [
    short.join(' · '),
    ...(door.pull === undefined ? [] : [pull(door.pull, draft)]),
    ...(parts.some(part => part.make.kind === 'solid-panel') ? [say('doors.loose')] : []),
    ...(door.note === '' ? [] : [door.note]),
  ];
}

/** How the cups of a door are bored; most doors of a style say it alike. */
const cups = ({ hinges: [hinge] }: Door, { say, exact }: Draft): readonly string[] =>
  hinge === undefined
    ? []
    : [
        say('doors.hinges', {
          diameter: exact(hinge.cupDiameter),
          depth: exact(hinge.cupDepth),
          edge: exact(hinge.fromEdge),
        }),
      ];

/** One across each rail line, and two along the stiles of a tall door, as the batches are planned. */
export const clampsFor = (door: Door, { job }: Draft): number =>
  1 + Math.max(1, ...door.sights.map(sight => sight.row)) + (door.height.value > job.shop.gluing.tallFrom ? 2 : 0);

const pull = (pulls: NonNullable<Door['pull']>, draft: Draft): string =>
  draft.say('doors.pull', {
    diameter: draft.exact(pulls.diameter),
    holes: pulls.holes
      .map(hole => draft.say('doors.hole', { left: draft.size(hole.fromLeft), bottom: draft.size(hole.fromBottom) }))
      .join('; '),
  });

/** Of the drawings of doors that hang on one side, and of pairs. */
const ELEVATION_WIDTH = { one: 140, two: 118 };
const BORING_WIDTH = { one: 112, two: 132 };
/** Height of the drawings, in points: what a door of `from` takes, and more for each inch above. */
const ROOM = { least: 138, from: 36 * 25_400_000, perInch: 2, inch: 25_400_000, most: 250 };
const SECTION_WIDTH = 250;
/** What a line of workings takes, and some of them take two. */
const LINE = 13;
