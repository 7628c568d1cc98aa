import type { Door, Part } from '../../calculate/door-set.ts';
import type { Draft, View } from '../draft.ts';
import { boringMap } from '../drawings/boring-map.ts';
import { doorElevation } from '../drawings/door-elevation.ts';
import { jointSection } from '../drawings/joint-section.ts';
import type { Figure } from '../figure.ts';
import { grouped, inCabinetOrder, type Some } from '../order.ts';
import { printWorking } from '../working.ts';

/** doors.hbs: a sheet for all doors that are made alike, but for the side they hang on. */
export type DoorSheetsView = { readonly sheets: readonly DoorSheet[] };
export type DoorSheet = {
  readonly bookmark: string;
  readonly title: string;
  readonly style: string;
  readonly front: string;
  readonly doors: readonly { readonly code: string; readonly hung: string }[];
  /** Names of drawings; empty where there is nothing to draw. */
  readonly elevation: string;
  readonly section: string;
  readonly borings: readonly { readonly title: string; readonly figure: string }[];
  readonly parts: readonly DoorSheetPart[];
  /** Sentences: diagonals, clamps, weight, cups, pull, panels that stay loose. */
  readonly facts: readonly string[];
  readonly workings: readonly string[];
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
  const sheets = [...madeAlike(draft).values()].map(doors => doorSheet(doors, draft, figures));
  return { data: { sheets }, figures };
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

function doorSheet(doors: Some<Door>, draft: Draft, figures: Map<string, Figure>): DoorSheet {
  const [door] = doors;
  const place = (name: string, figure: Figure | undefined): string => {
    if (figure === undefined) return '';
    figures.set(`${name}-${door.code}`, figure);
    return `${name}-${door.code}`;
  };
  const parts = draft.partsOf(door);
  return {
    bookmark: `door-${door.code}`,
    title: draft.say('doors.size', { width: draft.size(door.width.value), height: draft.size(door.height.value) }),
    style: door.style,
    front: draft.say(`front.${door.front}`),
    doors: doors.map(each => ({ code: each.code, hung: draft.say(`doors.hung-${each.hingeSide ?? 'none'}`) })),
    elevation: place('elevation', doorElevation(door, parts, draft.pen, ELEVATION)),
    section: place('section', section(door, draft)),
    borings: borings(doors, draft).map(({ title, figure, hand }) => ({
      title,
      figure: place(`boring-${hand}`, figure),
    })),
    parts: partRows(parts, door, draft),
    facts: facts(door, parts, draft),
    workings: workings(door, parts, draft),
  };
}

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

/** One map for each hand among the doors. */
function borings(doors: readonly Door[], draft: Draft) {
  return (['left', 'right'] as const).flatMap(hand => {
    const door = doors.find(each => each.hingeSide === hand);
    const figure = door === undefined ? undefined : boringMap(door, draft.say('doors.top'), draft.pen, BORING);
    return figure === undefined ? [] : [{ hand, title: draft.say(`doors.hung-${hand}`), figure }];
  });
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
  const [hinge] = door.hinges;
  return [
    draft.say('doors.diagonal', {
      diagonal: draft.size(door.diagonal.length),
      tolerance: draft.size(door.diagonal.tolerance),
    }),
    draft.say('doors.mass', { mass: draft.quantities.mass(door.mass) }),
    ...(batch === undefined
      ? []
      : [draft.say('doors.clamps', { clamps: clampsFor(door, draft), batch: batch.number })]),
    ...(hinge === undefined
      ? []
      : [
          draft.say('doors.hinges', {
            count: door.hinges.length,
            diameter: draft.size(hinge.cupDiameter),
            depth: draft.size(hinge.cupDepth),
            edge: draft.size(hinge.fromEdge),
          }),
        ]),
    ...(door.pull === undefined ? [] : [pull(door.pull, draft)]),
    ...(parts.some(part => part.make.kind === 'solid-panel') ? [draft.say('doors.loose')] : []),
    ...(door.note === '' ? [] : [door.note]),
  ];
}

/** One across each rail line, and two along the stiles of a tall door, as the batches are planned. */
export const clampsFor = (door: Door, { job }: Draft): number =>
  1 + Math.max(1, ...door.sights.map(sight => sight.row)) + (door.height.value > job.shop.gluing.tallFrom ? 2 : 0);

const pull = (pulls: NonNullable<Door['pull']>, draft: Draft): string =>
  draft.say('doors.pull', {
    diameter: draft.size(pulls.diameter),
    holes: pulls.holes
      .map(hole => draft.say('doors.hole', { left: draft.size(hole.fromLeft), bottom: draft.size(hole.fromBottom) }))
      .join('; '),
  });

/** The door's numbers, then those of its parts; what two parts share is said once. */
const workings = (door: Door, parts: readonly Part[], draft: Draft): readonly string[] => [
  ...new Set(
    [
      door.width,
      door.height,
      ...door.workings,
      ...parts.flatMap(part => [
        part.length,
        part.width,
        ...(part.shoulder === undefined ? [] : [part.shoulder]),
        ...part.workings,
      ]),
    ].map(working => printWorking(working, draft)),
  ),
];

const ELEVATION = { width: 205, height: 250 };
const BORING = { width: 135, height: 200 };
const SECTION_WIDTH = 250;
