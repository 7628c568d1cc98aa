import type { Draft, View } from '../draft.ts';
import type { Figure } from '../figure.ts';
import { grouped } from '../order.ts';
import { type Caution, cautionOnce, draftReminder, isGeneral } from './reminders.ts';

/** safety.hbs: the cautions of each machine, and those that pieces of this job call for. */
export type SafetyView = {
  readonly machines: readonly { readonly station: string; readonly cautions: readonly string[] }[];
  readonly called: readonly (Caution & { readonly where: string })[];
};

export function safety(draft: Draft): View<SafetyView> | undefined {
  const figures = new Map<string, Figure>();
  const { operations } = draft.plan;
  if (operations.length === 0) return undefined;
  const machines = [...grouped(operations, operation => operation.station)].map(([station, those]) => ({
    station: draft.say(`station.${station}`),
    cautions: [
      ...new Set(
        those.flatMap(each => each.reminders.filter(isGeneral)).map(reminder => draftReminder(reminder, draft)),
      ),
    ],
  }));
  const called = operations.flatMap(operation =>
    [
      ...operation.reminders.filter(reminder => !isGeneral(reminder)),
      ...operation.setups.flatMap(setup => setup.reminders),
    ].map(reminder => ({ reminder, operation: operation.id })),
  );
  return {
    data: {
      machines: machines.filter(machine => machine.cautions.length > 0),
      called: [...grouped(called, ({ reminder }) => reminder.id).values()].map(alike => ({
        ...cautionOnce(alike[0].reminder, draft, figures),
        where: draft.say('safety.where', {
          operations: [...new Set(alike.map(each => draft.say(`operation.${each.operation}`)))].join(', '),
        }),
      })),
    },
    figures,
  };
}
