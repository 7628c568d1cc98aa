import type { Setup, Station } from '../../layout/shop-plan.ts';
import type { Draft, View } from '../draft.ts';
import { jointSection } from '../drawings/joint-section.ts';
import { type Figure, wordsIn } from '../figure.ts';
import { grouped, inRows } from '../order.ts';
import { numberedNames } from './order-of-work.ts';
import {
  facing,
  measuredCheck,
  oneSetting,
  type SettingLine,
  settingLines,
  sharedSettings,
  withoutShared,
} from './setups.ts';

/** cards.hbs: for each machine all its settings of the job, in the order in which they are made. */
export type CardsView = { readonly cards: readonly Card[] };
export type Card = {
  readonly bookmark: string;
  readonly station: string;
  readonly operations: readonly CardOperation[];
  /** At the router: the joint of each style, whose sizes are the bits' heights. Two to a row. */
  readonly sections: readonly (readonly { readonly title: string; readonly figure: string }[])[];
};
/**
 * An operation's settings. Where each set-up has one setting, the same for all, its name stands once in `lead` and the
 * values follow in `values`, as many to a row as go there; else each set-up has a line of its own in `setups`.
 */
export type CardOperation = {
  readonly title: string;
  readonly lead: string;
  readonly values: readonly (readonly CardValue[])[];
  /** Of the columns of `values`, three to a value. */
  readonly widths: string;
  readonly aligns: string;
  readonly setups: readonly CardSetup[];
  /** Settings of all its set-ups, said before them. */
  readonly shared: readonly SettingLine[];
};
export type CardValue = { readonly number: string; readonly value: string; readonly pieces: string };
export type CardSetup = {
  readonly number: number;
  readonly code: string;
  readonly settings: readonly SettingLine[];
  readonly facing: string;
  readonly pieces: string;
  readonly check: string;
};

/** Undefined where no machine has a setting. */
export function cards(draft: Draft): View<CardsView> | undefined {
  const figures = new Map<string, Figure>();
  const names = numberedNames(draft);
  const set = draft.plan.operations
    .map(operation => ({ operation, setups: operation.setups.filter(setup => setup.settings.length > 0) }))
    .filter(({ setups }) => setups.length > 0);
  if (set.length === 0) return undefined;
  return {
    data: {
      cards: [...grouped(set, ({ operation }) => operation.station)].map(([station, those]) => ({
        bookmark: `card-${station}`,
        station: draft.say(`station.${station}`),
        operations: those.map(({ operation, setups }) => cardOperation(names.get(operation.id) ?? '', setups, draft)),
        sections: station === ('router' satisfies Station) ? sections(draft, figures) : [],
      })),
    },
    figures,
  };
}

function cardOperation(title: string, setups: readonly Setup[], draft: Draft): CardOperation {
  const ways = [...new Set(setups.map(setup => facing(setup, draft)))];
  const way = ways.length === 1 ? (ways[0] ?? '') : '';
  const setting = setups.length > 1 ? oneSetting(setups, draft) : '';
  const shared = setting === '' ? sharedSettings(setups, draft) : [];
  const values = setups.map((setup, index) => cardValue(setup, index + 1, draft));
  const across = valuesAcross(values, draft);
  const noValues = Array.from({ length: across }, () => ({ number: '', value: '', pieces: '' }));
  return {
    title,
    lead: [setting, way].filter(Boolean).join(' · '),
    values: setting === '' ? [] : inRows(values, across).map(row => [...row, ...noValues.slice(row.length)]),
    widths: times('auto auto *', across),
    aligns: times('left right left', across),
    setups:
      setting === ''
        ? setups.map((setup, index) => cardSetup(setup, index + 1, { shared, ownWay: way === '' }, draft))
        : [],
    shared,
  };
}

const cardValue = (setup: Setup, number: number, draft: Draft): CardValue => ({
  number: `${number}`,
  value: settingLines(setup, draft)[0]?.value ?? '',
  pieces: piecesAt(setup, draft),
});

const cardSetup = (
  setup: Setup,
  number: number,
  { shared, ownWay }: { readonly shared: readonly SettingLine[]; readonly ownWay: boolean },
  draft: Draft,
): CardSetup => ({
  number,
  code: setup.code,
  settings: withoutShared(settingLines(setup, draft), shared),
  facing: ownWay ? facing(setup, draft) : '',
  pieces: piecesAt(setup, draft),
  check: measuredCheck(setup, draft),
});

/** `12 pieces`, and how many test pieces go before them. */
const piecesAt = (setup: Setup, { say }: Draft): string =>
  [
    say('route.count', { count: setup.pieces.length }),
    ...(setup.testPieces.length === 0 ? [] : [say('cards.tests', { count: setup.testPieces.length })]),
  ].join(', ');

/** One for each joint that differs, named after the styles that have it. */
function sections(draft: Draft, figures: Map<string, Figure>): Card['sections'] {
  const framed = draft.doorSet.doors.flatMap(door =>
    door.joint === undefined ? [] : [{ joint: door.joint, style: door.style }],
  );
  const words = {
    face: draft.say('doors.show-face'),
    back: draft.say('doors.back-face'),
    stile: draft.say('doors.stile'),
    infill: draft.say('doors.panel'),
  };
  // Doors by the thousand have a few joints between them.
  const joints = [...grouped(framed, each => JSON.stringify(each)).values()].map(([{ joint, style }]) => ({
    style,
    figure: jointSection(joint, words, draft.pen, draft.paperWidth / 2 - 10),
  }));
  const drawn = [...grouped(joints, ({ figure }) => wordsIn(figure)).values()].map((alike, index) => {
    const styles = [...new Set(alike.map(each => each.style))].join(', ');
    figures.set(`joint-${index}`, alike[0].figure);
    return { title: draft.say('cards.section', { style: styles }), figure: `joint-${index}` };
  });
  return inRows(drawn, 2);
}

/** How many go beside each other, with their boxes and numbers. */
const valuesAcross = (values: readonly CardValue[], { pen, paperWidth }: Draft): number => {
  const widths = values.map(
    ({ value, pieces }) => VALUE_ROOM + pen.measure(value, VALUE_SIZE, true) + pen.measure(pieces, PIECES_SIZE, false),
  );
  return Math.max(1, Math.min(VALUES_ACROSS_MAX, Math.floor(paperWidth / Math.max(...widths))));
};

const times = (widths: string, across: number): string => Array.from({ length: across }, () => widths).join(' ');

/** Sizes of type as cards.hbs has them, and what a box, a number and the columns' gaps take. */
const VALUE_SIZE = 12.5;
const PIECES_SIZE = 9;
const VALUE_ROOM = 42;
const VALUES_ACROSS_MAX = 4;
