import { inOrder, printPlace } from '../../diagnostics/print.ts';
import { say } from '../../diagnostics/words.ts';
import type { Operation } from '../../layout/shop-plan.ts';
import { addAreas } from '../../units/area.ts';
import { addMasses } from '../../units/mass.ts';
import { printMoney } from '../../units/money.ts';
import type { Draft, View } from '../draft.ts';
import { grouped } from '../order.ts';
import { orderOfWork, SECTION_OF } from './order-of-work.ts';

/** cover.hbs: the job at a glance. */
export type CoverView = {
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  readonly glance: readonly { readonly label: string; readonly value: string }[];
  /** The sections of this very packet; `bookmark` is where each begins. */
  readonly contents: readonly { readonly title: string; readonly about: string; readonly bookmark: string }[];
  /** The operations in the order of work, down the columns; `bookmark` is empty where its sheet is not in this packet. */
  readonly work: readonly (readonly WorkStep[])[];
  readonly how: readonly { readonly number: number; readonly text: string }[];
  readonly revision: {
    readonly title: string;
    readonly sentence: string;
    readonly changes: readonly { readonly label: string; readonly codes: string }[];
  };
  /** Warnings and notes of the workbook and of every stage. */
  readonly attention: readonly { readonly place: string; readonly what: string; readonly mend: string }[];
  readonly more: string;
  /** Every default that was taken, under the sheet that could set it. */
  readonly defaults: readonly {
    readonly sheet: string;
    readonly settings: readonly { readonly name: string; readonly value: string }[];
  }[];
};

export type WorkStep = {
  readonly number: string;
  readonly title: string;
  readonly station: string;
  readonly bookmark: string;
};

/** `sections`: what the packet holds beside the cover, in order. */
export const cover = (draft: Draft, sections: readonly string[]): View<CoverView> => ({
  figures: new Map(),
  data: {
    facts: facts(draft),
    glance: glance(draft),
    contents: sections.map(name => ({
      title: draft.say(`section.${name}`),
      about: draft.say(`about.${name}`),
      bookmark: `section-${name}`,
    })),
    work: inColumns(workSteps(draft, sections)),
    how: [1, 2, 3, 4, 5].map(number => ({
      number,
      text: draft.say(`cover.how.${number}`, { plus: '14 3/8+', minus: '14 3/8−' }),
    })),
    revision: revision(draft),
    attention: attention(draft).slice(0, ATTENTION_MAX),
    more:
      draft.diagnostics.length > ATTENTION_MAX
        ? draft.say('and-more', { count: draft.diagnostics.length - ATTENTION_MAX })
        : '',
    defaults: defaults(draft),
  },
});

const facts = ({ job, say: word }: Draft): CoverView['facts'] =>
  [
    { label: word('cover.customer'), value: job.customer },
    { label: word('cover.due'), value: job.dueDate ?? '' },
    { label: word('cover.note'), value: job.note },
  ].filter(fact => fact.value !== '');

function glance(draft: Draft): CoverView['glance'] {
  const { job, doorSet, plan, quantities } = draft;
  const rooms = new Set(doorSet.doors.map(door => door.room));
  const bins = (kind: 'board' | 'sheet'): number =>
    plan.cutPlans.filter(cutPlan => cutPlan.kind === kind).reduce((total, cutPlan) => total + cutPlan.bins.length, 0);
  const setups = plan.operations.flatMap(operation => operation.setups.filter(setup => setup.settings.length > 0));
  const counts: readonly (readonly [key: string, value: string | number, facts?: { readonly people: number }])[] = [
    ['openings', job.openings.reduce((total, opening) => total + opening.quantity, 0)],
    ['doors', doorSet.doors.length],
    ['parts', doorSet.parts.length],
    ['rooms', rooms.size],
    ['boards', bins('board')],
    ['sheets', bins('sheet')],
    ['setups', setups.length],
    ['batches', plan.batches.length],
    ...plan.days.schedules.map(schedule => daysOf(schedule)),
    ['area', quantities.area(addAreas(doorSet.doors.map(door => door.finishArea)))],
    ['mass', quantities.mass(addMasses(doorSet.doors.map(door => door.mass)))],
    ['total', plan.shopping.total > 0 ? printMoney(plan.shopping.total) : 0],
  ];
  return counts
    .filter(([, value]) => value !== 0)
    .map(([key, value, holes]) => ({ label: draft.say(`cover.${key}`, holes ?? {}), value: `${value}` }));
}

const daysOf = (schedule: Draft['plan']['days']['schedules'][number]) =>
  [schedule.people === 1 ? 'days' : 'days-shop', schedule.days.length, { people: schedule.people }] as const;

const workSteps = (draft: Draft, sections: readonly string[]): readonly WorkStep[] =>
  orderOfWork(draft).map(({ number, operation }) => ({
    number: `${number}`,
    title: draft.say(`operation.${operation.id}`),
    station: draft.say(`station.${operation.station}`),
    bookmark: bookmarkOf(operation, sections),
  }));

function bookmarkOf({ id, station }: Operation, sections: readonly string[]): string {
  const own = SECTION_OF[id];
  const section = own ?? (station === 'clamps' ? 'glue-up' : 'routes');
  if (!sections.includes(section)) return '';
  return own === undefined ? `operation-${id}` : `section-${own}`;
}

/** As rows of two, the second of which goes on where the first ends. */
function inColumns(steps: readonly WorkStep[]): CoverView['work'] {
  const rows = Math.ceil(steps.length / 2);
  return steps.slice(0, rows).map((step, row) => [step, steps[row + rows] ?? NO_STEP]);
}

const NO_STEP: WorkStep = { number: '', title: '', station: '', bookmark: '' };

function revision({ revision: now, say: word }: Draft): CoverView['revision'] {
  const title = word('cover.revision', { letter: now.letter });
  if (now.changes === undefined) return { title, sentence: word('cover.revision.first'), changes: [] };
  const { since, added, removed, changed } = now.changes;
  const changes = [
    { label: word('cover.added'), codes: added.join(', ') },
    { label: word('cover.removed'), codes: removed.join(', ') },
    { label: word('cover.changed'), codes: changed.join(', ') },
  ].filter(change => change.codes !== '');
  return {
    title,
    sentence: word(changes.length === 0 ? 'cover.revision.same' : 'cover.revision.since', { since }),
    changes,
  };
}

const attention = ({ diagnostics, job, size }: Draft): CoverView['attention'] =>
  inOrder(diagnostics).map(diagnostic => ({
    place: printPlace(diagnostic.at),
    ...say(diagnostic, job.language, size),
  }));

const defaults = ({ job, sizeInOne }: Draft): CoverView['defaults'] =>
  [...grouped(job.defaults, each => each.sheet)].map(([sheet, settings]) => ({
    sheet,
    settings: settings.map(({ name, value }) => ({
      name,
      value: value.kind === 'length' ? sizeInOne(value.length) : value.text,
    })),
  }));

/** A cover is read; the whole list is in the manifest. */
const ATTENTION_MAX = 40;
