import type { Door, Part, Role } from '../../calculate/door-set.ts';
import { barcodesOf } from '../../codes/barcode.ts';
import type { OperationId } from '../../layout/shop-plan.ts';
import type { LabelSheet } from '../../trade/shop.ts';
import type { Length } from '../../units/length.ts';
import type { Draft, View } from '../draft.ts';
import { inCabinetOrder } from '../order.ts';

/** tags.hbs: a label for each part, each door and each offcut that is kept. */
export type TagsView = {
  readonly grid: LabelGrid;
  /** Width of a bar code's module, and height of its bars, as the markup takes them. */
  readonly module: string;
  readonly bars: string;
  readonly tags: readonly Tag[];
};
/** Where the labels are, in points, as the markup takes them. */
export type LabelGrid = {
  readonly paper: string;
  /** Of the printer, to the inch: single labels go through a thermal one. */
  readonly dots: number;
  readonly across: number;
  readonly down: number;
  readonly width: string;
  readonly height: string;
  readonly left: string;
  readonly top: string;
  readonly pitchAcross: string;
  readonly pitchDown: string;
  readonly start: number;
};
export type Tag = {
  readonly code: string;
  readonly barcode: string;
  /** What it is (role, door, offcut), and of which cabinet and room, or of which stock. */
  readonly what: string;
  /** Its finished size beside its code, where both have room on one line; else it stands before `what`. */
  readonly size: string;
  /** How the tag sits on the piece, on its back face and which way up; and what is done to the piece next. */
  readonly lies: string;
};

/** `codes`: only the tags of these, where some are printed again. */
export function tags(draft: Draft, codes: ReadonlySet<string> | undefined): View<TagsView> | undefined {
  const all = [...partTags(draft), ...doorTags(draft), ...offcutTags(draft)];
  const { labels } = draft.job.shop;
  const wanted = all
    .filter(tag => codes === undefined || codes.has(tag.code))
    .map(tag => withSizeInItsPlace(tag, labels, draft));
  if (wanted.length === 0) return undefined;
  return {
    figures: new Map(),
    data: { grid: grid(labels), module: `${moduleFor(labels)}`, bars: points(barHeight(labels)), tags: wanted },
  };
}

function withSizeInItsPlace(tag: Tag, labels: LabelSheet, { pen }: Draft): Tag {
  const needed = pen.measure(tag.code, LARGE, true) + pen.measure(tag.size, LARGE, true) + APART;
  if (needed <= Number(points(labels.width)) - 2 * Number(points(PAD))) return tag;
  return { ...tag, size: '', what: joined(tag.size, tag.what) };
}

/** Parts that are cut from one board or sheet have their tags together, in the order in which they lie on it. */
function partTags(draft: Draft): readonly Tag[] {
  const cut = draft.plan.cutPlans
    .flatMap(plan => plan.bins.flatMap(bin => bin.pieces))
    .flatMap(piece => draft.blanks.get(piece.blank)?.parts ?? []);
  const order = [...new Set([...cut, ...draft.doorSet.parts.map(part => part.code)])];
  return order.flatMap(code => {
    const part = draft.parts.get(code);
    return part === undefined ? [] : [partTag(part, draft)];
  });
}

function partTag(part: Part, draft: Draft): Tag {
  const route = draft.plan.routes[part.code] ?? [];
  const next = route.filter(operation => SHOWN.has(operation)).slice(0, 3);
  return {
    code: part.code,
    barcode: part.barcode,
    what: joined(draft.say(`role.${part.role}`), draft.doors.get(part.door)?.cabinet, draft.doors.get(part.door)?.room),
    size: `${draft.size(part.length.value)} × ${draft.size(part.width.value)}`,
    lies: joined(draft.say(LIES[part.role]), next.map(operation => draft.say(`step.${operation}`)).join(' → ')),
  };
}

const joined = (...said: readonly (string | undefined)[]): string => said.filter(Boolean).join(' · ');

const doorTags = (draft: Draft): readonly Tag[] =>
  [...draft.doorSet.doors].sort((a, b) => inCabinetOrder(a.code, b.code)).map(door => doorTag(door, draft));

