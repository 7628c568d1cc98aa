import type { Operation, Setup, Station } from '../../layout/shop-plan.ts';
import type { Draft, View } from '../draft.ts';
import { jointSection } from '../drawings/joint-section.ts';
import type { Figure } from '../figure.ts';
import { grouped } from '../order.ts';
import { facing, measuredCheck, type SettingLine, settingLines } from './setups.ts';

/** cards.hbs: for each machine all its settings of the job, in the order in which they are made. */
export type CardsView = { readonly cards: readonly Card[] };
export type Card = {
  readonly bookmark: string;
  readonly station: string;
  readonly setups: readonly CardSetup[];
  /** At the router: the joint of each style, whose sizes are the bits' heights. */
  readonly sections: readonly { readonly title: string; readonly figure: string }[];
};
export type CardSetup = {
  readonly number: number;
  readonly operation: string;
  /** Only where it is not that of the row before. */
  readonly newOperation: boolean;
  readonly code: string;
  readonly barcode: string;
  readonly settings: readonly SettingLine[];
  readonly facing: string;
  readonly pieces: number;
  readonly tests: number;
  readonly check: string;
};

/** Undefined where no machine has a setting. */
export function cards(draft: Draft): View<CardsView> | undefined {
  const figures = new Map<string, Figure>();
  const set = draft.plan.operations.flatMap(operation =>
    operation.setups.filter(setup => setup.settings.length > 0).map(setup => ({ operation, setup })),
  );
  if (set.length === 0) return undefined;
  const stations = grouped(set, ({ operation }) => operation.station);
  return {
    data: {
      cards: [...stations].map(([station, setups]) => ({
        bookmark: `card-${station}`,
        station: draft.say(`station.${station}`),
        setups: setups.map((each, index) =>
          cardSetup(each.setup, each.operation, index + 1, setups[index - 1]?.operation !== each.operation, draft),
        ),
        sections: (station as Station) === 'router' ? sections(draft, figures) : [],
      })),
    },
    figures,
  };
}

const cardSetup = (
  setup: Setup,
  operation: Operation,
  number: number,
  newOperation: boolean,
  draft: Draft,
): CardSetup => ({
  number,
  operation: draft.say(`operation.${operation.id}`),
  newOperation,
  code: setup.code,
  barcode: setup.barcode,
  settings: settingLines(setup.settings, draft),
  facing: facing(setup, draft),
  pieces: setup.pieces.length,
  tests: setup.testPieces.length,
  check: measuredCheck(setup, draft),
});

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
  return [...grouped(framed, ({ joint }) => JSON.stringify(joint)).values()].map((alike, index) => {
    const styles = [...new Set(alike.map(each => each.style))].join(', ');
    figures.set(`joint-${index}`, jointSection(alike[0].joint, words, draft.pen, draft.paperWidth / 2 - 10));
    return { title: draft.say('cards.section', { style: styles }), figure: `joint-${index}` };
  });
}
