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

/** The head of a sheet: what to be careful of. */
export type Careful = {
  /** Those of the machine, whatever lies on it. */
  readonly general: readonly string[];
  readonly called: readonly Caution[];
  /** Names of drawings, each once. */
  readonly figures: readonly string[];
};

/**
 * What an operation calls for: its own cautions, and those of its pieces, each said once with all pieces that call for
 * it. Set-ups differ in their figures; the smallest, which is the sharpest, is the one that is said. Undefined where
 * there is nothing to say.
 */
export function carefulWith(operation: Operation, draft: Draft, figures: Map<string, Figure>): Careful | undefined {
  const reminders = [
    ...operation.reminders.filter(reminder => !isGeneral(reminder)),
    ...operation.setups.flatMap(setup => setup.reminders),
  ];
  const called = [...grouped(reminders, reminder => reminder.id).values()].map(alike => ({
    text: draftReminder({ ...alike[0], facts: sharpest(alike) }, draft),
    pieces: here([...new Set(alike.flatMap(reminder => reminder.pieces))], draft),
    figure: drawingOf(alike[0], draft, figures),
  }));
  const general = operation.reminders.filter(isGeneral).map(reminder => draftReminder(reminder, draft));
  const drawings = [...new Set(called.map(caution => caution.figure).filter(Boolean))];
  return called.length + general.length === 0 ? undefined : { general, called, figures: drawings };
}

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

/** Two cautions that are drawn alike share their drawing. */
function drawingOf(reminder: Reminder, { say }: Draft, figures: Map<string, Figure>): string {
  const drawing = REMINDER_DRAWINGS[reminder.id];
  if (drawing === undefined) return '';
  const name = `reminder-${drawing.name}`;
  figures.set(
    name,
    drawing(key => say(`drawing.${key}`)),
  );
  return name;
}

const GENERAL: ReadonlySet<string> = new Set(['ears', 'dust', 'ventilation']);
/** A caution that names half the job is not read. */
const NAMED_MAX = 4;