const doorTag = (door: Door, draft: Draft): Tag => ({
  code: door.code,
  barcode: door.barcode,
  what: joined(draft.say(door.front === 'door' ? 'tag.door' : `front.${door.front}`), door.cabinet, door.room),
  size: draft.say('doors.size', { width: draft.size(door.width.value), height: draft.size(door.height.value) }),
  lies: door.hingeSide === undefined ? draft.say('tag.lies-top') : draft.say(`tag.hung-${door.hingeSide}`),
});

function offcutTags(draft: Draft): readonly Tag[] {
  const barcode = barcodesOf(draft.job.number);
  return draft.plan.cutPlans.flatMap(plan =>
    plan.bins.flatMap(bin =>
      bin.offcuts.map(offcut => ({
        code: offcut.code,
        barcode: barcode(offcut.code),
        what: joined(draft.say('tag.offcut'), plan.stock),
        size: `${draft.size(offcut.length)} × ${draft.size(offcut.width)}`,
        lies: '',
      })),
    ),
  );
}

const grid = (labels: LabelSheet): LabelGrid => ({
  paper: labels.page === 'single' ? `${points(labels.width)} ${points(labels.height)}` : labels.page,
  dots: labels.page === 'single' ? 203 : 300,
  across: labels.page === 'single' ? 1 : labels.columns,
  down: labels.page === 'single' ? 1 : labels.rows,
  width: points(labels.width),
  height: points(labels.height),
  left: labels.page === 'single' ? '0' : points(labels.left),
  top: labels.page === 'single' ? '0' : points(labels.top),
  pitchAcross: points(labels.pitchAcross),
  pitchDown: points(labels.pitchDown),
  start: labels.page === 'single' ? 1 : labels.startAt,
});

const points = (length: Length | number): string => ((length / 25_400_000) * 72).toFixed(3);

/**
 * The widest module that leaves the symbol its quiet zones on the label. On a thermal printer of 8 dots a millimetre
 * (203 dpi) a module is a whole number of dots, or its bars come out uneven.
 */
function moduleFor(labels: LabelSheet): string {
  const room = (labels.width - 2 * PAD) / MODULES;
  if (labels.page !== 'single') return room >= 13 * MIL ? '13mil' : '10mil';
  const dots = Math.max(2, Math.min(4, Math.floor(room / DOT)));
  return `${dots * 0.125}mm`;
}

/** What is left under three lines of words, but no more than a scanner needs. */
const barHeight = (labels: LabelSheet): number => Math.max(5_000_000, Math.min(12_000_000, labels.height - 18_000_000));

/** Size of type of a tag's code, and what is free between it and the size, in points. */
const LARGE = 12.5;
const APART = 8;
/** 11 characters of Code 128 take 156 modules, and 10 of quiet zone on each side (ISO/IEC 15417). */
const MODULES = 176;
const MIL = 25_400;
/** A dot of a 203 dpi printer: 8 to a millimetre. */
const DOT = 125_000;
/** Kept free inside a label. */
const PAD = 1_000_000;

/** Which way up the tag is stuck, always on the back face. */
const LIES: { readonly [R in Role]: string } = {
  'stile-left': 'tag.lies-inside',
  'stile-right': 'tag.lies-inside',
  'stile-middle': 'tag.lies-both',
  'rail-top': 'tag.lies-inside',
  'rail-middle': 'tag.lies-both',
  'rail-bottom': 'tag.lies-inside',
  panel: 'tag.lies-top',
  glass: 'tag.lies-top',
  'glass-stop': 'tag.lies-both',
  slab: 'tag.lies-top',
};

/** What is still to be done to a part when its tag is stuck on. */
const SHOWN: ReadonlySet<OperationId> = new Set<OperationId>([
  'groove',
  'cope',
  'glue-panel',
  'rabbet-panel',
  'sand-panel',
  'dry-fit',
  'glue-up',
  'fit-glass',
  'flush-sand',
  'bore-hinges',
  'ease-edges',
  'finish',
]);
