import type { Operation, Reminder } from '../../layout/shop-plan.ts';
import type { Draft } from '../draft.ts';
import { REMINDER_DRAWINGS } from '../drawings/reminder-drawings.ts';
import type { Figure } from '../figure.ts';
import { grouped } from '../order.ts';

/** A caution as it stands at the head of a sheet. */
export type Caution = {
  readonly text: string;
  /** "Here: …", where pieces call for it; else empty. */
  readonly pieces: string;
  /** Name of its drawing, or empty. */
  readonly figure: string;
};

/**
 * What an operation calls for: its own cautions, and those of its pieces, each said once with all pieces that call for
 * it. Set-ups differ in their figures; the smallest, which is the sharpest, is the one that is said.
 */
export function cautions(operation: Operation, draft: Draft, figures: Map<string, Figure>): readonly Caution[] {
  const called = [
    ...operation.reminders.filter(reminder => !isGeneral(reminder)),
    ...operation.setups.flatMap(setup => setup.reminders),
  ];
  return [...grouped(called, reminder => reminder.id).values()].map(alike => ({
    text: draftReminder({ ...alike[0], facts: sharpest(alike) }, draft),
    pieces: here([...new Set(alike.flatMap(reminder => reminder.pieces))], draft),
    figure: drawingOf(alike[0], draft, figures),
  }));
}

/** Those of the machine, whatever lies on it. */
export const generalCautions = (operation: Operation, draft: Draft): readonly string[] =>
  operation.reminders.filter(isGeneral).map(reminder => draftReminder(reminder, draft));

export const isGeneral = ({ id }: Reminder): boolean => id.startsWith('general-') || GENERAL.has(id);

function sharpest(alike: readonly Reminder[]): Reminder['facts'] {
  const facts: { [name: string]: Reminder['facts'][string] } = {};
  for (const [name, fact] of alike.flatMap(reminder => Object.entries(reminder.facts))) {
    const known = facts[name];
    if (known === undefined || (typeof fact === 'number' && typeof known === 'number' && fact < known))
      facts[name] = fact;
  }
  return facts;
}

/** A caution with its drawing and without its pieces: for the safety sheet. */
export const cautionOnce = (reminder: Reminder, draft: Draft, figures: Map<string, Figure>): Caution => ({
  text: draftReminder(reminder, draft),
  pieces: '',
  figure: drawingOf(reminder, draft, figures),
});

export const draftReminder = (reminder: Reminder, draft: Pick<Draft, 'say'>): string =>
  draft.say(`reminder.${reminder.id}`, reminder.facts);

/** The first pieces by name, and how many more. */
function here(codes: readonly string[], { say }: Draft): string {
  if (codes.length === 0) return '';
  const named = codes.slice(0, NAMED_MAX).join(', ');
  const more = codes.length > NAMED_MAX ? ` ${say('and-more', { count: codes.length - NAMED_MAX })}` : '';
  return say('route.here', { pieces: named + more });
}

function drawingOf(reminder: Reminder, { say }: Draft, figures: Map<string, Figure>): string {
  const drawing = REMINDER_DRAWINGS[reminder.id];
  if (drawing === undefined) return '';
  figures.set(
    `reminder-${reminder.id}`,
    drawing(key => say(`drawing.${key}`)),
  );
  return `reminder-${reminder.id}`;
}

const GENERAL: ReadonlySet<string> = new Set(['ears', 'dust', 'ventilation']);
/** A caution that names half the job is not read. */
const NAMED_MAX = 10;
