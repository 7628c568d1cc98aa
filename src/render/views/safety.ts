import type { Operation } from '../../layout/shop-plan.ts';
import type { Draft, View } from '../draft.ts';
import type { Figure } from '../figure.ts';
import { grouped, inRows } from '../order.ts';
import { type Caution, cautionOnce, generalCautions, isGeneral } from './reminders.ts';

/** safety.hbs: the cautions of each machine, and those that pieces of this job call for. */
export type SafetyView = {
  readonly machines: readonly { readonly station: string; readonly cautions: readonly string[] }[];
  /** What is said of more than one machine. */
  readonly everywhere: readonly string[];
  /** What pieces call for: with a drawing, three to a row, and without. */
  readonly drawn: readonly (readonly CalledCaution[])[];
  readonly told: readonly CalledCaution[];
};

export type CalledCaution = Caution & { readonly where: string };

export function safety(draft: Draft): View<SafetyView> | undefined {
  const figures = new Map<string, Figure>();
  const { operations } = draft.plan;
  if (operations.length === 0) return undefined;
  const machines = [...grouped(operations, operation => operation.station)].map(([station, those]) => ({
    station: draft.say(`station.${station}`),
    cautions: generalCautions(those, draft),
  }));
  const everywhere = said(machines.flatMap(machine => machine.cautions));
  const called = calledFor(operations, draft, figures);
  return {
    data: {
      machines: machines
        .map(({ station, cautions }) => ({ station, cautions: cautions.filter(each => !everywhere.includes(each)) }))
        .filter(machine => machine.cautions.length > 0),
      everywhere,
      drawn: inRows(
        called.filter(caution => caution.figure !== ''),
        3,
      ),
      told: called.filter(caution => caution.figure === ''),
    },
    figures,
  };
}

/** Each caution once, with the operations that it is called for in; those that share a drawing share a place. */
function calledFor(
  operations: readonly Operation[],
  draft: Draft,
  figures: Map<string, Figure>,
): readonly CalledCaution[] {
  const called = operations.flatMap(operation =>
    [...operation.reminders, ...operation.setups.flatMap(setup => setup.reminders)]
      .filter(reminder => !isGeneral(reminder))
      .map(reminder => ({ reminder, operation: draft.say(`operation.${operation.id}`) })),
  );
  return [...grouped(called, ({ reminder }) => reminder.id).values()].map(alike => ({
    ...cautionOnce(alike[0].reminder, draft, figures),
    where: draft.say('safety.where', { operations: [...new Set(alike.map(each => each.operation))].join(', ') }),
  }));
}

/** Those that come up more than once. */
const said = (all: readonly string[]): readonly string[] => [
  ...new Set(all.filter((each, index) => all.indexOf(each) !== index)),
];
