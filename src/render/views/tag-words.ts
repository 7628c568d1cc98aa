import type { Door, Part, Role } from '../../calculate/door-set.ts';
import { barcodesOf } from '../../codes/barcode.ts';
import type { OperationId } from '../../layout/shop-plan.ts';
import type { Draft } from '../draft.ts';
import type { TagUp } from '../drawings/part-in-door.ts';
import { inCabinetOrder } from '../order.ts';

/** All that a tag may say of a piece, whatever label it is printed on; of lists, the first things count most. */
export type TagWords = {
  readonly code: string;
  readonly barcode: string;
  /** Role, door or offcut; cabinet and room, or stock. */
  readonly what: readonly string[];
  readonly size: string;
  /** How the tag sits on the piece. */
  readonly lies: readonly string[];
  /** What is done to the piece next. */
  readonly next: readonly string[];
  /** What can be drawn of it. */
  readonly shows: { readonly door: Door; readonly part?: Part; readonly up: TagUp } | undefined;
};

/** Parts, then doors, then offcuts that are kept. */
export const tagWords = (draft: Draft): readonly TagWords[] => [
  ...partTags(draft),
  ...doorTags(draft),
  ...offcutTags(draft),
];

/** Parts that are cut from one board or sheet have their tags together, in the order in which they lie on it. */
function partTags(draft: Draft): readonly TagWords[] {
  const cut = draft.plan.cutPlans
    .flatMap(plan => plan.bins.flatMap(bin => bin.pieces))
    .flatMap(piece => draft.blanks.get(piece.blank)?.parts ?? []);
  const order = [...new Set([...cut, ...draft.doorSet.parts.map(part => part.code)])];
  return order.flatMap(code => {
    const part = draft.parts.get(code);
    return part === undefined ? [] : [partTag(part, draft)];
  });
}

function partTag(part: Part, draft: Draft): TagWords {
  const door = draft.doors.get(part.door);
  const route = draft.plan.routes[part.code] ?? [];
  const up = UP[part.role];
  return {
    code: part.code,
    barcode: part.barcode,
    what: said(draft.say(`role.${part.role}`), door?.cabinet, door?.room),
    size: `${draft.size(part.length.value)} × ${draft.size(part.width.value)}`,
    lies: said(draft.say('tag.lies'), up === 'none' ? undefined : draft.say(`tag.up-${up}`)),
    next: route.filter(operation => SHOWN.has(operation)).map(operation => draft.say(`step.${operation}`)),
    shows: door === undefined ? undefined : { door, part, up },
  };
}

const said = (...words: readonly (string | undefined)[]): readonly string[] =>
  words.flatMap(each => (each === undefined || each === '' ? [] : [each]));

const doorTags = (draft: Draft): readonly TagWords[] =>
  [...draft.doorSet.doors].sort((a, b) => inCabinetOrder(a.code, b.code)).map(door => doorTag(door, draft));

const doorTag = (door: Door, draft: Draft): TagWords => ({
  code: door.code,
  barcode: door.barcode,
  what: said(draft.say(door.front === 'door' ? 'tag.door' : `front.${door.front}`), door.cabinet, door.room),
  size: draft.say('doors.size', { width: draft.size(door.width.value), height: draft.size(door.height.value) }),
  lies:
    door.hingeSide === undefined
      ? [draft.say('tag.lies'), draft.say('tag.up-top')]
      : [draft.say(`tag.hung-${door.hingeSide}`), draft.say('tag.rides')],
  next: [],
  shows: { door, up: 'none' },
});

function offcutTags(draft: Draft): readonly TagWords[] {
  const barcode = barcodesOf(draft.job.number);
  return draft.plan.cutPlans.flatMap(plan =>
    plan.bins.flatMap(bin =>
      bin.offcuts.map(offcut => ({
        code: offcut.code,
        barcode: barcode(offcut.code),
        what: [draft.say('tag.offcut'), plan.stock],
        size: `${draft.size(offcut.length)} × ${draft.size(offcut.width)}`,
        lies: [],
        next: [],
        shows: undefined,
      })),
    ),
  );
}

/** Which way up the tag is stuck, always on the back face. */
const UP: { readonly [R in Role]: TagUp } = {
  'stile-left': 'inside',
  'stile-right': 'inside',
  'stile-middle': 'none',
  'rail-top': 'inside',
  'rail-middle': 'none',
  'rail-bottom': 'inside',
  panel: 'top',
  glass: 'top',
  'glass-stop': 'none',
  slab: 'top',
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
